import { defineRule, everyIntent, noOptions } from '../rule';
import { say } from '../say';
import page from './README.md';

const messages = {
  unreadable:
    'Nothing can be said of how this picture will print, and the print house may fail on it too. {reason}',
} as const;

export default defineRule({
  id: 'unreadable',
  description: 'A picture that cannot be read.',
  severity: 'error',
  scope: 'picture',
  needs: 'header',
  intents: everyIntent,
  options: noOptions,
  messages,
  page,
  *check({ pictures }) {
    for (const picture of pictures) {
      const fault = picture.facts.unreadable;
      if (!fault || fault.reason === 'not-fetched') continue;
      yield {
        picture,
        message: say(messages.unreadable, { reason: fault.text }),
        data: { reason: fault.reason },
      };
    }
  },
});
