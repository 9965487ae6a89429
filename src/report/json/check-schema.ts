// no-unit-test: test/report/json/index.test.ts validates reports against it, test/report/schemas.test.ts the schema itself
import { finding } from './finding-schema';
import { picture } from './picture-schema';
import { head, list, object, orNull, type Schema, text, whole } from './schema-parts';
import { target } from './target-schema';

/** What `check --format json` prints. */
export const checkReportSchema: Schema = {
  ...head('Evengrey: report of a check'),
  ...object({
    schema: { const: 1, description: 'Number of this contract' },
    book: object({
      root: { const: '.', description: "Paths are relative to the book's folder" },
      targets: list(
        target,
        'In the order of the settings; empty where nobody said where the book is printed',
      ),
    }),
    scope: orNull(
      object({
        which: text('As it ends "what is": `changed since main (...)`, `staged`, `named`'),
        unread: whole('Others that were not looked at: what compares pictures was not judged then'),
        beyond: list(
          { type: 'string' },
          'Submodules that changed, of which nobody looked at the pictures: paths',
        ),
      }),
      'Set where only pictures that changed, or some by name, were checked; null: the whole book',
    ),
    pictures: list(
      picture,
      'Sorted by path, then page. Empty where no picture was found: then the check ends with exit code 2',
    ),
    findings: list(finding, 'About the book as a whole'),
    notices: list(
      { type: 'string' },
      'What was not looked at, and settings that concern nothing or cannot be',
    ),
    summary: object({
      pictures: whole(
        'Pages of a file count each; one that a converted copy replaces does not, one that is placed and missing does',
      ),
      errors: whole('Findings'),
      warnings: whole('Findings'),
      notes: whole('Findings'),
      waived: whole('Findings that do not count among these'),
      attention: whole('Pictures that something is to be done with before the order'),
      encodings: {
        type: 'object',
        additionalProperties: whole('Pictures'),
        description: 'Pictures by encoding, replaced ones left out',
      },
    }),
  }),
};
