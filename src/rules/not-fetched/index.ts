import { FEW, paths } from '../groups';
import { defineRule, everyIntent, noOptions } from '../rule';
import { say } from '../say';
import { count, list } from '../words';
import page from './README.md';

const messages = {
  one: 'Nothing can be said of how this picture will print, and an upload would send a few lines of text in its place. {reason}',
  many: 'Nothing can be said of how {pictures} will print, and an upload would send a few lines of text in their place: only their large-file pointers are here ({names}). Fetch them with "git lfs pull" and check again.',
} as const;

export default defineRule({
  id: 'not-fetched',
  description: 'A picture of which only the large-file pointer is here.',
  severity: 'error',
  scope: 'both',
  needs: 'header',
  intents: everyIntent,
  options: noOptions,
  messages,
  page,
  *check({ pictures }) {
    const missing = pictures.filter(picture => picture.facts.unreadable?.reason === 'not-fetched');
    if (missing.length > FEW) {
      const names = paths(missing);
      yield {
        message: say(messages.many, { pictures: count(names.length, 'picture'), names: list(names) }),
        data: { pictures: names },
      };
      return;
    }
    for (const picture of missing)
      yield { picture, message: say(messages.one, { reason: picture.facts.unreadable!.text }), data: {} };
  },
});
