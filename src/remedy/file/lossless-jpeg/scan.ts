// no-unit-test: index.test.ts and the outside checks read every coefficient through it
import { Bits } from './bits-read';
import { type Band, blockReader, type Coding } from './blocks';
import { acKey, type CodeTables, dcKey } from './codes-read';
import type { Component, Frame } from './frame';
import type { ScanData } from './stuffing';
import { Unusual } from './unusual';
import { BLOCK, EDGE } from './zigzag';

interface Member extends Coding {
  component: Component;
}

/** A scan's header (T.81, section B.2.3). */
export interface Scan {
  members: Member[];
  band: Band;
}

/** @throws Unusual where it is damaged */
export function scanOf(body: Uint8Array, { components, progressive }: Frame, codes: CodeTables): Scan {
  const count = body[0];
  if (body.length !== 4 + count * 2 || count < 1 || count > components.length) throw new Unusual('damaged');
  const members = Array.from({ length: count }, (_, i): Member => {
    const [id, places] = body.subarray(1 + i * 2);
    const component = components.find(each => each.id === id);
    if (!component) throw new Unusual('damaged');
    const [dc, ac] = [codes.get(dcKey(places >> 4)), codes.get(acKey(places & 15))];
    return { component, dc, ac, before: 0, ended: 0 };
  });
  const [from, to, approximation] = body.subarray(1 + count * 2);
  if (progressive && count > 1 && to > 0) throw new Unusual('damaged');
  return { members, band: { from, to, low: approximation & 15, refines: approximation >> 4 > 0 } };
}

/**
 * Reads the data of a scan that luminance is in; what belongs to colour is passed over.
 * @param interval MCUs between restart markers; 0: there are none
 * @param coefficients of luminance
 * @throws Unusual where the data are damaged
 */
export function readScan(
  data: ScanData,
  { components: [luminance], progressive, width, height, mcusAcross, mcusDown }: Frame,
  { members, band }: Scan,
  interval: number,
  coefficients: Int16Array,
): void {
  const bits = new Bits(data);
  const read = blockReader(bits, progressive, band);
  const across = mcusAcross * luminance.across;
  const passedOver = new Int16Array(BLOCK);
  let left = interval;
  const beginUnit = () => {
    if (interval === 0 || left-- > 0) return;
    bits.restart();
    left = interval - 1;
    for (const member of members) member.before = member.ended = 0;
  };
  if (members.length === 1) {
    const [columns, rows] = [Math.ceil(width / EDGE), Math.ceil(height / EDGE)];
    for (let y = 0; y < rows; y++)
      for (let x = 0; x < columns; x++) {
        beginUnit();
        read(coefficients, (y * across + x) * BLOCK, members[0]);
        bits.check();
      }
  } else
    for (let y = 0; y < mcusDown; y++)
      for (let x = 0; x < mcusAcross; x++) {
        beginUnit();
        for (const member of members) {
          const { component } = member;
          for (let v = 0; v < component.down; v++)
            for (let h = 0; h < component.across; h++) {
              const at = (y * component.down + v) * across + x * component.across + h;
              if (component === luminance) read(coefficients, at * BLOCK, member);
              else read(passedOver, 0, member);
              bits.check();
            }
        }
      }
  bits.end();
}
