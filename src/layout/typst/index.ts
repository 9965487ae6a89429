import { Mapped } from '../mapped';
import { type Draft, looksLikePicture, plainDraft } from '../reference';
import type { Include, Inherited, PlacingFunction } from '../types';
import { type Call, type StringLiteral, walk } from './code';
import type { Definition } from './definitions';
import { imageSize, pageTextWidth, widthIn } from './measures';
import { typstUnescaped } from './strings';
import { type Part, sumOf } from './sum';

export interface TypstText {
  drafts: Draft[];
  includes: Include[];
  passesOn: Inherited;
  /** Offsets of calls that place nobody knows what. */
  unread: number[];
}

type Round = Omit<PlacingFunction, 'picture'>;

/**
 * The pictures of a Typst text: calls of `image`, and of functions that hand it what they are given, be it put together
 * with other strings; and strings that name a picture for what else may place it.
 */
export function typstText(source: string, inherited: Inherited = {}, textWidth?: number): TypstText {
  return new Reading(source, inherited, textWidth).run();
}

class Reading {
  private readonly drafts: Draft[] = [];
  private readonly includes: Include[] = [];
  private readonly unread: number[] = [];
  private readonly functions: Map<string, PlacingFunction>;
  private readonly constants = new Map<string, StringLiteral>();
  private readonly lists = new Map<string, readonly StringLiteral[]>();
  /** Where strings begin that a call places. */
  private readonly placed = new Set<number>();
  private readonly strings: StringLiteral[] = [];
  private pageWidth: number | undefined;

  constructor(
    private readonly source: string,
    inherited: Inherited,
    private readonly fixedWidth: number | undefined,
  ) {
    this.functions = new Map(inherited.functions);
    this.pageWidth = inherited.textWidth;
  }

  run(): TypstText {
    walk(this.source, {
      string: literal => this.strings.push(literal),
      constant: (name, literal) => this.constants.set(name, literal),
      list: (name, items) => this.lists.set(name, items),
      file: (literal, how) => this.file(literal, how),
      call: call => this.call(call),
    });
    for (const literal of this.strings)
      if (!this.placed.has(literal.from) && looksLikePicture(this.textOf(literal)))
        this.draft(literal, PLAIN, false);
    const { drafts, includes, unread, functions, pageWidth } = this;
    return { drafts, includes, unread, passesOn: { functions, ...(pageWidth && { textWidth: pageWidth }) } };
  }

  private call(call: Call): void {
    const { name, setting, named, positional, values } = call;
    if (name === 'page' && setting) this.pageWidth = pageTextWidth(named) ?? this.pageWidth;
    if (setting) return;
    const known = this.functions.get(name);
    if (name === 'image' && positional.length) {
      const size = imageSize(call, widthIn(call, this.fixedWidth ?? this.pageWidth));
      this.place(call, positional[0], { ...PLAIN, size });
    } else if (known) {
      const given = typeof known.picture === 'number' ? positional[known.picture] : values.get(known.picture);
      if (given) this.place(call, given, known);
    } else if (name === 'map' && positional.length) {
      const mapped = this.textOf(positional[0]).trim();
      if (mapped === 'image' || this.functions.has(mapped)) this.unread.push(call.at);
    }
  }

  /** What a call places: one picture, or what the function in which it stands will be given, or the items of a list. */
  private place({ at, within }: Call, given: StringLiteral, round: Round): void {
    const parts = sumOf(this.source, given)?.map(part => this.known(part, within));
    const names = parts?.flatMap(part => ('name' in part ? part.name : [])) ?? [];
    const items = names.length === 1 && !isParameter(names[0], within) ? this.itemsOf(names[0]) : null;
    if (!parts || names.length > 1 || (names.length === 1 && !items && !isParameter(names[0], within))) {
      if (!looksLikePicture(this.stringIn(given))) this.unread.push(at);
      return;
    }
    const picture = names.length
      ? parts.findIndex(part => 'name' in part)
      : pathAmong(parts.map(part => this.partText(part)));
    const text = (some: readonly Part[]) => some.map(part => this.partText(part)).join('');
    const put: Round = {
      ...round,
      before: round.before + text(parts.slice(0, picture)),
      after: text(parts.slice(picture + 1)) + round.after,
    };
    const part = parts[picture];
    if (!('name' in part)) this.draft(part, put, true);
    else if (items) for (const item of items) this.draft(item, put, true);
    else this.functions.set(within!.name, { ...put, picture: argumentOf(part.name, within!) });
  }

  /** A name that stands for a string is that string. */
  private known(part: Part, within: Definition | null): Part {
    if (!('name' in part) || isParameter(part.name, within)) return part;
    return this.constants.get(part.name) ?? part;
  }

  /** Null where they are not all strings. */
  private itemsOf(name: string): StringLiteral[] | null {
    const items: StringLiteral[] = [];
    for (const item of this.lists.get(name) ?? []) {
      const [only, ...more] = sumOf(this.source, item) ?? [];
      if (!only || 'name' in only || more.length) return null;
      items.push(only);
    }
    return items.length ? items : null;
  }

  private file(literal: StringLiteral, how: 'include' | 'import'): void {
    const path = typstUnescaped(Mapped.of(this.source, literal.from, literal.to)).text;
    if (!/\.typ$/i.test(path)) return;
    this.includes.push({ path, start: literal.from, ...(how === 'import' && { namesOnly: true as const }) });
  }

  private draft(literal: StringLiteral, { before, after, size, folder }: Round, certain: boolean): void {
    const written = typstUnescaped(Mapped.of(this.source, literal.from, literal.to));
    if (!written.text) return;
    if (certain) this.placed.add(literal.from);
    const folders = folder ? [folder] : [];
    this.drafts.push(plainDraft(written, ['typst'], size, { certain, before, after, folders }));
  }

  private partText(part: Part): string {
    return 'name' in part ? '' : typstUnescaped(Mapped.of(this.source, part.from, part.to)).text;
  }

  /** Of a longer expression the string in it, which may name the picture by itself. */
  private stringIn(given: StringLiteral): string {
    return /"([^"\\]*)"/.exec(this.textOf(given).slice(0, LONGEST))?.[1] ?? '';
  }

  private textOf({ from, to }: StringLiteral): string {
    return this.source.slice(from, to);
  }
}

const PLAIN: Round = { before: '', after: '', size: null, folder: '' };
const LONGEST = 1000;

const isParameter = (name: string, within: Definition | null): boolean =>
  within !== null && (within.positional.includes(name) || within.named.includes(name));

const argumentOf = (name: string, { positional }: Definition): number | string =>
  positional.includes(name) ? positional.indexOf(name) : name;

/** Which of several strings is taken for the path: the last that is more than an extension. */
function pathAmong(texts: readonly string[]): number {
  const last = texts.findLastIndex(text => !/^\.\w*$/.test(text));
  return last === -1 ? texts.length - 1 : last;
}
