// no-unit-test: index.test.ts and the outside checks read every coefficient through it
import { bufferSource, type Source } from '../../../picture/header';
import { SOS, segments, segmentsFrom } from '../../../picture/header/jpeg';
import { type CodedBlocks, codedAnew } from './coded';
import { type CodeTables, takeCodes } from './codes-read';
import { type Frame, frameOf, isFrame, isLuminance } from './frame';
import { findScan, readScan, scanOf } from './scan';
import { scanEnd, unstuffed } from './stuffing';
import { Unusual } from './unusual';
import { type Workspace, workspace } from './workspace';
import { BLOCK, EDGE } from './zigzag';

/** The quantised luminance of a JPEG, as it is stored. */
export interface Luminance {
  /** In pixels. */
  width: number;
  height: number;
  blocks: CodedBlocks;
  /** Quantisation table, in zigzag order. */
  steps: Uint8Array;
}

const [DHT, DQT, DRI, APP14] = [0xc4, 0xdb, 0xdd, 0xee];
const EOI = Buffer.from([0xff, 0xd9]);
/** A picture has a dozen; each walks over the whole picture, so that a file of thousands would never be done. */
const MOST_SCANS = 100;

/**
 * Reads the coefficients of the luminance of a Huffman-coded JPEG of 8 bits, grey or YCbCr, baseline or progressive
 * (ISO/IEC 10918-1, ITU-T T.81).
 * @throws Unusual where it is anything else, damaged or cut
 */
export function readLuminance(file: Buffer): Luminance {
  const reader = new Reader();
  const source = bufferSource(file);
  let at = 2;
  for (let more = true; more; ) {
    more = false;
    for (const { marker, start, end } of segmentsFrom(source, at)) {
      const body = file.subarray(start + 4, end);
      more = marker === SOS;
      if (more) at = reader.scan(file, body, end);
      else reader.take(marker, body);
    }
  }
  if (!file.includes(EOI, at)) throw new Unusual('it breaks off');
  return reader.luminance();
}

/** Whether what stands before the first scan says that `readLuminance` will do, as long as nothing behind is damaged. */
export function promisesLuminance(source: Source): boolean {
  const reader = new Reader();
  try {
    for (const { marker, start, end } of segments(source)) {
      if (marker === SOS) return reader.promises();
      reader.take(marker, source.bytes(start + 4, end - start - 4));
    }
  } catch (error) {
    if (!(error instanceof Unusual)) throw error;
  }
  return false;
}

class Reader {
  private frame: Frame | null = null;
  private readonly codes: CodeTables = new Map();
  private readonly tables = new Map<number, Uint8Array>();
  /** Of luminance: the table that stood when its first scan began. */
  private steps: Uint8Array | null = null;
  /** Of a sequential picture. */
  private blocks: CodedBlocks | null = null;
  /** Of a progressive one: block by block, row by row, in zigzag order; the last of a row may lie beyond the picture. */
  private coefficients = new Int16Array(0);
  private readonly workspace: Workspace = workspace();
  private interval = 0;
  private transform: number | null = null;
  private scans = 0;

  take(marker: number, body: Buffer): void {
    if (marker === DHT) takeCodes(this.codes, body);
    else if (marker === DQT) this.takeSteps(body);
    else if (marker === DRI) this.interval = intervalOf(body);
    else if (marker === APP14 && body.toString('latin1', 0, 5) === 'Adobe') this.transform = body[11];
    else if (isFrame(marker)) {
      if (this.frame) throw new Unusual('several frames');
      this.frame = frameOf(marker, body);
    }
  }

  private takeSteps(body: Buffer): void {
    for (let at = 0; at < body.length; at += 1 + BLOCK) {
      const steps = body.subarray(at + 1, at + 1 + BLOCK);
      if (body[at] > 3 || steps.length < BLOCK || steps.includes(0))
        throw new Unusual('quantised more coarsely than a baseline JPEG can be');
      this.tables.set(body[at], steps);
    }
  }

  promises(): boolean {
    const { frame } = this;
    return frame !== null && isLuminance(frame, this.transform) && this.tables.has(frame.components[0].table);
  }

  /** Reads a scan whose data begin at `from`; returns where the file goes on. */
  scan(file: Buffer, body: Buffer, from: number): number {
    const { frame } = this;
    if (!frame || !isLuminance(frame, this.transform)) throw new Unusual('not grey, not YCbCr');
    if (++this.scans > MOST_SCANS) throw new Unusual('scans without end');
    const scan = scanOf(body, frame, this.codes);
    if (!scan.members.some(({ component }) => component === frame.components[0])) return scanEnd(file, from);
    this.begin(frame, file.length);
    if (this.blocks) throw new Unusual('luminance is coded twice');
    this.workspace.clear();
    const data = unstuffed(file, from, this.workspace);
    if (frame.progressive) readScan(data, frame, scan, this.interval, this.coefficients);
    else this.blocks = findScan(data, frame, scan, this.interval);
    return data.next;
  }

  /** Makes room when luminance is met first: none for a picture that a file of so many bytes cannot hold. */
  private begin({ components: [luminance], mcusAcross, mcusDown, progressive }: Frame, bytes: number): void {
    if (this.steps) return;
    const blocks = mcusAcross * luminance.across * mcusDown * luminance.down;
    // no code of DC is shorter than a bit
    if (blocks > bytes * 8) throw new Unusual('it breaks off');
    this.steps = this.tables.get(luminance.table) ?? null;
    if (!this.steps) throw new Unusual('a quantisation table is missing');
    if (progressive) this.coefficients = new Int16Array(blocks * BLOCK);
  }

  luminance(): Luminance {
    const { frame, steps } = this;
    if (!frame || !steps) throw new Unusual('no luminance');
    const { width, height } = frame;
    return { width, height, steps, blocks: this.blocks ?? this.codedAnew(frame) };
  }

  /** The blocks of a progressive picture, once all its scans were read. */
  private codedAnew({ width, height, mcusAcross, components }: Frame): CodedBlocks {
    const across = mcusAcross * components[0].across;
    this.workspace.clear();
    return codedAnew(
      this.coefficients,
      across,
      Math.ceil(width / EDGE),
      Math.ceil(height / EDGE),
      this.workspace,
    );
  }
}

function intervalOf(body: Buffer): number {
  if (body.length !== 2) throw new Unusual('damaged');
  return body.readUInt16BE(0);
}
