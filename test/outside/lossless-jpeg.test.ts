import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import { luminanceApart } from '../../src/remedy/file/lossless-jpeg';
import { need } from '../tools/need';
import { convert, photograph } from './photographs';

// Held against libjpeg-turbo's own programs: what `jpegtran -grayscale` keeps of a JPEG, which is lossless by its manual,
// decodes to the same pixels as ours, on every kind of JPEG that `cjpeg` writes.

type Tool = 'jpegtran' | 'djpeg' | 'cjpeg';
const run = (tool: Tool, options: string, input: Buffer) =>
  execFileSync(need(`/usr/bin/${tool}`, 'libjpeg-turbo-progs'), options.split(' ').filter(Boolean), {
    input,
    maxBuffer: 2 ** 28,
    stdio: ['pipe', 'pipe', 'ignore'],
  });

/** With the marker that says YCbCr (JFIF 1.02), as we write it. */
const HEAD = Buffer.concat([
  Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 16]),
  Buffer.from('JFIF\0\x01\x02\0\0\x01\0\x01\0\0', 'latin1'),
]);

const isTight = (coding: string) => /optimize|progressive/.test(coding);

const PHOTOGRAPHS = ['Blinds', 'Dune', 'LadyBird', 'Storm', 'Wood'];

/** @param tight its codes are as short as can be, as ours of a progressive one are; else they stay as they are */
function agrees(file: Buffer, what: string, tight: boolean): void {
  const [grey, colourless] = ([1, 3] as const).map(channels => {
    const found = luminanceApart(file, channels);
    assert.ok(found, `${what}: not read`);
    return Buffer.concat([HEAD, found]);
  });
  const theirs = run('jpegtran', '-grayscale -copy none', file);
  assert.ok(run('djpeg', '-pnm', theirs).equals(run('djpeg', '-pnm', grey)), `${what}: other pixels`);
  const rgb = run('djpeg', '-rgb -pnm', colourless);
  const luminance = run('djpeg', '-rgb -pnm', grey);
  assert.ok(rgb.equals(luminance), `${what}: red, green and blue are not the luminance`);
  const shortest = tight
    ? run('jpegtran', '-grayscale -optimize -copy none', file).length * 1.001
    : theirs.length;
  assert.ok(grey.length <= shortest, `${what}: ${grey.length} of ${shortest} bytes`);
}

describe('luminance of a JPEG apart, by libjpeg', function () {
  this.timeout(60_000);

  it('is that of real photographs as they are', () => {
    for (const name of PHOTOGRAPHS) agrees(fs.readFileSync(photograph(name)), name, false);
  });

  const SAMPLINGS = ['1x1', '2x1', '1x2', '2x2', '4x1', '1x1,1x1,1x1', '2x2,1x2,2x1'];
  const CODINGS = ['', '-optimize', '-progressive', '-restart 1', '-restart 3B', '-progressive -restart 5B'];

  it('is that of every sampling and coding, in sizes that are no whole MCUs', () => {
    for (const [width, height] of [
      [333, 251],
      [17, 8],
    ]) {
      const size = `-resize 700x -crop ${width}x${height}+200+150 +repage`;
      const pixels = convert([photograph('LadyBird')], size, 'ppm:-');
      for (const sampling of SAMPLINGS)
        for (const coding of CODINGS) {
          const options = `-quality 85 -sample ${sampling} ${coding}`;
          agrees(run('cjpeg', options, pixels), `${width} x ${height} ${options}`, isTight(coding));
        }
    }
  });

  it('is that of every quality', () => {
    const pixels = convert([photograph('Blinds')], '-resize 640x', 'ppm:-');
    for (const quality of [30, 50, 75, 90, 95, 98, 100])
      for (const coding of ['', '-progressive', '-sample 1x1'])
        agrees(
          run('cjpeg', `-quality ${quality} ${coding}`, pixels),
          `quality ${quality} ${coding}`,
          isTight(coding),
        );
  });

  it('is that of grey, also where its one component is said to be sampled twice', () => {
    const pixels = convert([photograph('Storm')], '-resize 333x', 'ppm:-');
    for (const options of ['', '-sample 2x2', '-progressive', '-restart 2'])
      agrees(run('cjpeg', `-grayscale -quality 92 ${options}`, pixels), `grey ${options}`, isTight(options));
  });

  it('is none of what is coded in a rare way', () => {
    const pixels = convert([photograph('Storm')], '-resize 333x', 'ppm:-');
    for (const options of ['-arithmetic', '-arithmetic -progressive', '-rgb', '-quality 2'])
      assert.equal(luminanceApart(run('cjpeg', options, pixels), 1), null, options);
  });
});
