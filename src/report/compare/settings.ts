import { count, inOrders } from '../../rules/words';
import type { Comparison } from '../../shared/comparison';

/** What of the settings changed and what that does to the pictures that are the same on both sides; nothing where they stayed. */
export function settingsLines({ settings: { changes, forecasts } }: Pick<Comparison, 'settings'>): string[] {
  if (!changes.length) return [];
  const several = forecasts.length > 1;
  return [
    `The settings changed, so all pictures are judged anew: ${changes.join('; ')}.`,
    ...forecasts
      .filter(({ before, after }) => before !== after)
      .map(({ target, pages, before, after }) => {
        const [was, is] = [before, after].map(inOrders);
        const of = `${pages === 1 ? 'In' : 'On average, in'} ${count(pages, 'picture')} that did not change`;
        const earlier = was === is ? 'about as often as before' : `before ${was}`;
        return `${of}, a tint is seen ${is}${several ? ` (${target})` : ''}; ${earlier}.`;
      }),
  ];
}
