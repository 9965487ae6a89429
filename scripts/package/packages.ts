import fs from 'node:fs';
import path from 'node:path';

/** A package of others of which something is shipped. */
export interface Package {
  name: string;
  version: string;
  /** SPDX expression. */
  licence: string;
  /** What its licence and notice files say. */
  texts: string[];
  /** What its page says of the libraries inside it, Markdown; empty where it says nothing. */
  inside: string;
}

/** Folder of the package that a file belongs to, relative like the file; null for a file of our own. */
export function packageFolder(file: string): string | null {
  return /^.*node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(file)?.[0] ?? null;
}

/** The packages' folders among files, sorted. */
export function packagesOf(files: readonly string[]): string[] {
  return [...new Set(files.map(packageFolder).filter(folder => folder !== null))].sort();
}

const LICENCE_FILE = /^(licen[cs]e|copying|notice|copyright)/i;

/** `folder`: relative to `root`. */
export function readPackage(root: string, folder: string): Package {
  const at = path.join(root, folder);
  const { name, version, license } = JSON.parse(fs.readFileSync(path.join(at, 'package.json'), 'utf8'));
  const read = (file: string) => fs.readFileSync(path.join(at, file), 'utf8').replaceAll('\r\n', '\n').trim();
  const files = fs.readdirSync(at).sort();
  return {
    name,
    version,
    licence: String(license),
    texts: files.filter(file => LICENCE_FILE.test(file)).map(read),
    inside: files.includes('README.md') ? librariesIn(read('README.md')) : '',
  };
}

/** From the sentence on that introduces the table of libraries, to the page's end or its next heading. */
function librariesIn(page: string): string {
  const at = page.indexOf('This software contains third-party libraries');
  return at < 0 ? '' : page.slice(at).split(/^#/m)[0].trim();
}
