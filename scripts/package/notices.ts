import { isLesser, mayShip } from './licences';
import type { Package } from './packages';

export interface Shipped {
  /** What is packaged: name, version, target. */
  title: string;
  /** Packages that are part of our programs. */
  bundled: Package[];
  /** Packages that stay files of their own. */
  separate: Package[];
  /** Notices of data that are part of our programs. */
  data: { folder: string; text: string }[];
  /** The lesser licence and the one that it builds on. */
  lesserTexts: string[];
}

/**
 * The file that tells whose work is shipped and under which terms, plain text.
 * @throws Error that names what may not be shipped, or comes without its terms
 */
export function thirdPartyNotices(shipped: Shipped): string {
  const { title, bundled, separate, data, lesserTexts } = shipped;
  for (const part of bundled) demandTerms(part, false);
  for (const part of separate) demandTerms(part, true);
  const lesser = separate.filter(({ licence }) => isLesser(licence));
  return [
    `Third-party notices of ${title}\n\nOur own licence is in LICENSE.txt. What follows is the work of others.`,
    `Part of the programs in dist/:\n\n${list(bundled)}`,
    `Files of their own in node_modules/:\n\n${list(separate)}`,
    ...(lesser.length ? [libraries(lesser)] : []),
    ...[...bundled, ...separate].filter(({ texts }) => texts.length > 0).map(terms),
    ...data.map(({ folder, text }) => `Data: ${folder}\n\n${text}`),
    ...(lesser.length ? lesserTexts : []),
  ]
    .map(part => `${part.trim()}\n`)
    .join(`\n${'-'.repeat(80)}\n\n`);
}

function demandTerms({ name, licence, texts, inside }: Package, separate: boolean) {
  if (!mayShip(licence, separate))
    throw new Error(`${name} may not be shipped here: its licence is ${licence}.`);
  if (!texts.length && !inside) throw new Error(`${name} comes without the text of its licence.`);
}

const list = (packages: readonly Package[]) =>
  packages.map(({ name, version, licence }) => `  ${name} ${version} - ${licence}`).join('\n');

const terms = ({ name, version, licence, texts }: Package) =>
  `${name} ${version} (${licence})\n\n${texts.join('\n\n')}`;

/** How the decoder's libraries are used, where their sources are, and what anybody may do about them. */
function libraries(packages: readonly Package[]): string {
  const names = packages.map(({ name, version }) => `${name} ${version}`).join(', ');
  const tables = packages.map(({ name, inside }) => `${name}\n\n${inside}`);
  return `${LIBRARIES.replace('NAMES', names)}\n\n${tables.join('\n\n')}`;
}

const LIBRARIES = `The libraries that decode pictures

These packages hold libvips and libraries that it uses, some of them under the GNU Lesser General Public License,
version 3 or later, whose text stands at the end of this file together with the GNU General Public License that it
builds on: NAMES.

They are shipped as their makers publish them. Our programs contain nothing of them: they load the package sharp, and
sharp loads the library from its own file while it runs.

- The native libraries are shared libraries: libvips-cpp.so, .dylib or .dll under node_modules/@img/. A changed one
  with the same interface can be put in its place and is used from then on.
- In @img/sharp-wasm32 they are linked into one WebAssembly file, lib/sharp-wasm32-*.node.wasm, together with sharp's
  own code, which is under the Apache License 2.0 and public. It can be built anew with changed libraries and put in
  its place.

Nothing here forbids to change them for one's own use, or to take them apart in order to mend such a change.

Sources: https://github.com/lovell/sharp-libvips has, under the version of the native library, the recipes that it is
built by, with version and address of the source of every library; https://github.com/lovell/sharp has, under the
version of sharp, its own code and that of the WebAssembly build. The file versions.json in each package says which
versions are inside.`;
