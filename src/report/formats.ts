// no-unit-test: names alone; test/cli/actions/formats.test.ts has the built program write each
/** Ways to write the report of a check, apart from what writes them: help is told without loading it. */
export const checkFormats = ['text', 'json', 'sarif', 'junit', 'markdown', 'html', 'github'] as const;

export type CheckFormat = (typeof checkFormats)[number];
