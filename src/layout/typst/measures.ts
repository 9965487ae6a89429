// no-unit-test: test/layout/typst/index.test.ts reads sizes by it
import { lengthOf, units } from '../length';
import type { LayoutSize } from '../types';
import type { Call } from './code';

/** Functions that leave their content the width it has. */
const NO_BOX = new Set(
  'figure align link center left right text emph strong place footnote show page par'.split(' '),
);
const BOX = new Set(['box', 'block', 'rect']);
/** Nested more deeply, nobody knows the width. */
const DEEPEST = 20;

/** The width in mm that shares are of where a call stands; undefined where a box or a grid decides it. */
export function widthIn({ around }: Call, textWidth: number | undefined): number | undefined {
  let share = 1;
  let depth = 0;
  for (let call = around; call; call = call.around) {
    if (++depth > DEEPEST) return undefined;
    if (NO_BOX.has(call.name)) continue;
    const written = BOX.has(call.name) ? call.named.get('width') : undefined;
    if (written === undefined) return undefined;
    const percent = /^([\d.]+)%$/.exec(written);
    if (!percent) {
      const mm = lengthOf(written, units.typst);
      return mm && mm * share;
    }
    share *= Number(percent[1]) / 100;
  }
  return textWidth && textWidth * share;
}

/** Width and height of a call of `image`; `whole`: mm that shares of the width are of. */
export function imageSize({ named, defaults }: Call, whole: number | undefined): LayoutSize | null {
  const say = (key: string) => named.get(key) ?? defaults.get(key) ?? '';
  const width = lengthOf(say('width'), units.typst, { whole });
  const height = lengthOf(say('height'), units.typst);
  if (!width && !height) return null;
  const fits = width && height && say('fit') === '"contain"';
  return { ...(width && { width }), ...(height && { height }), ...(fits && { fits: true }) };
}

/** ISO 216 and the two American ones, mm; Typst's own names. */
const PAPERS: Record<string, [number, number]> = {
  a3: [297, 420],
  a4: [210, 297],
  a5: [148, 210],
  a6: [105, 148],
  'iso-b4': [250, 353],
  'iso-b5': [176, 250],
  'us-letter': [215.9, 279.4],
  'us-legal': [215.9, 355.6],
};
/** Of the shorter edge: Typst's margin where none is said. */
const AUTO_MARGIN = 2.5 / 21;

/** The width of the text that a `set page` rule gives, in mm. */
export function pageTextWidth(named: ReadonlyMap<string, string>): number | undefined {
  const paper = PAPERS[named.get('paper')?.replaceAll('"', '') ?? ''];
  const lies = named.get('flipped') === 'true';
  const width = lengthOf(named.get('width') ?? '', units.typst) ?? paper?.[lies ? 1 : 0];
  const height = lengthOf(named.get('height') ?? '', units.typst) ?? paper?.[lies ? 0 : 1];
  if (!width) return undefined;
  const margin = named.get('margin');
  if (margin === undefined || margin === 'auto')
    return height && width - 2 * Math.min(width, height) * AUTO_MARGIN;
  const both = marginOf(margin, width);
  return both !== undefined && both < width ? width - both : undefined;
}

/** Left and right margin together, in mm. */
function marginOf(written: string, width: number): number | undefined {
  const length = (text: string | undefined) => {
    if (text === undefined) return undefined;
    return /^0(?:mm|cm|in|pt|%)?$/.test(text) ? 0 : lengthOf(text, units.typst, { whole: width });
  };
  const one = length(written);
  if (one !== undefined) return one * 2;
  const parts = new Map(
    [...written.matchAll(/([a-z]+)\s*:\s*([^,()]+)/g)].map(([, key, value]) => [key, value.trim()]),
  );
  const side = (...keys: string[]) => {
    const key = keys.find(name => parts.has(name));
    return length(key && parts.get(key));
  };
  const [first, second] = [side('left', 'inside', 'x', 'rest'), side('right', 'outside', 'x', 'rest')];
  return first === undefined || second === undefined ? undefined : first + second;
}
