import type { Resource } from './carried';

// Image resources: the list of blocks in which JPEG and TIFF keep IPTC (IPTC-IIM; common practice since, no standard).

const SIGNATURE = '8BIM';
export const IPTC = 0x0404;
/** Small copies of the picture in its old colours. */
export const PREVIEWS = [0x0409, 0x040c];
/**
 * What is said elsewhere or was true of the old numbers only: resolution, halftones and transfer curves, colour tables,
 * profiles, EXIF, XMP.
 */
const LEFT_OUT = [
  0x03ed,
  0x03f3,
  0x03f4,
  0x03f5,
  0x03f6,
  0x03f7,
  0x03f8,
  0x03f9,
  0x03fa,
  0x0406,
  0x040f,
  0x0411,
  0x0416,
  0x0417,
  0x041a,
  0x0422,
  0x0423,
  0x0424,
  ...PREVIEWS,
];

/** @returns the resources as far as they are whole, IPTC and previews among them; `whole`: to the end */
export function readResources(bytes: Buffer): { resources: Resource[]; whole: boolean } {
  const resources: Resource[] = [];
  let at = 0;
  while (at + 12 <= bytes.length && bytes.toString('latin1', at, at + 4) === SIGNATURE) {
    const id = bytes.readUInt16BE(at + 4);
    const nameLength = bytes[at + 6];
    const sizeAt = at + 6 + even(1 + nameLength);
    if (sizeAt + 4 > bytes.length) break;
    const start = sizeAt + 4;
    const end = start + bytes.readUInt32BE(sizeAt);
    if (end > bytes.length) break;
    resources.push({
      id,
      name: bytes.subarray(at + 7, at + 7 + nameLength),
      data: bytes.subarray(start, end),
    });
    at = Math.min(bytes.length, even(end));
  }
  // some writers fill up with a few zero bytes
  return { resources, whole: bytes.subarray(at).every(byte => byte === 0) };
}

/** Those that go along as they are; IPTC is carried by itself. */
export const carriedResources = (resources: readonly Resource[]): Resource[] =>
  resources.filter(({ id }) => id !== IPTC && !LEFT_OUT.includes(id));

export function resourceBytes(resources: readonly Resource[]): Buffer {
  return Buffer.concat(
    resources.flatMap(({ id, name, data }) => {
      const head = Buffer.alloc(6 + even(1 + name.length) + 4);
      head.write(SIGNATURE, 'latin1');
      head.writeUInt16BE(id, 4);
      head[6] = name.length;
      name.copy(head, 7);
      head.writeUInt32BE(data.length, head.length - 4);
      return [head, data, Buffer.alloc(data.length & 1)];
    }),
  );
}

/** IPTC and the others in one list, as JPEG keeps them. */
export const withIptc = (iptc: Buffer | null, resources: readonly Resource[]): Resource[] => [
  ...(iptc ? [{ id: IPTC, name: Buffer.alloc(0), data: iptc }] : []),
  ...resources,
];

const even = (n: number) => n + (n & 1);
