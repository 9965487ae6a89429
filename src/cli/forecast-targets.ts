// no-unit-test: test/cli/actions/forecast-settings.test.ts runs the built program
import fs from 'node:fs/promises';
import path from 'node:path';
import { type Overrides, override } from '../book/overrides';
import { standings } from '../book/pictures';
import { SETTINGS_FILE } from '../book/settings/load';
import { defaultTarget, lights, processes } from '../print';
import type { SettingsUsed } from '../report/json';
import type { LightId, Target } from '../shared/target';
import { named, settingsOf } from './book';
import { conditionsOf, routeOf, separatedForOf } from './conditions';
import type { ForecastVerbOptions } from './verbs/forecast';

export interface Conditions {
  targets: Target[];
  /** The settings that say so, or that are passed over; null: none were asked, and none belong to the picture. */
  settings: SettingsUsed | null;
}

/** The picture's own book: its folder, and its path in it. */
export interface InBook {
  root: string;
  path: string;
}

/**
 * What a forecast is made for: as the settings say that were named, or those of the picture's book; a process that is
 * asked for on the spot goes before a book that was not named. Else every process, its usual paper, and what was asked.
 * @throws Failure for names that are not known and settings that cannot be used
 */
export async function targetsOf(options: ForecastVerbOptions, picture: InBook | null): Promise<Conditions> {
  const every = options.light === ALL;
  const asked = conditionsOf({ ...options, light: every ? undefined : options.light });
  const route = routeOf(options.route);
  const separatedFor = separatedForOf(options.separatedFor);
  const own = await ofSettings(options, asked, picture);
  const targets = own?.targets.length
    ? own.targets.flatMap(target => (every ? underAll(target) : [target]))
    : usual(asked, every, options);
  return {
    targets: targets.map(target => ({
      ...target,
      route: route ?? target.route,
      separatedFor: separatedFor ?? target.separatedFor,
    })),
    settings: own?.settings ?? null,
  };
}

const ALL = 'all';
const DAYLIGHT: LightId = 'D50';

const underAll = (target: Target): Target[] => lights.map(({ id }) => ({ ...target, light: id }));

/** Every process and light that was not left to choice, by process, then light. */
function usual(
  { process, paper, light }: Overrides,
  every: boolean,
  { format }: ForecastVerbOptions,
): Target[] {
  // seven tables of ten lights are read by nobody; other programs want them all
  const brief = format === 'text' && !process && !light && !every;
  return (process ? [process] : processes.map(({ id }) => id)).flatMap(id => {
    const target = defaultTarget(id);
    const one = { ...target, paper: paper ?? target.paper, light: light ?? DAYLIGHT };
    return light || brief ? [one] : underAll(one);
  });
}

/** Targets as settings have them for the picture, and what is said of them; null where no settings come into it. */
async function ofSettings(
  options: ForecastVerbOptions,
  asked: Overrides,
  picture: InBook | null,
): Promise<Conditions | null> {
  const file = options.settings === undefined ? undefined : named(options.settings);
  if (file === undefined && (!picture || !(await hasSettings(picture.root)))) return null;
  const root = picture?.root ?? path.dirname(file!);
  const told = (role: SettingsUsed['role']): Conditions => ({
    targets: [],
    settings: { file: shownFile(file ?? path.join(root, SETTINGS_FILE)), role, targets: [], changed: [] },
  });
  // nobody asked for these, and they may be at fault
  if (file === undefined && asked.process) return told('not-asked');
  const { settings } = await settingsOf(root, options.settings, 'forecast');
  const all = picture ? standings(settings)(picture.path).targets : settings.targets;
  if (!all.length) return told('silent');
  const targets = override(all, asked);
  const names = targets.map(({ name }) => name);
  if (asked.process && !all.some(({ process }) => process === asked.process)) return told('no-target');
  const used = told('used').settings!;
  const changed = CHANGING.filter(([key]) => options[key] !== undefined).map(([, option]) => option);
  return { targets, settings: { ...used, targets: settings.targets.length > 1 ? names : [], changed } };
}

const CHANGING = [
  ['paper', '--paper'],
  ['light', '--light'],
  ['route', '--route'],
  ['separatedFor', '--separated-for'],
] as const;

const hasSettings = (root: string) =>
  fs.lstat(path.join(root, SETTINGS_FILE)).then(
    () => true,
    () => false,
  );

const shownFile = (file: string) => path.relative(process.cwd(), file).split(path.sep).join('/');
