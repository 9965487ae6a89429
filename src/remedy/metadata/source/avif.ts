import { bufferSource } from '../../../picture/header';
import { type Box, boxesIn } from '../../../picture/header/boxes';
import { LONGEST_FIELD, Numbers } from '../../../picture/header/source';
import { type Found, nothing, takeExif } from './found';

const XMP_TYPE = 'application/rdf+xml';
/** Where an item's extents count from (ISO/IEC 14496-12, section 8.11.3). */
const IN_FILE = 0;
const IN_IDAT = 1;

/** What an AVIF's metadata items say (ISO/IEC 23008-12, annex A). Its orientation is a property, which the decoder applies. */
export function fromAvif(bytes: Buffer): Found {
  const found = nothing();
  const n = new Numbers(bufferSource(bytes), true);
  const meta = boxesIn(n.source, 0, n.source.size).find(box => box.type === 'meta');
  if (!meta) return found;
  const parts = boxesIn(n.source, meta.start + 4, meta.end);
  const places = new Map(placesOf(n, parts));
  for (const { id, type, content } of itemsOf(n, parts)) {
    const isExif = type === 'Exif';
    if (!isExif && !(type === 'mime' && content === XMP_TYPE)) continue;
    const item = itemBytes(n, places.get(id) ?? []);
    if (!item)
      found.told.push(`The ${isExif ? 'EXIF' : 'XMP'} data of the AVIF is damaged and was left out.`);
    else if (!isExif) found.xmp ??= item;
    // the block begins behind a count of bytes to pass over
    else if (item.length > 4) takeExif(found, item.subarray(Math.min(item.length, 4 + item.readUInt32BE())));
  }
  return found;
}

function itemsOf(n: Numbers, parts: readonly Box[]): { id: number; type: string; content: string }[] {
  const info = parts.find(box => box.type === 'iinf');
  if (!info) return [];
  return boxesIn(n.source, info.start + (n.u8(info.start) === 0 ? 6 : 8), info.end)
    .filter(({ type, start }) => type === 'infe' && n.u8(start) >= 2)
    .map(({ start, end }) => {
      const wide = n.u8(start) === 2 ? 2 : 4;
      const at = start + 4 + wide + 2;
      const [, content = ''] = n.text(at + 4, Math.max(0, end - at - 4)).split('\0');
      return { id: wide === 2 ? n.u16(start + 4) : n.u32(start + 4), type: n.text(at, 4), content };
    });
}

type Extent = { at: number; length: number };

/** `iloc`: where the bytes of every item lie in the file. */
function* placesOf(n: Numbers, parts: readonly Box[]): Generator<[id: number, extents: Extent[]]> {
  const box = parts.find(({ type }) => type === 'iloc');
  if (!box) return;
  const idat = parts.find(({ type }) => type === 'idat')?.start ?? 0;
  const version = n.u8(box.start);
  const sizes = n.u16(box.start + 4);
  const [offsetSize, lengthSize, baseSize] = [sizes >> 12, (sizes >> 8) & 15, (sizes >> 4) & 15];
  const indexSize = version > 0 ? sizes & 15 : 0;
  let at = box.start + 6;
  const next = (size: number) => {
    const value = size === 0 ? 0 : size === 2 ? n.u16(at) : size === 4 ? n.u32(at) : n.u64(at);
    at += size;
    return value;
  };
  for (let items = next(version < 2 ? 2 : 4); items > 0 && at < box.end; items--) {
    const id = next(version < 2 ? 2 : 4);
    const method = version > 0 ? next(2) & 15 : IN_FILE;
    next(2); // data reference
    const base = next(baseSize) + (method === IN_IDAT ? idat : 0);
    const extents: Extent[] = [];
    for (let count = next(2); count > 0 && at < box.end; count--) {
      next(indexSize);
      const offset = next(offsetSize);
      extents.push({ at: base + offset, length: next(lengthSize) });
    }
    if (method === IN_FILE || method === IN_IDAT) yield [id, extents];
  }
}

function itemBytes({ source }: Numbers, extents: readonly Extent[]): Buffer | null {
  const length = extents.reduce((sum, extent) => sum + extent.length, 0);
  if (length === 0 || length > LONGEST_FIELD) return null;
  if (extents.some(extent => extent.at + extent.length > source.size)) return null;
  return Buffer.concat(extents.map(extent => source.bytes(extent.at, extent.length)));
}
