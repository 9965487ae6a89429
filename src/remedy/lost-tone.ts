import { isStronglyToned } from '../rules/unasked';
import { list } from '../rules/words';
import type { RemedyWish } from '../shared/remedy';
import type { Asked, Decision } from './plan/types';

/** Pictures whose tone goes, though it may be meant. */
export interface LostTones {
  /** Not those that the settings say are to be grey, nor where colour of that strength stays. */
  strong: Asked[];
  /**
   * So faint that it was hardly meant, which no figure can tell from a faint toning: only those that were found in a folder,
   * and of which nobody said anything.
   */
  faint: Asked[];
}

export function lostTones(
  decisions: readonly Decision[],
  { to, below }: Pick<RemedyWish, 'to' | 'below'>,
): LostTones {
  const toned =
    to === 'rgb-toned'
      ? []
      : decisions.flatMap(({ do: what, asked }) => (what === 'convert' && isToned(asked) ? asked : []));
  const [strong, faint] = [true, false].map(is =>
    toned.filter(({ pages }) => isStronglyToned(pages[0]) === is),
  );
  return {
    strong: strong.filter(asked => !isToLose(asked) && (below === null || meanChroma(asked) < below)),
    faint: faint.filter(({ meant, intentStated }) => !meant && !intentStated && below === null),
  };
}

/** What a person should know of them. */
export function lostToneNotices({ strong, faint }: LostTones, dryRun: boolean): string[] {
  return [
    ...(strong.length ? [`${lossWords(strong, 'strong', dryRun)} ${strongWayOut(strong)}`] : []),
    ...(faint.length ? [`${lossWords(faint, 'faint', dryRun)} ${faintWayOut(faint)}`] : []),
  ];
}

function lossWords(losing: readonly Asked[], how: 'strong' | 'faint', dryRun: boolean): string {
  const chroma = losing.map(asked => Math.round(meanChroma(asked)));
  const [least, most] = [Math.min(...chroma), Math.max(...chroma)];
  const carry = losing.length === 1 ? '1 picture carries' : `${losing.length} pictures carry`;
  const names = losing.map(({ path }) => path);
  return `${carry} a ${how} tone, of a mean chroma of ${least === most ? least : `${least} to ${most}`}, which ${dryRun ? 'would be' : 'is'} gone from the result: ${list(names, names.length)}.`;
}

const strongWayOut = (losing: readonly Asked[]): string =>
  `If it is meant, as a sepia toning is, ${keptBy(losing)}; or keep what is stronger than a chroma of your choice with "--below".`;

const faintWayOut = (losing: readonly Asked[]): string =>
  `It is taken for what a scanner or a conversion left over. If it is meant, as a faint toning is, ${keptBy(losing)}.`;

const keptBy = (losing: readonly Asked[]): string =>
  losing.length === 1
    ? 'list it under "intent", "toned", in evengrey.json, and it stays as it is'
    : 'list them under "intent", "toned", in evengrey.json, and they stay as they are';

const isToned = ({ pages: [{ encoding }] }: Asked): boolean => encoding === 'rgb-toned';

const isToLose = ({ intent, intentStated }: Asked): boolean =>
  intentStated && (intent === 'grey' || intent === 'line');

const meanChroma = ({ pages: [{ chroma }] }: Asked): number => chroma?.mean ?? 0;
