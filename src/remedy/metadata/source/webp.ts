import { bufferSource } from '../../../picture/header';
import { chunks } from '../../../picture/header/webp';
import { type Found, nothing, takeExif } from './found';

/** What a WebP's metadata chunks say (WebP container specification). */
export function fromWebp(bytes: Buffer): Found {
  const found = nothing();
  for (const { type, at, length } of chunks(bufferSource(bytes))) {
    const body = bytes.subarray(at, at + length);
    if (type === 'EXIF') takeExif(found, body);
    else if (type === 'XMP ') found.xmp ??= body;
  }
  return found;
}
