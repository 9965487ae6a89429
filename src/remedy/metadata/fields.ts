/** One tag of a TIFF or EXIF directory (TIFF 6.0, section 2), its values as bytes in the byte order of its tree. */
export interface Field {
  id: number;
  type: number;
  /** Number of values, not of bytes. */
  count: number;
  data: Buffer;
}

export const Type = { byte: 1, ascii: 2, short: 3, long: 4, rational: 5, undefined: 7 } as const;

/** A numerator and a denominator, as EXIF stores fractions. */
export type Fraction = readonly [number, number];

/** Makes fields in one byte order. */
export class FieldMaker {
  constructor(readonly bigEndian: boolean) {}

  short(id: number, ...values: number[]): Field {
    return { id, type: Type.short, count: values.length, data: this.words(values, 2) };
  }

  long(id: number, ...values: number[]): Field {
    return { id, type: Type.long, count: values.length, data: this.words(values, 4) };
  }

  rational(id: number, ...values: Fraction[]): Field {
    return { id, type: Type.rational, count: values.length, data: this.words(values.flat(), 4) };
  }

  /** Text beyond ASCII stands as UTF-8: common practice, and the only way that most readers understand. */
  ascii(id: number, text: string): Field {
    const data = Buffer.from(`${text}\0`);
    return { id, type: Type.ascii, count: data.length, data };
  }

  bytes(id: number, data: Uint8Array, type: number = Type.undefined): Field {
    return { id, type, count: data.length, data: Buffer.from(data.buffer, data.byteOffset, data.length) };
  }

  words(values: number[], size: 2 | 4): Buffer {
    const out = Buffer.alloc(values.length * size);
    values.forEach((value, i) => {
      if (this.bigEndian) out.writeUIntBE(value, i * size, size);
      else out.writeUIntLE(value, i * size, size);
    });
    return out;
  }
}
