// no-unit-test: test/book/check.test.ts counts a book by it
import type { Finding, PictureReport, Summary } from '../shared/finding';

/** What a book comes to in numbers. */
export function summarise(pictures: readonly PictureReport[], book: readonly Finding[]): Summary {
  const all = [...book, ...pictures.flatMap(picture => picture.findings)];
  const count = (severity: Finding['severity']) => all.filter(f => f.severity === severity).length;
  const encodings: Summary['encodings'] = {};
  for (const { facts } of pictures.filter(({ replacedBy }) => !replacedBy))
    encodings[facts.encoding] = (encodings[facts.encoding] ?? 0) + 1;
  return {
    pictures: pictures.length,
    errors: count('error'),
    warnings: count('warning'),
    notes: count('note'),
    encodings,
  };
}
