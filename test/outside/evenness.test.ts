import assert from 'node:assert/strict';
import path from 'node:path';
import { temporaryFolder } from '../book/support/folder';
import { check, findings, type Report } from './check';
import { convert, photograph } from './photographs';

const SOURCES = [
  'Aqua',
  'Blinds',
  'Dune',
  'FreshFlower',
  'Garden',
  'GreenMeadow',
  'LadyBird',
  'Storm',
  'TwoWings',
  'YellowFlower',
];
const GREY = '-colorspace Gray -colorspace sRGB -type TrueColor';
const CROPS = ['+0+0', '+200+0', '+400+0', '+0+300', '+200+300', '+400+300'];

/** So many different photographs as R = G = B, and the path that the next one would have. */
function neutralBook(count: number): string {
  const folder = temporaryFolder({ 'evengrey.json': '{"process": "silver-halide"}' });
  for (const source of SOURCES) {
    const crops = CROPS.map((at, i) => [
      ...`( -clone 0 -crop 600x400${at} +repage -auto-level +level 3%,97% -write`.split(' '),
      path.join(folder, `${source}-${i}.jpg`),
      '+delete',
      ')',
    ]).slice(0, Math.ceil(count / SOURCES.length));
    // each over nearly the whole scale: a flat picture and one that is cut off at the ends have notes of their own
    convert([photograph(source)], `-resize 1000x -strip ${GREY} -quality 88`, crops.flat(), 'null:');
  }
  return folder;
}

const bookNotes = ({ findings }: Report) => findings.map(({ rule, severity }) => [rule, severity]);

describe('a book whose pictures are all alike', function () {
  this.timeout(120_000);

  it('of sixty neutral photographs on silver halide has one note, about the process', async () => {
    const report = await check(neutralBook(60));
    assert.equal(report.pictures.length, 60);
    assert.ok(report.pictures.every(({ encoding }) => encoding === 'rgb-neutral'));
    assert.deepEqual(findings(report), ['book: likely-tint note']);
    assert.match(report.findings[0].message, /silver halide/i);
  });

  it('but for one in black ink among thirty-nine has that one named, and nothing else', async () => {
    const folder = neutralBook(40);
    const odd = path.join(folder, 'Dune-3.jpg');
    convert([odd], '-colorspace CMYK -quality 88', [odd]);
    const report = await check(folder);
    assert.equal(report.pictures.length, 40);
    assert.equal(report.pictures.find(({ path }) => path === 'Dune-3.jpg')?.encoding, 'black-only');
    assert.deepEqual(bookNotes(report), [['likely-tint', 'note']]);
    const named = report.pictures.filter(({ findings }) => findings.length).map(({ path }) => path);
    assert.deepEqual(named, ['Dune-3.jpg']);
  });
});
