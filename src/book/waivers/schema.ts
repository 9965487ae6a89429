// no-unit-test: test/book/waivers/file.test.ts reads files by it, test/report/schemas.test.ts the schema itself
import type { Schema } from '../settings/schema';

const hash: Schema = { type: 'string', pattern: '^[0-9a-f]{64}$' };

/** `.evengrey-waivers.json`. */
export const waiversSchema: Schema = {
  $schema: 'http://json-schema.org/draft-07/schema#',
  title: 'Evengrey waivers: findings that the team has decided to live with',
  allowComments: true,
  allowTrailingCommas: true,
  type: 'object',
  additionalProperties: false,
  properties: {
    $schema: { type: 'string' },
    waivers: {
      type: 'array',
      description:
        'One entry a finding, as "evengrey check --waive" writes them. Git knows who waived what, and when.',
      items: {
        type: 'object',
        additionalProperties: false,
        required: ['rule', 'content', 'value'],
        properties: {
          rule: { type: 'string', description: 'Id of the rule.' },
          picture: {
            type: ['string', 'null'],
            description:
              'Path of the picture when it was waived, for people; null: a finding about the book.',
          },
          other: {
            type: 'string',
            description: 'Path of the other picture, where the finding is about two; for people.',
          },
          page: { type: 'integer', minimum: 1, description: 'Page of the file. Left out: the first.' },
          content: {
            type: 'array',
            items: hash,
            description:
              'SHA-256 of every picture that the finding is about: of another content it is judged again.',
          },
          value: {
            type: 'object',
            description: 'What the finding says in figures, rounded: with others it is judged again.',
          },
          on: {
            type: 'object',
            description:
              'What the target in "value" was, by which the finding is known where the target is only called otherwise since. Left out: by its name alone.',
          },
          says: { type: 'string', description: 'The finding in words when it was waived, for people.' },
          reason: { type: 'string', description: 'Why the team can live with it.' },
        },
      },
    },
  },
  required: ['waivers'],
};
