// no-unit-test: jpeg.test.ts writes inks through it
import type { Stored } from '../encode/stored';
import { laidOut } from '../metadata/directories';
import { FieldMaker } from '../metadata/fields';
import { emptyTree } from '../metadata/tree';

const SEPARATED = 5;

/** Four inks of 8 bits as a TIFF without compression: the only form in which the image library takes them. */
export function plainInks({ width, height, data }: Stored): Buffer {
  const make = new FieldMaker(false);
  const front = laidOut({
    ...emptyTree(),
    main: [
      make.long(256, width),
      make.long(257, height),
      make.short(258, 8, 8, 8, 8),
      make.short(259, 1),
      make.short(262, SEPARATED),
      make.long(273, 0),
      make.short(277, 4),
      make.long(278, height),
      make.long(279, data.byteLength),
      make.short(284, 1),
    ],
  });
  make.words([front.bytes.length], 4).copy(front.bytes, front.at.get(273));
  return Buffer.concat([front.bytes, Buffer.from(data.buffer, data.byteOffset, data.byteLength)]);
}
