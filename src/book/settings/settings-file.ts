// no-unit-test: a name alone
/** What the settings of a book are called; the folder that has them is the book. */
export const SETTINGS_FILE = 'evengrey.json';
