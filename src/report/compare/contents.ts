import { count } from '../../rules/words';
import type { Comparison, OtherChange, PictureChange } from '../../shared/comparison';
import type { Finding } from '../../shared/finding';
import { type Html, html } from '../page/html';
import { mark } from '../page/marks';
import { rank } from '../told';
import { differencesOf } from './differences';
import { isLoud, verdictOn, weighedOf } from './verdict';
import { rulesOf } from './waived';
import type { Ranked } from './worst-first';

/** What a reader has to see first: the pictures by what speaks against them, worst first, as they follow below. */
export function contents(entries: readonly Ranked[], { others, settings }: Comparison): Html {
  const unchanged = others.filter(({ findings }) => findings.new.some(isLoud));
  if (!entries.length && !unchanged.length) return html``;
  return html`
<nav class="contents" id="contents" aria-label="What changed, worst first"><h3>What changed, worst first</h3><ul>${[
    unchanged.length > 0 && aboutOthers(unchanged),
    ...entries.map(
      ({ at, change, against }) =>
        html`<li>${mark(against[0]?.severity ?? 'leave')} <a href="#change-${at + 1}">${change.path}</a>: ${lower(verdictOn(change, settings.off).words)}${namedIn(change, settings.off)}${foremost(change)}</li>`,
    ),
  ]}</ul></nav>`;
}

/** Their own list follows, and tells of each. */
function aboutOthers(unchanged: readonly OtherChange[]): Html {
  const fresh = unchanged.flatMap(({ findings }) => findings.new.filter(isLoud)).sort(worstFirst);
  const names = count(unchanged.length, 'picture');
  return html`<li>${mark(fresh[0].severity)} <a href="#others">${names} that did not change</a>: new is ${rulesOf(fresh)}</li>`;
}

const worstFirst = (x: Finding, y: Finding): number => rank[x.severity] - rank[y.severity];

const lower = (words: string): string => `${words[0].toLowerCase()}${words.slice(1)}`;

/** ` (warning tint)`, and where there are several kinds, which is which: ` (ended: warning tint; as before: error clipped)`. */
function namedIn(change: PictureChange, off?: readonly string[]): string {
  // of one that is gone nothing was put right
  if (change.kind === 'deleted') return '';
  const weighed = weighedOf(change, off);
  const kinds = (
    [
      ['new', 'new'],
      ['ended', 'ended'],
      ['as before', 'unchanged'],
      ['waived', 'waived'],
    ] as const
  ).flatMap(([words, which]) => {
    const rules = rulesOf(weighed[which]);
    return rules ? [{ words, rules }] : [];
  });
  const told = kinds.map(({ words, rules }) => (kinds.length > 1 ? `${words}: ${rules}` : rules));
  return told.length ? ` (${told.join('; ')})` : '';
}

/** What is otherwise in it, as far as it is seen: the first thing alone. */
function foremost({ pages, bytes }: PictureChange): string {
  const [first] = pages.flatMap(page =>
    differencesOf(page, bytes).filter(({ of }) => of !== 'nothing' || page.samePixels),
  );
  return first ? `; ${first.words}` : '';
}
