// no-unit-test: test/book/check.test.ts counts a book by it
import type { Finding, PictureReport, Summary } from '../shared/finding';

/** What a book comes to in numbers; what a converted copy replaces is no picture of it any more. */
export function summarise(pictures: readonly PictureReport[], book: readonly Finding[]): Summary {
  const all = [...book, ...pictures.flatMap(picture => picture.findings)];
  const count = (severity: Finding['severity']) => all.filter(f => f.severity === severity).length;
  const encodings: Summary['encodings'] = {};
  const judged = pictures.filter(({ replacedBy }) => !replacedBy);
  for (const { facts } of judged) encodings[facts.encoding] = (encodings[facts.encoding] ?? 0) + 1;
  return {
    pictures: judged.length,
    errors: count('error'),
    warnings: count('warning'),
    notes: count('note'),
    encodings,
  };
}
