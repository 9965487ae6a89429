import type { Refusal } from '../../shared/finding';
import { defineRule, everyIntent, noOptions } from '../rule';
import { say } from '../say';
import page from './README.md';

const messages = {
  sure: '{outcome}: {tool} no {format}, and {place} places this one. To have it printed, {out}',
  unsure:
    'This picture may be missing from its page: {tool} no {format}, and {place} places this one. Other tools for such a layout may take it: look at a page that yours has made. If it is missing, {out}',
} as const;

/** What comes of it in print, as a sentence begins. */
const outcomes: Record<Refusal['outcome'], string> = {
  blank: 'The place of this picture stays blank in print',
  stops: 'The book does not compile with this picture in it, so that nothing is printed',
};

const convertIt = 'convert it and have the layouts place the result, which is a PNG then.';
/** What is right otherwise is left alone unless it is named. */
const convertNamed = 'convert it by its name and have the layouts place the result, which is a PNG then.';
const saveIt = 'save it as PNG or JPEG, and have the layout place that one.';

export default defineRule({
  id: 'format-not-placed',
  description: 'A picture of a format that the tool of the layout cannot place.',
  severity: 'error',
  scope: 'picture',
  needs: 'header',
  intents: everyIntent,
  options: noOptions,
  messages,
  page,
  *check({ pictures }) {
    for (const picture of pictures) {
      const { facts, intent, path, refusals = [] } = picture;
      const refusal = refusals.find(({ sure }) => sure) ?? refusals.at(0);
      // what is not there has no format
      if (!refusal || facts.page > 1 || facts.unreadable?.reason === 'missing') continue;
      const { file, line, tool, sure } = refusal;
      const format = formatOf(path);
      const inColour = facts.unreadable !== null || facts.encoding === 'colour' || intent === 'colour';
      const words = {
        tool,
        format,
        place: `${file}:${line}`,
        out: inColour ? saveIt : sure ? convertIt : convertNamed,
      };
      const data = { format, file, line };
      if (sure)
        yield {
          picture,
          message: say(messages.sure, { ...words, outcome: outcomes[refusal.outcome] }),
          data,
        };
      else yield { picture, message: say(messages.unsure, words), data, note: true };
    }
  },
});

/** By the name, since tools go by it: `TIFF`, `PSD`. */
function formatOf(path: string): string {
  const extension = path.slice(path.lastIndexOf('.') + 1).toUpperCase();
  return extension === 'TIF' ? 'TIFF' : extension;
}
