// no-unit-test: part of the tests
import fs from 'node:fs';
import { need } from '../../tools/need';

/** A real profile of four inks from Debian, to check against; never shipped. */
export const fourInkFile = () => need('/usr/share/color/icc/ghostscript/default_cmyk.icc', 'libgs-common');
export const fourInk = () => fs.readFileSync(fourInkFile());
export const screenFile = () => need('/usr/share/color/icc/sRGB.icc', 'icc-profiles-free');

/** A screen's profile turned into a printer's of R, G, B: class `prtr`, and a paper of L* about 95, slightly bluish. */
export function printerRgb(): Uint8Array {
  const bytes = Uint8Array.from(fs.readFileSync(screenFile()));
  const view = new DataView(bytes.buffer);
  bytes.set(new TextEncoder().encode('prtr'), 12);
  whitePoint(view, 0.845, 0.876, 0.75);
  return bytes;
}

/** A printer's profile for grey alone (v4): L* by a gamma of 2.2, on a paper that it does not describe. */
export function printerGrey(): Uint8Array {
  const tags: [string, Uint8Array][] = [
    ['desc', mluc('Grey of a house')],
    ['cprt', mluc('none')],
    ['wtpt', xyz(0.9642, 1, 0.8249)],
    ['kTRC', gamma(2.2)],
  ];
  const head = 128 + 4 + tags.length * 12;
  const bytes = new Uint8Array(head + tags.reduce((sum, [, data]) => sum + data.length, 0));
  const view = new DataView(bytes.buffer);
  const text = (at: number, letters: string) => bytes.set(new TextEncoder().encode(letters), at);
  view.setUint32(0, bytes.length);
  view.setUint32(8, 0x04300000);
  text(12, 'prtr');
  text(16, 'GRAY');
  text(20, 'XYZ ');
  text(36, 'acsp');
  bytes.set(xyz(0.9642, 1, 0.8249).subarray(8), 68);
  view.setUint32(128, tags.length);
  let offset = head;
  tags.forEach(([name, data], i) => {
    text(132 + i * 12, name);
    view.setUint32(136 + i * 12, offset);
    view.setUint32(140 + i * 12, data.length);
    bytes.set(data, offset);
    offset += data.length;
  });
  return bytes;
}

// tag types of ICC.1:2010, clause 10
function typed(name: string, length: number): { bytes: Uint8Array; view: DataView } {
  const bytes = new Uint8Array(length);
  bytes.set(new TextEncoder().encode(name));
  return { bytes, view: new DataView(bytes.buffer) };
}

function xyz(...values: number[]): Uint8Array {
  const { bytes, view } = typed('XYZ ', 20);
  values.forEach((value, i) => {
    view.setInt32(8 + i * 4, Math.round(value * 65536));
  });
  return bytes;
}

function gamma(exponent: number): Uint8Array {
  const { bytes, view } = typed('curv', 16);
  view.setUint32(8, 1);
  view.setUint16(12, Math.round(exponent * 256));
  return bytes;
}

function mluc(text: string): Uint8Array {
  const { bytes, view } = typed('mluc', Math.ceil((28 + text.length * 2) / 4) * 4);
  view.setUint32(8, 1);
  view.setUint32(12, 12);
  bytes.set(new TextEncoder().encode('enGB'), 16);
  view.setUint32(20, text.length * 2);
  view.setUint32(24, 28);
  for (let i = 0; i < text.length; i++) view.setUint16(28 + i * 2, text.charCodeAt(i));
  return bytes;
}

function whitePoint(view: DataView, ...values: number[]) {
  for (let at = 132; at < 132 + view.getUint32(128) * 12; at += 12)
    if (view.getUint32(at) === 0x77747074)
      values.forEach((value, i) => {
        view.setInt32(view.getUint32(at + 4) + 8 + i * 4, Math.round(value * 65536));
      });
}
