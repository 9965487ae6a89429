// no-unit-test: test/report/overview/index.test.ts marks pictures by it
import type { Finding, PictureReport } from '../../shared/finding';
import { asksOf } from './shared';

/** What each rule that compares pictures says of the one it names, in a few words. */
const words: Record<string, string> = {
  'facing-difference': 'unlike its facing page',
  'odd-one-out': 'unlike its neighbours',
  'mixed-encodings': 'stored unlike others',
  'tone-mismatch': 'unlike the tone it should match',
};

/**
 * Why a picture is likely to be seen among the others of its book, in a few words; null where it is not.
 * @param shared findings about the book
 */
export function outlierWords(picture: PictureReport, shared: readonly Finding[]): string | null {
  if (picture.replacedBy) return null;
  const asked = [...picture.findings, ...shared.filter(finding => asksOf(finding, picture))];
  const rule = Object.keys(words).find(id => asked.some(finding => finding.rule === id));
  return rule ? words[rule] : null;
}
