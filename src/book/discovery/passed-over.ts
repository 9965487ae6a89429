import { list } from '../../rules/words';

/**
 * Raw files of cameras, and documents: nobody sends them as pictures, and many lie beside what was exported from them.
 * They are not read, and not passed over in silence.
 */
const RAW =
  '3fr arw cr2 cr3 crw dcr dng erf fff iiq kdc mef mos mrw nef nrw orf pef raf raw rw2 rwl sr2 srf srw x3f';
const DOCUMENT = 'eps jxl pdf xcf';
const passedOver: ReadonlySet<string> = new Set(`${RAW} ${DOCUMENT}`.split(' '));

/** So many names say which files they are: of raw files there are hundreds. */
const NAMED = 5;

export const isPassedOver = (path: string): boolean =>
  passedOver.has(/[^/]\.([^./]+)$/.exec(path)?.[1].toLowerCase() ?? '');

/** That such files were not looked at, in a line; nothing where there are none. */
export function passedOverNotices(paths: readonly string[]): string[] {
  if (!paths.length) return [];
  const [were, they] = paths.length === 1 ? ['file was', 'it is'] : ['files were', 'they are'];
  const what = `${paths.length} ${were} not looked at, since ${they} of a kind that is not read here (a camera's raw file, a document)`;
  return [`${what}: ${list(paths, NAMED)}. Export as TIFF or JPEG what is to be printed.`];
}
