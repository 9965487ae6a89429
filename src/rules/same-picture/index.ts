import type { BookPicture } from '../../shared/finding';
import { grouped } from '../groups';
import { defineRule, everyIntent, noOptions } from '../rule';
import { say } from '../say';
import page from './README.md';

const messages = {
  same: 'This picture is printed twice, under two names: {place} places it, and {otherPlace} places {other}, which is the same file. If another picture was meant, put that one in its place; else have both places name one file, so that it is converted once.',
} as const;

export default defineRule({
  id: 'same-picture',
  description: 'Two pictures that layouts place, of one content.',
  severity: 'note',
  scope: 'picture',
  compares: true,
  needs: 'header',
  intents: everyIntent,
  options: noOptions,
  messages,
  page,
  *check({ pictures, changed }) {
    // where one of two changed, it is the one that came into a wrong place
    const rank = (picture: BookPicture) => (changed.has(picture.path) ? 1 : 0);
    const placed = pictures.filter(
      ({ facts, placedAt }) => placedAt?.length && facts.page === 1 && !facts.unreadable,
    );
    for (const same of grouped(placed, ({ facts }) => facts.sha256)) {
      const [first, ...others] = same.toSorted((x, y) => rank(x) - rank(y) || standing(x) - standing(y));
      for (const picture of others)
        yield {
          picture,
          message: say(messages.same, {
            place: lineOf(picture),
            otherPlace: lineOf(first),
            other: first.path,
          }),
          // another copy is not what the team lives with
          data: { same: first.path, copies: same.length },
        };
    }
  },
});

const standing = ({ position }: BookPicture): number => position ?? Number.MAX_SAFE_INTEGER;

const lineOf = ({ placedAt }: BookPicture): string => `${placedAt![0].file}:${placedAt![0].line}`;
