import { rules } from '../../rules';
import { count } from '../../rules/words';
import type { SettingsClause } from '../../shared/comparison';
import type { Target } from '../../shared/target';
import type { RuleSetting, Settings } from '../settings/settings';
import { WAIVERS_FILE } from '../waivers/file';
import { keyOf, keysOf, type Waiver } from '../waivers/key';
import { fromTo, otherSettings, same } from './setting-words';
import type { Side } from './side';

type Judging = Pick<Side, 'settings' | 'waivers' | 'placements'>;
type Ruling = Pick<Settings, 'rules' | 'targets'>;

/**
 * What pictures are judged by, where it is not what it was: a clause each, in the order of what matters. Which pictures are
 * in the book is left out: those that come and go are told themselves. `paths`: the pictures that are the same on both sides;
 * `calledNow`: names before as they are now, since settings that only follow a picture to its new name have not changed.
 */
export function settingsChanges(
  base: Judging,
  head: Judging,
  paths: readonly string[],
  calledNow: (path: string) => string = path => path,
): SettingsClause[] {
  const from = (of: SettingsClause['of'], clauses: readonly string[]) =>
    clauses.map(words => ({ of, words }));
  return [
    ...from('settings', judgingChanges(base.settings, head.settings, calledNow)),
    ...from(setSizes(base, head) ? 'settings' : 'layouts', sizeChanges(base, head, paths)),
    ...from('waivers', waiverChanges(base, head)),
  ];
}

/** Whether the settings say otherwise which layouts there are, or how large these place pictures. */
const setSizes = ({ settings: was }: Judging, { settings: is }: Judging): boolean =>
  (['layouts', 'placements', 'textWidth'] as const).some(key => !same(was[key], is[key]));

/** The same of the settings alone: what concerns every picture. */
export const judgingChanges = (
  was: Settings,
  is: Settings,
  calledNow: (path: string) => string = path => path,
): string[] => [
  ...targetChanges(was.targets, is.targets),
  ...ruleChanges(was.rules, is.rules),
  ...otherSettings(was, is, calledNow),
];

/** Targets before and after that are to be held against each other: by name, or the only ones that there are. */
export function pairedTargets(was: readonly Target[], is: readonly Target[]): [Target, Target][] {
  if (was.length === 1 && is.length === 1) return [[was[0], is[0]]];
  return is.flatMap((target): [Target, Target][] => {
    const before = was.find(({ name }) => name === target.name);
    return before ? [[before, target]] : [];
  });
}

function targetChanges(was: readonly Target[], is: readonly Target[]): string[] {
  const pairs = pairedTargets(was, is);
  const paired = new Set(pairs.flat());
  const alone = (targets: readonly Target[], words: string) =>
    targets
      .filter(target => !paired.has(target))
      .map(({ name, process }) => `${words} "${name}" (${process})`);
  return [
    ...pairs.flatMap(([before, after]) =>
      before.name === after.name ? [] : `target "${before.name}" is called "${after.name}" now`,
    ),
    ...pairs.flatMap(([before, after]) =>
      KEYS.filter(key => !same(before[key] ?? null, after[key] ?? null)).map(key => {
        const of = is.length > 1 ? ` of "${after.name}"` : '';
        const [from, to] = [before, after].map(target => said(target[key]));
        return from === to
          ? `${NAMES[key] ?? key}${of}: another content`
          : `${NAMES[key] ?? key}${of} ${fromTo(from, to)}`;
      }),
    ),
    ...alone(is, 'a new target'),
    ...alone(was, 'no longer a target'),
  ];
}

const KEYS = [
  'process',
  'paper',
  'light',
  'route',
  'encodings',
  'inkLimit',
  'profile',
  'pressProfile',
  'record',
  'printRecord',
] as const satisfies readonly (keyof Target)[];

/** A file of the same name may hold something else. */
const NAMES: Partial<Record<keyof Target, string>> = {
  inkLimit: 'ink limit',
  pressProfile: 'content of the profile',
  printRecord: 'content of the record',
};

function said(value: Target[(typeof KEYS)[number]]): string {
  if (value === null || value === undefined) return 'none';
  if (Array.isArray(value)) return value.join(' and ');
  if (typeof value !== 'object') return String(value);
  if ('lab' in value && Array.isArray(value.lab)) return `measured (L*a*b* ${value.lab.join(', ')})`;
  return 'one';
}

