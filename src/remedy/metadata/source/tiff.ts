import { bufferSource } from '../../../picture/header';
import { Ifds } from '../../../picture/header/ifd';
import { readTree } from '../exif-read';
import { Tag } from '../tags';
import { type Found, nothing } from './found';

/**
 * What a TIFF's directory says. @param page from 1, as the header counts
 */
export function fromTiff(bytes: Buffer, page: number): Found {
  const found = nothing();
  const source = bufferSource(bytes);
  const exif = readTree(source, directoryOf(new Ifds(source), page));
  found.exif = exif;
  const block = (id: number) => exif.all.get(id)?.data ?? null;
  found.xmp = block(Tag.xmp);
  found.resources = block(Tag.resources);
  found.iptc = block(Tag.iptc);
  if (exif.all.has(Tag.layers))
    found.told.push('The layers of the TIFF were left out; its flattened picture was converted.');
  return found;
}

function directoryOf(ifds: Ifds, page: number): number {
  let at = ifds.first;
  for (let i = 1; i < page; i++) at = ifds.read(at).next;
  return at;
}
