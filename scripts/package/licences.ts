/** Licences that ask for a notice and nothing that an MIT program could not give. */
const FREE = new Set([
  '0BSD',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'BlueOak-1.0.0',
  'ISC',
  'MIT',
  'MIT-0',
]);
/** May be used beside the program, in a file of its own that can be replaced: the decoder's libraries. */
const REPLACEABLE = new Set(['LGPL-3.0-or-later']);

export const isLesser = (licence: string) => /\bLGPL-/.test(licence);

/**
 * Whether a package may be shipped. `licence`: an SPDX expression of AND alone; one with a choice must be settled by a
 * person first. `separate`: the package stays files of its own, it is not bundled.
 */
export function mayShip(licence: string, separate: boolean): boolean {
  return licence
    .replace(/^\(|\)$/g, '')
    .split(' AND ')
    .every(one => FREE.has(one) || (separate && REPLACEABLE.has(one)));
}
