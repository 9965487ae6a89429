// no-unit-test: index.test.ts and the outside checks read every coefficient through it
import { Bits } from './bits-read';
import { type Band, blockReader, type Coding, checkSequential, codesOfAc, passBlock } from './blocks';
import { type CodedBlocks, codedIn } from './coded';
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

/** Reads the next block of a component, which lies at these columns and rows of blocks. */
type ReadNext = (member: Member, x: number, y: number) => void;

/**
 * Goes through the blocks of a scan in their order.
 * @param interval MCUs between restart markers; 0: there are none
 * @throws Unusual where the data are damaged
 */
function eachBlock(
  bits: Bits,
  { width, height, mcusAcross, mcusDown }: Frame,
  members: readonly Member[],
  interval: number,
  read: ReadNext,
): void {
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
        read(members[0], x, y);
        bits.check();
      }
  } else
    for (let y = 0; y < mcusDown; y++)
      for (let x = 0; x < mcusAcross; x++) {
        beginUnit();
        for (const member of members) {
          const { across, down } = member.component;
          for (let v = 0; v < down; v++)
            for (let h = 0; h < across; h++) {
              read(member, x * across + h, y * down + v);
              bits.check();
            }
        }
      }
  bits.end();
}

/**
 * The luminance of a sequential scan, whose AC stays where it stands: no more is read of it than where that is. What
 * belongs to colour is passed over.
 * @throws as `eachBlock`
 */
export function findScan(
  data: ScanData,
  frame: Frame,
  { members, band }: Scan,
  interval: number,
): CodedBlocks {
  checkSequential(band);
  const [luminance] = frame.components;
  const [columns, rows] = [Math.ceil(frame.width / EDGE), Math.ceil(frame.height / EDGE)];
  const codes = codesOfAc(members.find(({ component }) => component === luminance)!);
  const coded = codedIn(data.bytes, codes, columns * rows);
  const bits = new Bits(data);
  eachBlock(bits, frame, members, interval, (member, x, y) => {
    const from = passBlock(bits, member);
    if (member.component !== luminance || x >= columns || y >= rows) return;
    const place = y * columns + x;
    coded.dc[place] = member.before;
    coded.starts[place] = from;
    coded.lengths[place] = bits.at - from;
  });
  return coded;
}

/**
 * Takes what a progressive scan tells of luminance; what belongs to colour is passed over.
 * @param coefficients of luminance
 * @throws as `eachBlock`
 */
export function readScan(
  data: ScanData,
  frame: Frame,
  { members, band }: Scan,
  interval: number,
  coefficients: Int16Array,
): void {
  const [luminance] = frame.components;
  const across = frame.mcusAcross * luminance.across;
  const bits = new Bits(data);
  const read = blockReader(bits, band);
  const passedOver = new Int16Array(BLOCK);
  eachBlock(bits, frame, members, interval, (member, x, y) => {
    if (member.component === luminance) read(coefficients, (y * across + x) * BLOCK, member);
    else read(passedOver, 0, member);
  });
}
