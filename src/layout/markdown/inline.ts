// no-unit-test: test/layout/markdown/spec.test.ts runs every example of the specification through it
import type { Mapped } from '../mapped';
import { destinationAt, labelAt, spacesAt, titleAt } from './link-parts';

/** What the inline text of one block holds, in its own characters. */
export interface InlineParts {
  images: InlineImage[];
  /** Tags, comments and other raw HTML. */
  html: { from: number; to: number }[];
}

export interface InlineImage {
  /** Of its path; null where a definition of this label says it. */
  destination: { from: number; to: number } | null;
  label: string;
  from: number;
  /** End of the whole image: attributes may follow. */
  to: number;
}

interface Opener {
  image: boolean;
  /** After the bracket. */
  at: number;
  /** Another bracket was opened in it: it is no label. */
  nested: boolean;
}

const PUNCTUATION = /[!-/:-@[-`{-~]/;
const AUTOLINK = /<[a-z][a-z0-9+.-]{1,31}:[^\s<>]*>|<[\w.!#$%&'*+/=?^`{|}~-]+@[\w.-]+>/iy;
const TAG =
  /<(?:\/[a-z][a-z0-9-]*\s*|[a-z][a-z0-9-]*(?:\s+[a-z_:][\w.:-]*(?:\s*=\s*(?:"[^"]*"|'[^']*'|[^\s"'=<>`]+))?)*\s*\/?)>/iy;
/** Raw HTML that runs to a mark of its own: begins with the first, ends with the second. */
const RUNS = [
  ['<!--', '-->'],
  ['<?', '?>'],
  ['<![CDATA[', ']]>'],
  ['<!', '>'],
] as const;

/**
 * Finds images by the rules of CommonMark 0.31.2, chapter 6: code spans, autolinks and raw HTML bind more tightly than
 * brackets. `defines`: whether a definition has this label. Parsers at hand take quadratic time on hostile text; this
 * pass is linear.
 */
export function inlineParts({ text }: Mapped, defines: (label: string) => boolean): InlineParts {
  const parts: InlineParts = { images: [], html: [] };
  const openers: Opener[] = [];
  /** Links hold no links: of the openers below this one, only those of images still count. */
  let dead = 0;
  const closing = tickCloser(text);
  const ends = new Map<string, number>();

  const rawAt = (at: number): number => {
    for (const [begin, end] of RUNS) {
      if (!text.startsWith(begin, at)) continue;
      // sought once, not again from each beginning
      if (end !== '>' || /[a-z]/i.test(text[at + 2] ?? '')) {
        const from = at + (begin === '<!--' ? 2 : begin.length); // `<!-->` is a comment too
        const known = ends.get(end);
        const found =
          known !== undefined && (known === -1 || known >= from) ? known : text.indexOf(end, from);
        ends.set(end, found);
        if (found !== -1) return found + end.length;
      }
      return -1;
    }
    TAG.lastIndex = at;
    return TAG.test(text) ? TAG.lastIndex : -1;
  };

  /** At `](...)`, `][...]` or `]`: what the brackets mean. */
  const close = (at: number, opener: Opener): Omit<InlineImage, 'from'> | null => {
    if (text[at + 1] === '(') {
      let next = spacesAt(text, at + 2);
      const destination = destinationAt(text, next);
      if (destination) {
        next = spacesAt(text, destination.next);
        const title = next > destination.next ? titleAt(text, next) : null;
        if (title !== null) next = spacesAt(text, title);
        if (text[next] === ')') return { destination, label: '', to: next + 1 };
      } else if (text[next] === ')')
        return { destination: { from: next, to: next }, label: '', to: next + 1 };
    }
    const full = labelAt(text, at + 1);
    if (full?.label) return defines(full.label) ? { destination: null, ...full } : null;
    if (opener.nested || at - opener.at > 999) return null;
    const label = text.slice(opener.at, at);
    return label.trim() && defines(label) ? { destination: null, label, to: full ? full.to : at + 1 } : null;
  };

  let at = 0;
  while (at < text.length) {
    const character = text[at];
    if (character === '\\') at += PUNCTUATION.test(text[at + 1] ?? '') ? 2 : 1;
    else if (character === '`') at = closing(at);
    else if (character === '<') {
      AUTOLINK.lastIndex = at;
      const raw = AUTOLINK.test(text) ? -1 : rawAt(at);
      if (raw !== -1) parts.html.push({ from: at, to: raw });
      at = raw !== -1 ? raw : AUTOLINK.lastIndex || at + 1;
    } else if (character === '[' || (character === '!' && text[at + 1] === '[')) {
      const image = character === '!';
      at += image ? 2 : 1;
      const outer = openers.at(-1);
      if (outer) outer.nested = true;
      openers.push({ image, at, nested: false });
    } else if (character === ']') {
      const opener = openers.pop();
      const live = opener && (opener.image || openers.length >= dead);
      const found = live ? close(at, opener) : null;
      if (found && opener!.image) {
        // what stands in the words for a picture is only read out
        for (const kept of [parts.images, parts.html])
          while (kept.length && kept.at(-1)!.from >= opener!.at) kept.pop();
        parts.images.push({ ...found, from: opener!.at });
      }
      if (found && !opener!.image) dead = openers.length;
      dead = Math.min(dead, openers.length);
      at = found ? found.to : at + 1;
    } else at++;
  }
  return parts;
}

/** Where a run of backticks leads: behind the run of the same length that closes it, else behind itself. */
function tickCloser(text: string): (at: number) => number {
  let runs: Map<number, number[]> | null = null;
  return at => {
    if (!runs) {
      runs = new Map();
      for (const { index, 0: run } of text.matchAll(/`+/g))
        if (!runs.get(run.length)?.push(index)) runs.set(run.length, [index]);
      for (const places of runs.values()) places.reverse();
    }
    let end = at;
    while (text[end] === '`') end++;
    const places = runs.get(end - at) ?? [];
    while (places.length && places.at(-1)! < end) places.pop();
    const close = places.at(-1);
    return close === undefined ? end : close + (end - at);
  };
}
