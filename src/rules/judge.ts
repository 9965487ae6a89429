import type { BookPicture, Finding, Severity } from '../shared/finding';
import type { Target } from '../shared/target';
import { recommendations } from './recommended';
import type { Rule, Verdict } from './rule';
import { type ActiveRule, activeRules, type RuleSettings } from './settings';

export interface JudgeInput {
  /** Sorted as the report shows them. */
  pictures: readonly BookPicture[];
  targets: readonly Target[];
  /** Rules not named here run as they are by default. */
  ruleSettings?: RuleSettings;
  /** Paths of pictures that are seen side by side: one list a spread. */
  spreads?: readonly (readonly string[])[];
  /** Paths of pictures whose content is another than before, where that is known. */
  changed?: ReadonlySet<string>;
  /** Only some pictures of the book were looked at: rules that compare are left out. */
  partial?: boolean;
  /** Whether somebody lives with a finding on a picture; left out: nobody does with any. */
  isWaived?: (finding: Finding, picture: BookPicture) => boolean;
}

export interface Judgement {
  /** One list a picture, same order as the pictures. */
  pictures: Finding[][];
  /** About the book as a whole. */
  book: Finding[];
}

/**
 * Every verdict of `rules` on a book; pictures that a converted copy replaces are passed over. Pure: the same book and
 * settings give the same findings in the same order.
 * @throws RuleSettingsError where the settings name an unknown rule, severity or option.
 */
export function judgeWith(rules: readonly Rule[], input: JudgeInput): Judgement {
  const place = new Map(input.pictures.map((picture, i) => [picture, i]));
  const judgement: Judgement = { pictures: input.pictures.map(() => []), book: [] };
  const active = activeRules(rules, input.ruleSettings ?? {}).filter(
    ({ rule }) => !(input.partial && rule.compares),
  );
  const judged = input.pictures.filter(({ replacedBy }) => !replacedBy);
  const recommend = recommendations(judged, gainOf(active), input.partial);
  for (const { rule, severity, options } of active) {
    const pictures = judged.filter(picture => concerns(rule, picture));
    for (const verdict of rule.check(
      {
        pictures,
        everything: input.pictures,
        targets: input.targets,
        spreads: input.spreads ?? [],
        changed: input.changed ?? new Set(),
        partial: input.partial ?? false,
        recommend,
        isWaived: verdict => input.isWaived?.(finding(rule, severity, verdict), verdict.picture!) ?? false,
      },
      options,
    )) {
      const findings = verdict.picture ? judgement.pictures[place.get(verdict.picture)!] : judgement.book;
      findings.push(finding(rule, severity, verdict));
    }
  }
  for (const findings of [...judgement.pictures, judgement.book]) findings.sort(worstFirst);
  return judgement;
}

/** Only a gain that `likely-tint` would tell speaks against what most pictures are stored in. */
export function gainOf(active: readonly ActiveRule[]): number {
  const gain = active.find(({ rule }) => rule.id === 'likely-tint')?.options.gain;
  return typeof gain === 'number' ? gain : Number.POSITIVE_INFINITY;
}

/** Colour that nobody called an intent is listed by the report; to judge it as grey would be noise. */
function concerns(rule: Rule, { facts, intent, intentStated }: BookPicture): boolean {
  if (facts.encoding === 'colour' && !intentStated) return rule.intents.includes('colour');
  return rule.intents.includes(intent);
}

function finding(rule: Rule, severity: Severity, { message, data, note }: Verdict): Finding {
  return { rule: rule.id, severity: note ? 'note' : severity, message, data };
}

const rank: Record<Severity, number> = { error: 0, warning: 1, note: 2 };

/** Compared by code point, not by locale: two machines must sort alike. */
function worstFirst(x: Finding, y: Finding): number {
  const order = (p: string, q: string) => (p < q ? -1 : p > q ? 1 : 0);
  return rank[x.severity] - rank[y.severity] || order(x.rule, y.rule) || order(x.message, y.message);
}
