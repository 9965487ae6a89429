// no-unit-test: names alone; test/cli/actions/compare.test.ts has the built program write each
/** Ways to write a comparison, apart from what writes them: help is told without loading it. */
export const compareFormats = ['text', 'json', 'markdown', 'html', 'github'] as const;

export type CompareFormat = (typeof compareFormats)[number];
