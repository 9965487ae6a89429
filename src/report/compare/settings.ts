import { count, inOrders } from '../../rules/words';
import type { Comparison, SettingsClause } from '../../shared/comparison';

type Told = Pick<Comparison, 'settings'>;

/** Which of a book's files judge its pictures otherwise than before: `settings`, `layouts`, `waivers`. */
export const whoseChanged = ({ settings: { changes } }: Told): SettingsClause['of'][] => [
  ...new Set(changes.map(({ of }) => of)),
];

/** What of the settings, layouts and waivers changed, and what that does to the pictures that are the same on both sides; nothing where they stayed. */
export function settingsLines({ settings: { changes, forecasts } }: Told): string[] {
  if (!changes.length) return [];
  const several = forecasts.length > 1;
  const own = changes.filter(({ of }) => of === 'settings').map(({ words }) => words);
  return [
    ...(own.length ? [`The settings changed, so all pictures are judged anew: ${own.join('; ')}.`] : []),
    ...changes
      .filter(({ of }) => of !== 'settings')
      .map(({ words }) => `${words[0].toUpperCase()}${words.slice(1)}.`),
    ...forecasts
      .filter(({ before, after }) => before !== after)
      .map(({ target, pages, before, after }) => {
        const [was, is] = [before, after].map(inOrders);
        const of = `${pages === 1 ? 'In' : 'On average, in'} ${count(pages, 'grey picture')} that did not change`;
        const earlier = was === is ? 'about as often as before' : `before ${was}`;
        return `${of}, a tint is seen ${is}${several ? ` (${target})` : ''}; ${earlier}.`;
      }),
  ];
}
