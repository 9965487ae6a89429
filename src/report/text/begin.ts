import type { BookReport, PictureReport, Severity } from '../../shared/finding';
import { adviceOn } from '../sheet/advice';
import { nameOf } from './blocks';

/** Whether this book can be ordered as it is, in one sentence. */
export function verdict({ pictures, findings }: BookReport): string {
  const all = pictures.length;
  const urgent = pictures.filter(picture => urgencyOf(picture) < 2).length;
  if (all === 0) return 'No pictures were found here.';
  if (urgent > 0)
    return `${urgent} of ${all} ${all === 1 ? 'picture wants' : `pictures ${urgent === 1 ? 'wants' : 'want'}`} attention before this book is ordered.`;
  if (findings.some(finding => finding.severity !== 'note'))
    return `No single one of ${all} pictures wants attention, but the book as a whole does.`;
  const what = all === 1 ? 'the one picture' : `all ${all} pictures`;
  return `Nothing in the files stands against printing ${what}.`;
}

/** What to do first, or null: with the worst picture and those that want the same. */
export function begin({ pictures, findings }: BookReport): string | null {
  if (!pictures.length) return null;
  const least = Math.min(2, ...pictures.map(urgencyOf));
  if (least === 2) return findings.some(f => f.severity !== 'note') ? null : 'Have a test print made first.';
  const first = pictures.find(picture => urgencyOf(picture) === least)!;
  const { title, reason } = adviceOn(first);
  const alike = pictures.filter(p => urgencyOf(p) < 2 && adviceOn(p).reason === reason).length - 1;
  const more = alike > 0 ? ` and ${alike} more like it` : '';
  const task = title.replace(/ first$/, '').toLowerCase();
  return `Begin with ${nameOf(first.path, first.facts.page)}${more}: ${task}. ${reason}`;
}

const rank: Record<Severity, number> = { error: 0, warning: 1, note: 2 };

/** 0 with an error, 1 with a warning, 2 with neither. */
const urgencyOf = ({ findings }: PictureReport): number =>
  Math.min(2, ...findings.map(finding => rank[finding.severity]));
