import { D50 } from '../lab';

/** What a small display profile of ours says: its name, and how its one curve and its primaries stand for light. */
export interface PlainProfile {
  description: string;
  /** Light (0-1) of a stored value (0-1). */
  decode(stored: number): number;
  /** XYZ (Y of white = 100, D50) of full R, G and B, row by row (X of R, G, B first); null: a grey profile. */
  primaries: ArrayLike<number> | null;
}

const COPYRIGHT = 'No copyright, use freely';
/** Entries of a curve: read between them it is off by less than a 16-bit step. */
const CURVE = 1024;
/** Profiles are the same to the byte whenever they are written. */
const DAY = [2026, 1, 1, 0, 0, 0];

/** The bytes of a display profile, version 2 (ICC.1:2001-04), which every program since can read. */
export function plainProfile({ description, decode, primaries }: PlainProfile): Uint8Array {
  const curve = curveTag(decode);
  const columns = primaries && roundedColumns(primaries);
  const tags: [signature: string, data: Buffer][] = [
    ['desc', descriptionTag(description)],
    ['cprt', tag('text', Buffer.from(`${COPYRIGHT}\0`, 'latin1'))],
    ['wtpt', xyzTag(WHITE)],
    ...(columns
      ? (['r', 'g', 'b'].flatMap((channel, i) => [
          [`${channel}XYZ`, xyzTag(columns[i])],
          [`${channel}TRC`, curve],
        ]) as [string, Buffer][])
      : ([['kTRC', curve]] as [string, Buffer][])),
  ];
  return laidOut(tags, columns ? 'RGB ' : 'GRAY');
}

/** s15Fixed16Number. */
const fixed = (value: number) => Math.round(value * 65536);
const WHITE = D50.map(value => fixed(value / 100));

/** Columns that add up to white exactly, so that equal R, G, B have no colour; what rounding leaves goes to green. */
function roundedColumns(primaries: ArrayLike<number>): number[][] {
  const columns = [0, 1, 2].map(c => [0, 1, 2].map(row => fixed(primaries[row * 3 + c] / 100)));
  for (let row = 0; row < 3; row++) columns[1][row] = WHITE[row] - columns[0][row] - columns[2][row];
  return columns;
}

function laidOut(tags: [signature: string, data: Buffer][], space: string): Buffer {
  const head = Buffer.alloc(128);
  const directory = Buffer.alloc(4 + tags.length * 12);
  directory.writeUInt32BE(tags.length, 0);
  const bodies: Buffer[] = [];
  const places = new Map<Buffer, number>();
  let end = head.length + directory.length;
  tags.forEach(([signature, data], i) => {
    // tags of equal content share it
    let at = places.get(data);
    if (at === undefined) {
      at = end;
      places.set(data, at);
      const body = Buffer.alloc(Math.ceil(data.length / 4) * 4);
      data.copy(body);
      bodies.push(body);
      end += body.length;
    }
    directory.write(signature, 4 + i * 12, 'latin1');
    directory.writeUInt32BE(at, 8 + i * 12);
    directory.writeUInt32BE(data.length, 12 + i * 12);
  });
  head.writeUInt32BE(end, 0);
  head.writeUInt32BE(0x02400000, 8); // version 2.4
  head.write('mntr', 12, 'latin1');
  head.write(space, 16, 'latin1');
  head.write('XYZ ', 20, 'latin1');
  DAY.forEach((value, i) => {
    head.writeUInt16BE(value, 24 + i * 2);
  });
  head.write('acsp', 36, 'latin1');
  head.writeUInt32BE(1, 64); // relative colorimetric
  WHITE.forEach((value, i) => {
    head.writeInt32BE(value, 68 + i * 4);
  });
  return Buffer.concat([head, directory, ...bodies]);
}

const tag = (type: string, ...parts: Buffer[]) =>
  Buffer.concat([Buffer.from(`${type}\0\0\0\0`, 'latin1'), ...parts]);

function xyzTag(values: readonly number[]): Buffer {
  const data = Buffer.alloc(12);
  values.forEach((value, i) => {
    data.writeInt32BE(value, i * 4);
  });
  return tag('XYZ ', data);
}

function curveTag(decode: (stored: number) => number): Buffer {
  const data = Buffer.alloc(4 + CURVE * 2);
  data.writeUInt32BE(CURVE, 0);
  for (let i = 0; i < CURVE; i++) data.writeUInt16BE(Math.round(decode(i / (CURVE - 1)) * 65535), 4 + i * 2);
  return tag('curv', data);
}

/** textDescriptionType: ASCII with its length, then Unicode and Macintosh forms left empty. */
function descriptionTag(text: string): Buffer {
  const ascii = Buffer.from(`${text}\0`, 'latin1');
  const length = Buffer.alloc(4);
  length.writeUInt32BE(ascii.length, 0);
  return tag('desc', length, ascii, Buffer.alloc(4 + 4 + 2 + 1 + 67));
}
