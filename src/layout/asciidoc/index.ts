import { lengthOf, units } from '../length';
import { Mapped } from '../mapped';
import { type Draft, looksLikePicture, plainDraft } from '../reference';
import type { Include, Inherited, LayoutSize } from '../types';
import { attributeList } from './attributes';

export interface AsciidocText {
  drafts: Draft[];
  includes: Include[];
  passesOn: Inherited;
}

/** Delimiters of blocks in which nothing is a macro: comments, listings, literals, passthroughs. */
const VERBATIM = /^(?:\/{4,}|-{4,}|\.{4,}|\+{4,}|```\w*)[ \t]*$/;
const ENTRY = /^:(!?[\w-]+!?):(?:[ \t]+(.*?))?[ \t]*$/;
const INCLUDE = /^include::([^[\]]+)\[([^\]]*)/;
const LIST = /^[ \t]+(?:[-*.]+|\d+\.|[a-z]\.)[ \t]/;
/** `image::target[...]` alone in its line, `image:target[...]` within one; a backslash or a letter before is none. */
const MACRO = /(?<![\w\\])image:(:?)([^\s:[\]][^\n[\]]{0,999})\[((?:[^\n]{0,2000}?[^\\\n])?)\]/g;

/** The pictures of an AsciiDoc text, in linear time. */
export function asciidocText(source: string, inherited: Inherited = {}, textWidth?: number): AsciidocText {
  const drafts: Draft[] = [];
  const includes: Include[] = [];
  const attributes = new Map<string, string>();
  let folders = inherited.folders ?? [];
  let verbatim: string | null = null;
  let blank = true;
  let literal = false;
  for (const { index, 0: line } of source.matchAll(/[^\r\n]+|\r\n?|\n/g)) {
    if (/^[\r\n]/.test(line)) {
      const empty = /[\r\n]/.test(source[index - 1] ?? '\n');
      if (empty) [blank, literal] = [true, false];
      continue;
    }
    const mark = VERBATIM.test(line) ? line.trim().replace(/\w+$/, '') : null;
    if (verbatim !== null) {
      if (mark === verbatim) verbatim = null;
      continue;
    }
    if (mark !== null) {
      verbatim = mark;
      continue;
    }
    if (blank && /^[ \t]/.test(line) && !LIST.test(line)) literal = true;
    blank = false;
    if (literal || (line.startsWith('//') && !line.startsWith('///'))) continue;
    const entry = ENTRY.exec(line);
    if (entry) {
      const [, name, value = ''] = entry;
      const unset = name.includes('!');
      const text = substituted(value, attributes);
      if (unset) attributes.delete(name.replaceAll('!', ''));
      else attributes.set(name, text);
      if (name.replaceAll('!', '') === 'imagesdir') folders = unset || !text ? [] : [text];
      else if (looksLikePicture(value) && !value.startsWith('image:')) {
        const from = index + line.indexOf(value, name.length + 2);
        drafts.push(
          plainDraft(Mapped.of(source, from, from + value.length), ['asciidoc'], null, {
            certain: false,
            folders,
          }),
        );
      }
    }
    const include = INCLUDE.exec(line);
    if (include)
      includes.push({
        ...{ path: substituted(include[1], attributes), start: index },
        ...(/\boptional\b/.test(include[2]) && { optional: true }),
      });
    for (const match of line.includes('image:') ? line.matchAll(MACRO) : []) {
      const [macro, block, target, list] = match;
      if (block && match.index > 0) continue;
      const from = index + match.index + macro.indexOf(target);
      const written = Mapped.of(source, from, from + target.length).trim();
      const draft = plainDraft(written, ['asciidoc'], sizeOf(attributeList(list), textWidth), { folders });
      drafts.push({ ...draft, path: substituted(written.text, attributes) });
    }
  }
  return { drafts, includes, passesOn: { folders } };
}

const CHARACTERS: Record<string, string> = { startsb: '[', endsb: ']', sp: ' ', space: ' ' };

/** Values that grow and grow are no paths. */
const LONGEST = 2000;

const substituted = (text: string, attributes: ReadonlyMap<string, string>): string =>
  text
    .slice(0, LONGEST)
    .replace(/\\?\{([\w-]+)\}/g, (whole, name: string) =>
      whole.startsWith('\\') ? whole.slice(1) : (attributes.get(name) ?? CHARACTERS[name] ?? whole),
    )
    .slice(0, LONGEST);

/** What is said for paper goes before what is said for a screen. */
function sizeOf(list: ReadonlyMap<string, string>, whole?: number): LayoutSize | null {
  const length = (text: string | undefined, of?: number) =>
    text === undefined ? undefined : lengthOf(text, units.web, { whole: of, bare: 'px' });
  const paper = length(list.get('pdfwidth') ?? list.get('scaledwidth'), whole);
  if (paper) return { width: paper };
  if (list.has('pdfwidth') || list.has('scaledwidth')) return null;
  const width = length(list.get('width') ?? list.get('2'), whole);
  const height = length(list.get('height') ?? list.get('3'));
  return width || height ? { ...(width && { width }), ...(height && { height }) } : null;
}
