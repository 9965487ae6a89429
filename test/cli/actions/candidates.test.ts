import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { sharp } from '../../../src/picture/decode-sharp';
import { greyMethods } from '../../../src/remedy/grey/methods';
import { temporaryFolder } from '../../book/support/folder';
import { pictures } from '../support/book';
import { evengrey } from '../support/run';

describe('evengrey convert --candidates', () => {
  it('shows every way to grey on the picture, in one page, and converts nothing', async () => {
    const root = temporaryFolder({ 'a plate.tif': pictures.colour() });
    const before = fs.readFileSync(path.join(root, 'a plate.tif'));
    const args = ['convert', 'a plate.tif', '--candidates', 'ways.html', '--to', 'single-channel'];
    const ran = await evengrey(args, { cwd: root });
    assert.deepEqual([ran.code, ran.stderr], [0, '']);
    assert.equal(
      ran.stdout,
      `"ways.html" is written: "a plate.tif" made grey in ${greyMethods.length} ways. Open it in a browser. Nothing was converted.\n`,
    );
    assert.deepEqual(fs.readdirSync(root).sort(), ['a plate.tif', 'ways.html']);
    assert.ok(before.equals(fs.readFileSync(path.join(root, 'a plate.tif'))));
    const page = fs.readFileSync(path.join(root, 'ways.html'), 'utf8');
    const shown = [...page.matchAll(/base64,([^"]+)"/g)].map(([, text]) => Buffer.from(text, 'base64'));
    assert.equal(shown.length, greyMethods.length + 1);
    const tones = await Promise.all(shown.slice(1).map(png => sharp(png).stats()));
    assert.ok(new Set(tones.map(({ channels }) => channels[0].mean)).size > 3, 'they differ');
    assert.match(page, /evengrey convert &#39;a plate\.tif&#39; --to single-channel --method darker-sky/);
  });

  it('says of a picture that is grey already that the ways can only be alike', async () => {
    const root = temporaryFolder({ 'a.tif': pictures.neutral(1) });
    const ran = await evengrey(['convert', 'a.tif', '--candidates', 'ways.html'], { cwd: root });
    assert.match(
      ran.stdout,
      /Nothing was converted\.\nThe picture is grey already, so the ways can only be alike\.\n$/,
    );
  });

  for (const [why, args, sentence] of [
    ['a picture for the page', ['a.tif', '--candidates', 'b.png'], /call it \.html/],
    [
      'another option',
      ['a.tif', '--candidates', 'b.html', '--in-place'],
      /leave --inPlace out|leave --in-place out/,
    ],
    ['two pictures', ['a.tif', 'a.tif', '--candidates', 'b.html'], /shows one picture/],
    ['a folder, by its name', ['.', '--candidates', 'b.html'], /"\."[^.]* This is a folder/],
    ['no picture', ['b.tif', '--candidates', 'b.html'], /"b\.tif": .*(no picture|not a picture|format)/i],
  ] as const)
    it(`refuses ${why}, and writes nothing`, async () => {
      const root = temporaryFolder({ 'a.tif': pictures.colour(), 'b.tif': 'none' });
      const ran = await evengrey(['convert', ...args], { cwd: root });
      assert.equal(ran.code, 2);
      assert.match(ran.stderr, sentence);
      assert.deepEqual(fs.readdirSync(root).sort(), ['a.tif', 'b.tif']);
    });
});
