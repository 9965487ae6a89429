// no-unit-test: test/layout/latex/index.test.ts reads paths by it
/** What a file name in braces means: quotes and inner braces are no part of it, some signs are escaped. */
export function latexPath(written: string): string {
  return written
    .replace(/\\detokenize\s*/g, '')
    .replace(/\\string\s*/g, '')
    .replace(/(\\[%#&_{}$])|["{}]/g, (_, escaped: string | undefined) => escaped?.[1] ?? '');
}
