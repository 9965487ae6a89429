// no-unit-test: test/book/layouts/index.test.ts and test/cli/output.test.ts tell our pages from others by it
/** How the head of our pages says whose they are. */
export const GENERATOR = '<meta name="generator" content="Evengrey">';

/** Whether a page that begins like this was written by Evengrey: it shows pictures of a book, and lays out none. */
export const isOwnPage = (head: string): boolean =>
  head.startsWith('<!DOCTYPE html>') && head.includes(GENERATOR);
