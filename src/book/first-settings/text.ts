import { lights, papers, processes } from '../../print';
import type { BookFolder, FirstAnswers } from '../../shared/first-settings';
import { written } from './layouts';

/** So many paths are written out in a comment. */
const MOST_NAMED = 6;

/**
 * The text of a first `evengrey.json`, JSON with comments: what was said of the print house, and what was found in the
 * folder. What nobody can know yet stands there as a comment, to be taken up or struck out.
 */
export function firstSettings(answers: FirstAnswers, found: BookFolder): string {
  const entries = [...printing(answers), ...pages(found), ...intents(found)];
  const last = entries.findLastIndex(({ key }) => key !== null);
  const blocks = entries.map(({ comment, key, value }, at) => {
    const lines = comment.map(line => `  // ${line}`);
    if (key !== null) lines.push(`  ${JSON.stringify(key)}: ${value}${at < last ? ',' : ''}`);
    return lines.join('\n');
  });
  return `// One book. The editor completes the keys of this file and explains them.\n{\n${blocks.join('\n\n')}\n}\n`;
}

/** A key with what is to be known of it; `key` null: a comment alone. `value`: JSON. */
interface Entry {
  comment: string[];
  key: string | null;
  value: string;
}

const entry = (comment: string[], key: string | null, value: unknown = null): Entry => ({
  ...{ comment, key },
  value: JSON.stringify(value, null, 1).replace(/\n\s*/g, ' ').replace(/\[ /g, '[').replace(/ \]/g, ']'),
});

function printing({ house, process, paper, light }: FirstAnswers): Entry[] {
  const by = oneLine(house);
  const ask = entry(
    [
      by ? `Printed by ${by}. What they advise goes before every forecast.` : 'Ask the print house first.',
      'Which encodings do they take? Once they have said so, correct this line and take the // away before it:',
      '"encodings": ["single-channel", "rgb-neutral"],',
    ],
    null,
  );
  const seen = entry([`Looked at under: ${nameOf(lights, light)}.`], 'light', light);
  if (!process)
    return [
      ask,
      entry(
        [
          'How the book is printed: there is no forecast until the // before this line is taken away. One of',
          ...known(),
        ],
        null,
      ),
    ];
  return [
    ask,
    entry([`How it is printed: ${nameOf(processes, process)}.`], 'process', process),
    ...(paper ? [entry([`On: ${nameOf(papers, paper)}.`], 'paper', paper)] : []),
    seen,
  ];
}

function known(): string[] {
  const ids = processes.map(({ id }) => id);
  return [`${ids.join(', ')}:`, '"process": "silver-halide",'];
}

function pages({ pictures, placed, layouts }: BookFolder): Entry[] {
  if (placed.length)
    return [
      ...facing(placed),
      entry(
        [
          `The pictures of the book are those that its layouts place: ${placed.length} of the ${pictures.length} in this folder.`,
        ],
        layouts.length ? 'layouts' : null,
        layouts,
      ),
    ];
  if (!pictures.length)
    return [
      entry(
        [
          'No picture was found here: the pictures that come are the book. To name some of them:',
          '"pictures": ["pictures"],',
        ],
        null,
      ),
    ];
  const folders = topFolders(pictures);
  if (folders === null)
    return [
      entry(
        [
          `The book is every picture in this folder: ${pictures.length} were found. To name some of them:`,
          '"pictures": ["*.jpg"],',
        ],
        null,
      ),
    ];
  return [
    entry(
      [`Folders of the book: ${pictures.length} pictures were found in them.`],
      'pictures',
      folders.map(written),
    ),
  ];
}

/** Before the line that is always there, so that it can be taken up as it stands. */
function facing(placed: readonly string[]): Entry[] {
  if (placed.length < 2) return [];
  const told =
    'No layout tells which pages face each other. Name them, spread by spread in the order of the book:';
  return [entry([told, `"spreads": [[${placed.slice(0, 2).map(quoted).join(', ')}]],`], null)];
}

/** Null where pictures lie in the book's folder itself. */
function topFolders(pictures: readonly string[]): string[] | null {
  if (pictures.some(path => !path.includes('/'))) return null;
  return [...new Set(pictures.map(path => path.slice(0, path.indexOf('/'))))];
}

function intents({ known: { line, colour, toned } }: BookFolder): Entry[] {
  const certain = line.length
    ? [entry(['Line art: pictures of one bit.'], 'intent', { line: line.map(written) })]
    : [];
  const asked = [
    ...(colour.length ? [`"colour": ${list(colour)}`] : []),
    ...(toned.length ? [`"toned": ${list(toned)}`] : []),
  ];
  if (!asked.length) return certain;
  const where = line.length ? 'Take up in "intent"' : 'Take up as "intent": { ... }';
  return [
    ...certain,
    entry([`Not grey, as an earlier check read them. ${where} what is meant so:`, ...asked], null),
  ];
}

const quoted = (path: string): string => JSON.stringify(oneLine(written(path)));

const list = (paths: readonly string[]): string => {
  const some = paths.slice(0, MOST_NAMED).map(quoted);
  const more = paths.length - some.length;
  return `[${some.join(', ')}]${more > 0 ? ` and ${more} more` : ''}`;
};

/** A comment ends with its line, whatever a person typed. */
const oneLine = (text: string): string => text.replace(/[\s\u2028\u2029]+/g, ' ').trim();

const nameOf = <Id extends string>(all: readonly { id: Id | string; name: string }[], id: Id): string =>
  all.find(one => one.id === id)!.name;
