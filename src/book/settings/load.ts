import path from 'node:path';
import { defaultTarget, processes, profileProblem, recordProblem } from '../../print';
import type { PressProfile, PrintRecord, Target } from '../../shared/target';
import { layoutProblems } from './named-layouts';
import { pressProfileIn } from './press-profile';
import { printRecordIn } from './print-record';
import type { Problem } from './problem';
import {
  noSettings,
  type RawSettings,
  type RawTarget,
  type Settings,
  settle,
  unknownTargets,
  type WrittenTarget,
  writtenTargets,
} from './settings';
import { SETTINGS_FILE } from './settings-file';
import { type Parsed, parseAgainst, type Written } from './validate';
import { disk, type SettingsFiles } from './within';

export { SETTINGS_FILE };

export interface Loaded {
  /** Null where there are problems: half-understood settings would judge the wrong book. */
  settings: Settings | null;
  problems: Problem[];
  /** Absolute paths of every file the settings came from, to be watched. */
  files: string[];
}

export interface LoadOptions {
  /** Another settings file than the root's own, absolute. It may lie anywhere, since a person named it. */
  file?: string;
  /** Where files are looked for and read; left out: on the disk. A revision hands over its own. */
  source?: SettingsFiles;
}

/** The settings of the book at `root` (absolute), with house files; `noSettings` where there is no settings file. */
export async function loadSettings(root: string, options: LoadOptions = {}): Promise<Loaded> {
  const { source = disk } = options;
  const file = options.file ?? path.join(root, SETTINGS_FILE);
  const shown = path.relative(root, file).split(path.sep).join('/');
  const found = await source.within(
    options.file ? path.parse(file).root : root,
    path.dirname(file),
    path.basename(file),
  );
  if (!found.ok) {
    if (found.why === 'missing' && !options.file) return { settings: noSettings, problems: [], files: [] };
    return { settings: null, problems: [atStart(shown, found.message)], files: [] };
  }
  const { text, ...parsed } = await parseFile(file, shown, 'settings', source);
  const files = [file];
  const nameless = unknownTargets(parsed.value, parsed.problemAt);
  if (parsed.problems.length)
    return { settings: null, problems: inOrder([...parsed.problems, ...nameless]), files };

  const raw = parsed.value as RawSettings;
  const problems = [...nameless, ...(await layoutProblems(root, raw, source, parsed.problemAt))];
  const before = problems.length;
  const houses = new Map<string, RawTarget>();
  const known: OfPrintHouses = { source, profiles: new Map(), records: new Map() };
  const written = writtenTargets(raw);
  for (const target of written) {
    problems.push(...(await rebase(root, root, target.raw, target.path, parsed.problemAt, known)));
    const name = target.raw.house;
    if (name === undefined || houses.has(name)) continue;
    const house = await source.within(root, root, name);
    if (!house.ok) {
      problems.push(parsed.problemAt([...target.path, 'house'], house.message));
      continue;
    }
    files.push(house.file);
    const read = await parseFile(house.file, house.relative, 'house', source);
    problems.push(...read.problems);
    const { $schema: _, ...said } = (read.problems.length ? {} : read.value) as RawTarget & {
      $schema?: string;
    };
    problems.push(...(await rebase(root, path.dirname(house.file), said, [], read.problemAt, known)));
    houses.set(name, said);
  }
  // what a broken house file leaves out would be told as missing in the settings
  if (problems.length > before) return { settings: null, problems: inOrder(problems), files };
  const settled = settle(raw, written, houses, defaultTarget, parsed.problemAt);
  problems.push(...settled.problems, ...give(settled.settings.targets, written, known, parsed.problemAt));
  const settings = { ...settled.settings, written: { file: shown, text } };
  return { settings: problems.length ? null : settings, problems: inOrder(problems), files };
}

/** File by file, in the order of the text. */
const inOrder = (problems: readonly Problem[]): Problem[] => {
  const files = [...new Set(problems.map(({ file }) => file))];
  return problems.toSorted((x, y) => files.indexOf(x.file) - files.indexOf(y.file) || x.offset - y.offset);
};

/** A settings file of more than this is none: nobody writes so much by hand. */
const MOST_BYTES = 4 * 1024 * 1024;

const textIn = async (source: SettingsFiles, file: string): Promise<string> =>
  Buffer.from(await source.bytes(file, MOST_BYTES)).toString('utf8');

async function parseFile(
  file: string,
  shown: string,
  kind: Written,
  source: SettingsFiles,
): Promise<Parsed & { text: string }> {
  try {
    const text = await textIn(source, file);
    return { ...parseAgainst(kind, text, shown), text };
  } catch (error) {
    const problem = atStart(shown, `This file cannot be read: ${(error as Error).message}.`);
    return { value: undefined, problems: [problem], problemAt: () => problem, text: '' };
  }
}

/** What the print houses gave and delivered, by its path relative to the root. */
interface OfPrintHouses {
  source: SettingsFiles;
  profiles: Map<string, PressProfile>;
  records: Map<string, PrintRecord>;
}

/**
 * Makes the paths in a target relative to the root, looks whether they are there, and reads profile and record. Changes
 * `raw` and `known`.
 */
async function rebase(
  root: string,
  folder: string,
  raw: RawTarget,
  at: string[],
  problemAt: Parsed['problemAt'],
  known: OfPrintHouses,
): Promise<Problem[]> {
  const problems: Problem[] = [];
  for (const key of ['profile', 'record'] as const) {
    const written = raw[key];
    if (typeof written !== 'string') continue;
    const found = await known.source.within(root, folder, written);
    if (!found.ok) {
      problems.push(problemAt([...at, key], found.message));
      continue;
    }
    raw[key] = found.relative;
    try {
      if (key === 'profile')
        known.profiles.set(found.relative, await pressProfileIn(known.source, found.file));
      else known.records.set(found.relative, await printRecordIn(known.source, found.file));
    } catch (error) {
      problems.push(problemAt([...at, key], `"${written}": ${(error as Error).message}.`));
    }
  }
  return problems;
}

/** Puts profiles and records into the targets that name them. One of another kind of process is a problem. */
function give(
  targets: readonly Target[],
  written: readonly WrittenTarget[],
  known: OfPrintHouses,
  problemAt: Parsed['problemAt'],
): Problem[] {
  return targets.flatMap(target => {
    const process = processes.find(({ id }) => id === target.process)!;
    const profile = (target.profile !== null && known.profiles.get(target.profile)) || null;
    const record = (target.record !== null && known.records.get(target.record)) || null;
    if (profile) target.pressProfile = profile;
    if (record) target.printRecord = record;
    const faults = [
      ['profile', profile && profileProblem(process, profile)],
      ['record', record && recordProblem(process, record)],
    ] as const;
    const { path: at, raw } = written.find(({ name }) => name === target.name)!;
    return faults.flatMap(([key, fault]) =>
      fault
        ? [
            problemAt(
              [...at, raw[key] === undefined ? 'house' : key],
              `${fault[0].toUpperCase()}${fault.slice(1)}.`,
            ),
          ]
        : [],
    );
  });
}

const atStart = (file: string, message: string): Problem => ({
  file,
  offset: 0,
  length: 1,
  line: 1,
  column: 1,
  message,
  suggestion: null,
});
