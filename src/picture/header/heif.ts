import type { Remark } from '../../shared/picture';
import type { Header } from '../types';
import { type Box, boxesIn } from './boxes';
import { LONGEST_FIELD, Numbers, type Source } from './source';
import { UnreadableError } from './unreadable';

interface Item {
  type: string;
  /** Property boxes associated with the item. */
  properties: Box[];
}

/**
 * AVIF, and HEIC as far as its name and size (ISO/IEC 23008-12; AV1-ISOBMFF). The decoder applies the rotation that
 * the container asks for (`irot`), so width and height are as decoded.
 */
export function readHeif(source: Source, format: 'avif' | 'heic'): Header {
  const n = new Numbers(source, true);
  const boxes = boxesIn(source, 0, source.size);
  const meta = boxes.find(b => b.type === 'meta');
  // a box that leaves the file ends the list early
  const incomplete = (boxes.at(-1)?.end ?? 0) < source.size;
  if (!meta)
    throw new UnreadableError(
      incomplete ? 'truncated' : 'corrupt',
      'The file does not hold a whole picture. Copy or export it again.',
      format,
    );
  const parts = boxesIn(source, meta.start + 4, meta.end);
  const items = readItems(n, parts);
  const primary = primaryId(n, parts);
  const item = items.get(primary);
  if (!item) throw new UnreadableError('corrupt', 'The file names no main picture. Export it again.', format);
  const property = (type: string) => item.properties.find(p => p.type === type);
  const extent = property('ispe');
  const turned = property('irot') ? (n.u8(property('irot')!.start) & 1) === 1 : false;
  const [across, down] = extent ? [n.u32(extent.start + 4), n.u32(extent.start + 8)] : [0, 0];
  const codec = property('av1C') ?? firstTile(items);
  const flags = codec ? n.u8(codec.start + 2) : 0;
  const remarks: Remark[] = [];
  if (flags & 0x10)
    remarks.push({
      code: 'monochrome-container',
      text: 'The file stores one grey channel, but every program that opens it sees three equal ones.',
    });
  return {
    format: [...items.values()].some(i => i.type === 'av01') ? 'avif' : 'heic',
    width: turned ? down : across,
    height: turned ? across : down,
    channels: 3,
    bits: flags & 0x40 ? (flags & 0x20 ? 12 : 10) : 8,
    sample: 'uint',
    alpha: hasAlpha(n, parts, items, primary),
    palette: false,
    space: 'rgb',
    inverted: false,
    spots: 0,
    page: 1,
    pages: 1,
    orientation: 1,
    ppi: null,
    icc: profileOf(n, item),
    incomplete,
    remarks,
  };
}

function primaryId(n: Numbers, parts: Box[]): number {
  const box = parts.find(b => b.type === 'pitm');
  if (!box) return 0;
  return n.u8(box.start) === 0 ? n.u16(box.start + 4) : n.u32(box.start + 4);
}

function readItems(n: Numbers, parts: Box[]): Map<number, Item> {
  const items = new Map<number, Item>();
  const info = parts.find(b => b.type === 'iinf');
  if (!info) return items;
  const head = n.u8(info.start) === 0 ? 6 : 8;
  for (const entry of boxesIn(n.source, info.start + head, info.end)) {
    const version = n.u8(entry.start);
    if (entry.type !== 'infe' || version < 2) continue;
    const id = version === 2 ? n.u16(entry.start + 4) : n.u32(entry.start + 4);
    items.set(id, { type: n.text(entry.start + (version === 2 ? 8 : 10), 4), properties: [] });
  }
  const iprp = parts.find(b => b.type === 'iprp');
  if (iprp) associate(n, boxesIn(n.source, iprp.start, iprp.end), items);
  return items;
}

/** `ipma`: which of the `ipco` properties belong to which item. */
function associate(n: Numbers, boxes: Box[], items: Map<number, Item>): void {
  const ipco = boxes.find(b => b.type === 'ipco');
  if (!ipco) return;
  const properties = boxesIn(n.source, ipco.start, ipco.end);
  for (const ipma of boxes.filter(b => b.type === 'ipma')) {
    const version = n.u8(ipma.start);
    const wide = (n.u8(ipma.start + 3) & 1) === 1;
    const entries = n.u32(ipma.start + 4);
    let at = ipma.start + 8;
    for (let e = 0; e < entries && at < ipma.end; e++) {
      const id = version < 1 ? n.u16(at) : n.u32(at);
      at += version < 1 ? 2 : 4;
      const count = n.u8(at++);
      for (let i = 0; i < count && at < ipma.end; i++, at += wide ? 2 : 1) {
        const index = wide ? n.u16(at) & 0x7fff : n.u8(at) & 0x7f;
        const property = properties[index - 1];
        if (property) items.get(id)?.properties.push(property);
      }
    }
  }
}

/** A grid of tiles has no codec settings of its own. */
function firstTile(items: Map<number, Item>): Box | undefined {
  for (const item of items.values()) {
    const codec = item.type === 'av01' && item.properties.find(p => p.type === 'av1C');
    if (codec) return codec;
  }
  return undefined;
}

function profileOf(n: Numbers, item: Item): Buffer | null {
  for (const box of item.properties) {
    if (box.type !== 'colr') continue;
    const kind = n.text(box.start, 4);
    const length = box.end - box.start - 4;
    if ((kind === 'prof' || kind === 'rICC') && length <= LONGEST_FIELD)
      return n.source.bytes(box.start + 4, length);
  }
  return null;
}

/** An auxiliary item (`auxl` reference to the main picture) whose type names alpha. */
function hasAlpha(n: Numbers, parts: Box[], items: Map<number, Item>, primary: number): boolean {
  const iref = parts.find(b => b.type === 'iref');
  if (!iref) return false;
  const wide = n.u8(iref.start) !== 0;
  const id = (at: number) => (wide ? n.u32(at) : n.u16(at));
  const step = wide ? 4 : 2;
  return boxesIn(n.source, iref.start + 4, iref.end).some(ref => {
    if (ref.type !== 'auxl' || ref.end - ref.start < 2 * step + 2) return false;
    const names = items.get(id(ref.start))?.properties.find(p => p.type === 'auxC');
    if (!names || !n.text(names.start + 4, names.end - names.start - 4).includes('alpha')) return false;
    return id(ref.start + step + 2) === primary;
  });
}