function ruleChanges(was: Settings['rules'], is: Settings['rules']): string[] {
  return [...new Set([...Object.keys(was), ...Object.keys(is)])]
    .filter(id => !same(normal(id, was[id]), normal(id, is[id])))
    .sort()
    .map(id => {
      const [from, to] = [was[id], is[id]].map(setting => inWords(id, setting));
      return `${id} ${from === to ? optionChanges(was[id], is[id]) : fromTo(from, to)}`;
    });
}

/** `with "share" from 0.1 to 0.2`; what nobody says is as the rule has it by itself. */
function optionChanges(was: RuleSetting | undefined, is: RuleSetting | undefined): string {
  const [before, after] = [was, is].map(setting => (Array.isArray(setting) ? setting[1] : {}));
  const value = (options: Record<string, unknown>, key: string) =>
    key in options ? JSON.stringify(options[key]) : 'its default';
  const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])];
  return `with ${keys
    .filter(key => !same(before[key], after[key]))
    .map(key => `"${key}" ${fromTo(value(before, key), value(after, key))}`)
    .join(', ')}`;
}

/**
 * Rules that ran before and are off now, or have no target to judge by: what they said is said no more, and that is no news of
 * any picture.
 */
export function rulesOff(was: Ruling, is: Ruling): string[] {
  const off = lowered(was.rules, is.rules).filter(id => gradeOf(id, is.rules[id]) === 'off');
  const idle =
    was.targets.length && !is.targets.length
      ? rules.filter(({ id, needs }) => needs === 'forecast' && gradeOf(id, was.rules[id]) !== 'off')
      : [];
  return [...new Set([...off, ...idle.map(({ id }) => id)])].sort();
}

/** Rules that still run, and whose findings count for less than they did. */
export const rulesWeaker = (was: Settings['rules'], is: Settings['rules']): string[] =>
  lowered(was, is).filter(id => gradeOf(id, is[id]) !== 'off');

/** Rules that ran before, and whose findings count for more than they did. */
export const rulesStricter = (was: Settings['rules'], is: Settings['rules']): string[] =>
  lowered(is, was).filter(id => gradeOf(id, was[id]) !== 'off');

const lowered = (was: Settings['rules'], is: Settings['rules']): string[] =>
  [...new Set([...Object.keys(was), ...Object.keys(is)])]
    .filter(id => GRADES.indexOf(gradeOf(id, is[id])) < GRADES.indexOf(gradeOf(id, was[id])))
    .sort();

/** What its findings count for, the least first. */
const GRADES = ['off', 'note', 'warning', 'error'] as const;

/** What is left out counts as its rule says of itself. */
export function gradeOf(id: string, setting: RuleSetting | undefined): (typeof GRADES)[number] {
  if (setting === undefined) return rules.find(rule => rule.id === id)?.severity ?? 'off';
  return typeof setting === 'string' ? setting : setting[0];
}

/** However it is written. */
const normal = (id: string, setting: RuleSetting | undefined) => [
  gradeOf(id, setting),
  Array.isArray(setting) ? setting[1] : {},
];

function inWords(id: string, setting: RuleSetting | undefined): string {
  const grade = gradeOf(id, setting);
  return grade === 'off' ? 'off' : `${grade === 'error' ? 'an' : 'a'} ${grade}`;
}

function sizeChanges(base: Judging, head: Judging, paths: readonly string[]): string[] {
  const many = paths.filter(path => isResized(path, base, head)).length;
  return many ? [`layouts place ${count(many, 'unchanged picture')} at another size`] : [];
}

/** Whether layouts place it at another size, wherever they do. */
export function isResized(
  path: string,
  base: Pick<Judging, 'placements'>,
  head: Pick<Judging, 'placements'>,
): boolean {
  const [was, is] = [base, head].map(({ placements }) =>
    [
      ...new Set((placements.get(path) ?? []).flatMap(({ size }) => (size ? JSON.stringify(size) : []))),
    ].sort(),
  );
  return !same(was, is);
}

/** Those of the first that are not among the second; where a picture lies, and the reason, makes no other of one. */
export function missingWaivers(all: readonly Waiver[], from: readonly Waiver[]): Waiver[] {
  const there = new Set(from.flatMap(keysOf));
  const once = new Map(all.map(waiver => [keyOf(waiver), waiver]));
  return [...once.values()].filter(waiver => !keysOf(waiver).some(key => there.has(key)));
}

function waiverChanges({ waivers: was }: Judging, { waivers: is }: Judging): string[] {
  const more = missingWaivers(is, was).length;
  const fewer = missingWaivers(was, is).length;
  if (!more && !fewer) return [];
  const parts = [...(more ? [`${more} more`] : []), ...(fewer ? [`${fewer} fewer`] : [])];
  return [`waivers in ${WAIVERS_FILE}: ${parts.join(', ')}`];
}
