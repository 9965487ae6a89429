// no-unit-test: a constant; the tests of pages and of Markdown read it
import { version } from '../../package.json';

/** A report is kept longer than the program that wrote it, and two versions may judge differently. */
export const WRITTEN_BY = `Written by Evengrey ${version}.`;
