// no-unit-test: test/book/settings/load.test.ts settles whole files
import type { Severity } from '../../shared/finding';
import type { Intent } from '../../shared/picture';
import type { ProcessId, Target } from '../../shared/target';
import type { Problem } from './problem';
import { suggest } from './suggest';
import type { Parsed } from './validate';
import type { SettingsText } from './written-at';

/** `evengrey.json` as the book uses it: lists where one word was enough, defaults filled in. */
export interface Settings {
  /** Globs; null: what layouts place, else every picture in the folder. */
  pictures: string[] | null;
  ignore: string[];
  targets: Target[];
  parts: Part[];
  /** In the order of the file; the first that names a picture has it. */
  intents: IntentGroup[];
  /** Trimmed page in mm. */
  trim: { width: number; height: number } | null;
  placements: { picture: string; width?: number; height?: number }[];
  /** Globs of the sources that lay out the book; null: every one in the folder. */
  layouts: string[] | null;
  /** Of the text, in mm. */
  textWidth: number | null;
  /** Pictures seen side by side, in the order of the book. */
  spreads: string[][];
  rules: Record<string, RuleSetting>;
  /** What they were read from, so that what they say can be shown where it stands; absent: no file. */
  written?: SettingsText;
}

export type RuleSetting = 'off' | Severity | [Severity, Record<string, unknown>];

export interface Part {
  name: string;
  pictures: string[];
  /** Names of targets; null: all of them. */
  targets: string[] | null;
}

export interface IntentGroup {
  intent: Intent;
  pictures: string[];
  /** Path of the picture whose tone the others are to match. */
  reference: string | null;
}

/** A target as it is written. */
export interface RawTarget extends Partial<Omit<Target, 'name'>> {
  house?: string;
}

type Globs = string | string[];
type Group = { pictures: Globs; reference?: string };

/** The file as it is written, once the schema has passed it. */
export interface RawSettings extends RawTarget {
  pictures?: Globs;
  ignore?: Globs;
  targets?: Record<string, RawTarget>;
  parts?: Record<string, { pictures: Globs; target?: Globs }>;
  intent?: Partial<Record<Intent, Globs | Group | (string | Group)[]>>;
  trim?: { width: number; height: number };
  placements?: Record<string, { width?: number; height?: number }>;
  layouts?: Globs;
  textWidth?: number;
  spreads?: string[][];
  rules?: Record<string, RuleSetting>;
}

/** Every key of a target: what the short form may say at the top level. */
export const targetKeys = [
  'process',
  'paper',
  'light',
  'route',
  'profile',
  'record',
  'encodings',
  'inkLimit',
  'house',
] as const;

/** Name of the one target of the short form. */
export const ONLY_TARGET = 'book';

/** A book without `evengrey.json`: every picture in the folder, and nobody knows where it will be printed. */
export const noSettings: Settings = {
  pictures: null,
  ignore: [],
  targets: [],
  parts: [],
  intents: [],
  trim: null,
  placements: [],
  layouts: null,
  textWidth: null,
  spreads: [],
  rules: {},
};

/** Where a target is written, and what it says. */
export interface WrittenTarget {
  name: string;
  path: string[];
  raw: RawTarget;
}

/** The targets as written: the short form at the top level is one of them. */
export function writtenTargets(raw: RawSettings): WrittenTarget[] {
  const named = Object.entries(raw.targets ?? {}).map(([name, target]) => ({
    name,
    path: ['targets', name],
    raw: target,
  }));
  const short = Object.fromEntries(
    targetKeys.flatMap(key => (raw[key] === undefined ? [] : [[key, raw[key]]])),
  );
  return Object.keys(short).length ? [...named, { name: ONLY_TARGET, path: [], raw: short }] : named;
}

/**
 * Fills in what the file leaves out. `written` are its targets, `houses` holds the house files by the path that is written in
 * the settings.
 * What the schema cannot see is told as problems: a target without a process, or in two places.
 */
export function settle(
  raw: RawSettings,
  written: readonly WrittenTarget[],
  houses: ReadonlyMap<string, RawTarget>,
  defaultTarget: (process: ProcessId) => Target,
  problemAt: Parsed['problemAt'],
): { settings: Settings; problems: Problem[] } {
  const problems: Problem[] = [];
  const short = written.find(target => target.path.length === 0);
  const beside = raw.targets && short && Object.keys(short.raw)[0];
  if (beside) {
    const what = `"${beside}" stands at the top level beside "targets".`;
    problems.push(problemAt([beside], `${what} Move it into the target it belongs to.`, 'key'));
  }
  const standing = beside ? written.filter(target => target !== short) : written;
  const targets = standing.flatMap(target => {
    const said = { ...(houses.get(target.raw.house ?? '') ?? {}), ...target.raw };
    if (!said.process) {
      const key = target.path.length ? target.path : [Object.keys(target.raw)[0]];
      const what = target.path.length ? `The target "${target.name}"` : 'The target';
      problems.push(problemAt(key, `${what} does not say its process.`, 'key'));
      return [];
    }
    const { house: _, ...own } = said;
    return [{ ...defaultTarget(said.process), ...own, name: target.name }];
  });
  return { settings: { ...rest(raw), targets }, problems };
}

/**
 * Parts on a target of a name that none has. Told beside whatever else is wrong, so `written` may be anything that JSON
 * holds.
 */
export function unknownTargets(written: unknown, problemAt: Parsed['problemAt']): Problem[] {
  const raw = objectOf(written);
  const named = Object.keys(objectOf(raw.targets));
  const names = named.length || !targetKeys.some(key => key in raw) ? named : [ONLY_TARGET];
  return Object.entries(objectOf(raw.parts)).flatMap(([part, said]) => {
    const { target } = objectOf(said);
    return [target].flat().flatMap((name, i) => {
      if (typeof name !== 'string' || names.includes(name)) return [];
      const path = ['parts', part, 'target', ...(Array.isArray(target) ? [i] : [])];
      const suggestion = suggest(name, names);
      const known = names.length ? `Targets here: ${names.join(', ')}.` : 'There is no target here.';
      const help = suggestion ? `Did you mean "${suggestion}"?` : known;
      return [problemAt(path, `No target is called "${name}". ${help}`, 'value', suggestion)];
    });
  });
}

const objectOf = (value: unknown): Record<string, unknown> =>
  value && typeof value === 'object' && !Array.isArray(value) ? (value as Record<string, unknown>) : {};

function rest(raw: RawSettings): Omit<Settings, 'targets'> {
  return {
    pictures: raw.pictures === undefined ? null : listOf(raw.pictures),
    ignore: listOf(raw.ignore),
    parts: Object.entries(raw.parts ?? {}).map(([name, part]) => ({
      name,
      pictures: listOf(part.pictures),
      targets: part.target === undefined ? null : listOf(part.target),
    })),
    intents: Object.entries(raw.intent ?? {}).flatMap(([intent, groups]) =>
      [groups].flat().map(group => ({
        intent: intent as Intent,
        pictures: typeof group === 'string' ? [group] : listOf(group.pictures),
        reference: typeof group === 'string' ? null : (group.reference ?? null),
      })),
    ),
    trim: raw.trim ?? null,
    placements: Object.entries(raw.placements ?? {}).map(([picture, size]) => ({ picture, ...size })),
    layouts: raw.layouts === undefined ? null : listOf(raw.layouts),
    textWidth: raw.textWidth ?? null,
    spreads: raw.spreads ?? [],
    rules: raw.rules ?? {},
  };
}

const listOf = (one: Globs | undefined): string[] => (one === undefined ? [] : [one].flat());
