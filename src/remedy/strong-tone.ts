import { isStronglyToned } from '../rules/unasked';
import { list } from '../rules/words';
import type { RemedyWish } from '../shared/remedy';
import type { Asked, Decision } from './plan/types';

/**
 * Pictures whose strong tone goes, though it may be meant: not those that the settings say are to be grey, nor where
 * colour of that strength stays.
 */
export function losingStrongTone(
  decisions: readonly Decision[],
  { to, below }: Pick<RemedyWish, 'to' | 'below'>,
): Asked[] {
  if (to === 'rgb-toned') return [];
  return decisions.flatMap(({ do: what, asked }) =>
    what === 'convert' && losesTone(asked, below) ? asked : [],
  );
}

/** What a person should know of them; null where there are none. */
export function strongToneNotice(losing: readonly Asked[], dryRun: boolean): string | null {
  if (!losing.length) return null;
  const chroma = losing.map(asked => Math.round(meanChroma(asked)));
  const [least, most] = [Math.min(...chroma), Math.max(...chroma)];
  const [carry, them, they] =
    losing.length === 1
      ? ['1 picture carries', 'it', 'it stays as it is']
      : [`${losing.length} pictures carry`, 'them', 'they stay as they are'];
  const names = losing.map(({ path }) => path);
  return `${carry} a strong tone, of a mean chroma of ${least === most ? least : `${least} to ${most}`}, which ${dryRun ? 'would be' : 'is'} gone from the result: ${list(names, names.length)}. If it is meant, as a sepia toning is, list ${them} under "intent", "toned", in evengrey.json, and ${they}; or keep what is stronger than a chroma of your choice with "--below".`;
}

function losesTone(asked: Asked, below: number | null): boolean {
  const { intent, intentStated } = asked;
  if (intentStated && (intent === 'grey' || intent === 'line')) return false;
  return isStronglyToned(asked.pages[0]) && (below === null || meanChroma(asked) < below);
}

const meanChroma = ({ pages: [{ chroma }] }: Asked): number => chroma?.mean ?? 0;
