// no-unit-test: test/picture/read.test.ts reads every kind of broken file through it
import type { PictureFacts } from '../shared/picture';
import type { UnreadableError } from './header/unreadable';
import type { Header } from './types';

/** Facts of what could not be read: the header's, as far as there are any, and why. */
export function unreadableFacts(error: UnreadableError, sha256: string, header?: Header): PictureFacts {
  return {
    page: header?.page ?? error.page,
    sha256,
    format: error.format,
    width: error.size.width,
    height: error.size.height,
    channels: header?.channels ?? error.stored?.channels ?? 0,
    bits: header?.bits ?? error.stored?.bits ?? 0,
    alpha: header?.alpha ?? false,
    palette: header?.palette ?? false,
    space: header?.space ?? error.stored?.space ?? null,
    encoding: 'unreadable',
    profile: null,
    assumed: null,
    ppi: header?.ppi ?? null,
    orientation: header?.orientation ?? 1,
    remedied: header?.remedied ?? null,
    levels: [],
    chroma: null,
    ink: null,
    tone: null,
    zones: [],
    remarks: header?.remarks ?? [],
    unreadable: { reason: error.reason, text: error.text },
  };
}
