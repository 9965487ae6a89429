import { doubtSentences } from '../../book/doubts';
import { lights, papers, processes, signalOf } from '../../print';
import { grouped } from '../../rules/groups';
import { groundInFull } from '../../rules/targets';
import { list } from '../../rules/words';
import type { BookReport } from '../../shared/finding';
import type { RouteId, Target } from '../../shared/target';

/** Pictures and what they are printed on. */
type Printed = Pick<BookReport, 'targets' | 'pictures'>;

/** How the book is printed, and what its forecasts rest on: a line a target, or that nobody said. */
export const targetLines = ({ targets, pictures }: Printed): string[] =>
  targetLinesOn(targets, target => groundsBy(target, pictures));

/** Each ground once; of several also which pictures it is of, by how they store their grey. */
function groundsBy({ name }: Target, pictures: Printed['pictures']): string[] {
  const prints = pictures.flatMap(({ targets, forecasts, facts }) =>
    forecasts
      .filter((_, i) => targets[i].name === name)
      .map(forecast => ({ ground: groundInFull(forecast), encoding: facts.encoding })),
  );
  const groups = grouped(prints, ({ ground }) => ground);
  if (groups.length < 2) return groups.map(([{ ground }]) => ground);
  const named = groups.map(group => {
    const encodings = [...new Set(group.map(({ encoding }) => encoding))];
    return `${list(encodings, encodings.length)}: ${group[0].ground}`;
  });
  return [named.join('; ')];
}

/** The same by grounds that are known, each in words. */
export const targetLinesOn = (
  targets: readonly Target[],
  groundsOf: (target: Target) => readonly string[],
): string[] =>
  targets.length
    ? targets.map(target => targetLine(target, targets.length > 1, groundsOf(target)))
    : [NO_TARGET];

const NO_TARGET = `Nobody said where it will be printed, so no tint is forecast. Name a process (${processes
  .map(({ id }) => id)
  .join(', ')}): "process" in evengrey.json, or --process.`;

function targetLine(target: Target, several: boolean, grounds: readonly string[]): string {
  const nameIn = (list: readonly { id: string; name: string }[], id: string) =>
    list.find(entry => entry.id === id)?.name ?? id;
  const paper =
    typeof target.paper === 'string' ? nameIn(papers, target.paper) : 'a paper of your own, as measured';
  const name = several ? `${target.name}: ` : '';
  const profile = target.pressProfile ? `; profile "${target.pressProfile.description}"` : '';
  const doubts = doubtSentences(target)
    .map(doubt => ` ${doubt}`)
    .join('');
  // once for all findings
  const basis = grounds.length ? ` Forecasts: ${grounds.join('; or ')}.` : '';
  return `${name}${nameIn(processes, target.process)}; ${paper}; ${nameIn(lights, target.light)}; ${routeWords(target)}${profile}.${doubts}${basis}`;
}

/** What the forecasts take the print house to do with the numbers; of a route that cannot be, `doubtsOf` tells. */
function routeWords(target: Target): string {
  if (signalOf(target) === 'rgb') return routes.rgb;
  return target.route === 'rgb' ? routes.separated : routes[target.route];
}

const routes: Record<RouteId, string> = {
  rgb: 'printed from R, G, B',
  separated: 'separated to inks',
  inks: 'ink values kept where a file holds them',
  'black-plate': 'black plate only',
  unknown: 'route not known, so several are mixed by our own guess of their shares',
};
