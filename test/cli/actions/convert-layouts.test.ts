import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import sharp from 'sharp';
import { temporaryFolder } from '../../book/support/folder';
import { pictures } from '../support/book';
import { evengrey } from '../support/run';

/** A colour JPEG on a page of the web and in a text for LaTeX. */
async function book(more: Record<string, string | Uint8Array> = {}): Promise<string> {
  const jpeg = await sharp(Buffer.from(pictures.colour())).jpeg().toBuffer();
  return temporaryFolder({
    'evengrey.json': '{ "process": "offset-coated", "intent": { "grey": "plates" } }',
    'plates/1.jpg': jpeg,
    'page.html': '<p>\n<img src="plates/1.jpg">\n',
    'book.tex': '\\includegraphics{plates/1.jpg}\n',
    ...more,
  });
}

const textOf = (root: string, file: string) => fs.readFileSync(path.join(root, file), 'utf8');

describe('evengrey convert --relink', () => {
  it('makes a PNG of what JPEG would round, where the layouts can place no TIFF, and says so beforehand', async () => {
    const root = await book();
    const args = ['convert', 'plates', '--to', 'rgb-neutral', '--relink'];
    const plan = await evengrey([...args, '--dry-run'], { cwd: root });
    const ran = await evengrey(args, { cwd: root });
    assert.deepEqual([plan.code, ran.code], [0, 0]);
    for (const { stdout } of [plan, ran]) {
      assert.match(
        stdout,
        /plates\/1\.jpg -> plates\/1\.jpg\.rgb-neutral\.png\n +colour to rgb-neutral, PNG/,
      );
      assert.match(
        stdout.replace(/\s+/g, ' '),
        /rounded the tones anew.*The result is a PNG and no TIFF, since pdfTeX takes no TIFF, and book\.tex:1 is to place it\./,
      );
    }
    assert.match(textOf(root, 'page.html'), /src="plates\/1\.jpg\.rgb-neutral\.png"/);
    assert.match(textOf(root, 'book.tex'), /\{\{plates\/1\.jpg\.rgb-neutral\}\.png\}/);
    const { format } = await sharp(path.join(root, 'plates/1.jpg.rgb-neutral.png')).metadata();
    assert.equal(format, 'png');
    const again = await evengrey(args.slice(0, -1), { cwd: root });
    assert.match(again.stdout, /^0 pictures converted, 1 skipped\./);
    assert.deepEqual(fs.readdirSync(path.join(root, 'plates')), ['1.jpg', '1.jpg.rgb-neutral.png']);
  });

  it('makes a TIFF as ever without it', async () => {
    const root = await book();
    await evengrey(['convert', 'plates', '--to', 'rgb-neutral'], { cwd: root });
    assert.deepEqual(fs.readdirSync(path.join(root, 'plates')), ['1.jpg', '1.jpg.rgb-neutral.tif']);
  });

  it('leaves a line as it is that can place no black ink alone, with the way out, and fails for it', async () => {
    const root = await book();
    const args = ['convert', 'plates', '--to', 'black-only', '--relink'];
    const plan = await evengrey([...args, '--dry-run'], { cwd: root });
    const ran = await evengrey(args, { cwd: root });
    assert.deepEqual([plan.code, ran.code], [1, 1]);
    assert.doesNotMatch(plan.stdout, /No layout places/);
    for (const { stdout } of [plan, ran])
      assert.match(
        stdout.replace(/\s+/g, ' '),
        /8 bits\..* Left as it is book\.tex:1 .*\("--as jpeg"\).* page\.html:2 "plates\/1\.jpg" stays on the page: browsers show no TIFF/,
      );
    assert.match(textOf(root, 'page.html'), /src="plates\/1\.jpg"/);
    const asJpeg = await evengrey([...args, '--as', 'jpeg'], { cwd: root });
    assert.equal(asJpeg.code, 1);
    assert.match(
      textOf(root, 'book.tex'),
      /\{\{plates\/1\.black-only\}\.jpg\}|\{plates\/1\.black-only\.jpg\}/,
    );
    assert.match(
      asJpeg.stdout,
      /page\.html:2\n {4}"plates\/1\.jpg" stays on the page: browsers show a JPEG of inks/,
    );
  });
});
