import { list } from '../../rules/words';
import type { Settings } from '../settings/settings';

/** Settings apart from targets and rules, and which pictures there are: by their name in the file. */
const NAMES = {
  parts: 'parts',
  intents: 'intent',
  trim: 'trim',
  placements: 'placements',
  textWidth: 'textWidth',
  spreads: 'spreads',
} as const satisfies Partial<Record<keyof Settings, string>>;

type Key = keyof typeof NAMES;
type Told = Pick<Settings, Key>;

/**
 * `"textWidth" from none to 120 mm`, and of a list what is otherwise in it: `"spreads" from a.jpg with b.jpg to none`, a clause
 * each. `calledNow`: names before as they are now, since settings that only follow a picture to its new name have not changed.
 */
export const otherSettings = (was: Told, is: Told, calledNow: (path: string) => string): string[] =>
  (Object.keys(NAMES) as Key[])
    .filter(key => !same(was[key], is[key]) && !same(eachText(was[key], calledNow), is[key]))
    .map(key => {
      const [before, after] = [was, is].map(settings => ENTRIES[key](settings));
      const from = before.filter(entry => !after.includes(entry));
      const to = after.filter(entry => !before.includes(entry));
      return from.length || to.length
        ? `"${NAMES[key]}" ${fromTo(list(from, TOLD), list(to, TOLD))}`
        : `"${NAMES[key]}" in another order`;
    });

export const fromTo = (was: string, is: string): string => `from ${was || 'none'} to ${is || 'none'}`;

/** So many entries of either side are told. */
const TOLD = 3;

/** What each says, entry by entry. */
const ENTRIES: { [K in Key]: (settings: Told) => string[] } = {
  parts: ({ parts }) =>
    parts.map(({ name, pictures, targets }) => `${name} (${[...pictures, ...(targets ?? [])].join(', ')})`),
  intents: ({ intents }) =>
    intents.map(({ intent, pictures, reference }) => {
      const like = reference === null ? '' : `, like ${reference}`;
      return `${intent} (${pictures.join(', ')}${like})`;
    }),
  trim: ({ trim }) => (trim ? [`${trim.width} × ${trim.height} mm`] : []),
  placements: ({ placements }) =>
    placements.map(({ picture, width, height }) => {
      const size = [...(width ? [`${width} mm wide`] : []), ...(height ? [`${height} mm high`] : [])];
      return `${picture} ${size.join(', ')}`;
    }),
  textWidth: ({ textWidth }) => (textWidth === null ? [] : [`${textWidth} mm`]),
  spreads: ({ spreads }) => spreads.map(names => names.join(' with ')),
};

/** The same with other words for its texts. */
function eachText(value: unknown, word: (text: string) => string): unknown {
  if (typeof value === 'string') return word(value);
  if (Array.isArray(value)) return value.map(each => eachText(each, word));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, eachText(each, word)]));
}

/** By what they say: a profile stands in a text for its content. */
export const same = (x: unknown, y: unknown): boolean => JSON.stringify(x) === JSON.stringify(y);
