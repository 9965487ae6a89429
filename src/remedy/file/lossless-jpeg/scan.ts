// no-unit-test: index.test.ts and the outside checks read every coefficient through it
import { Bits } from './bits-read';
import { type Band, blockReader, type Coding, checkSequential, given } from './blocks';
import type { CodedBlocks } from './coded';
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

/** What the kernel finds wrong with coded data, by its number. */
const WRONG = [
  '',
  'no such code',
  'it breaks off',
  'more coefficients than a block has',
  'a restart marker is missing',
  'more data than picture',
];

/**
 * The luminance of a sequential scan, whose AC stays where it stands: no more is read of it than where that is. What
 * belongs to colour is passed over.
 * @throws as `eachBlock`
 */
export function findScan(
  { workspace, at, endsAt, parts }: ScanData,
  frame: Frame,
  { members, band }: Scan,
  interval: number,
): CodedBlocks {
  checkSequential(band);
  const [luminance] = frame.components;
  const [columns, rows] = [Math.ceil(frame.width / EDGE), Math.ceil(frame.height / EDGE)];
  const blocks = columns * rows;
  const [dc, starts, lengths] = [2, 4, 2].map(bytes => workspace.room(blocks * bytes));
  const alone = members.length === 1;
  const codes = members.flatMap(({ component, dc, ac }) => {
    const { all, strides } = given(ac);
    const { across, down } = alone ? { across: 1, down: 1 } : component;
    const tables = [given(dc).all, all, strides].map(table => workspace.holding(table));
    return [across, down, component === luminance ? 1 : 0, ...tables, 0, 0];
  });
  const units = alone ? [columns, rows] : [frame.mcusAcross, frame.mcusDown];
  const job = [at, endsAt, parts, ...units, columns, rows, interval, members.length, dc, starts, lengths];
  const listed = workspace.holding(Uint32Array.from([...job, ...codes]));
  const { kernel } = workspace;
  kernel.beginRows(listed);
  let wrong = 0;
  for (let y = 0; y < units[1] && wrong === 0; y++) wrong = kernel.findRow(listed, y);
  wrong ||= kernel.endRows(listed);
  if (wrong) throw new Unusual(WRONG[wrong]);
  const ofLuminance = members.find(({ component }) => component === luminance)!;
  return { workspace, blocks, codes: given(ofLuminance.ac), dc, starts, lengths, bytes: at };
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
