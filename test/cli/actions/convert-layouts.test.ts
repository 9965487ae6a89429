import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import sharp from 'sharp';
import { convertReportSchema } from '../../../src/report/json/convert-schema';
import { temporaryFolder } from '../../book/support/folder';
import { strictErrors } from '../../report/support';
import { pictures } from '../support/book';
import { golden } from '../support/golden';
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
        /rounds these tones anew.*The result is a PNG and no TIFF, since pdfTeX takes no TIFF, and book\.tex:1 is to place it\./,
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

  it('is told to be run again where an original was changed since, which no layout places any more', async () => {
    const root = await book();
    const here = { cwd: root, env: { EVENGREY_CACHE_DIR: temporaryFolder() } };
    const args = ['convert', 'plates', '--to', 'rgb-neutral', '--relink'];
    const checked = async () => (await evengrey(['check'], here)).stdout.replace(/\s+/g, ' ');
    await evengrey(args, here);
    assert.doesNotMatch(await checked(), /earlier state/);
    const edited = sharp(Buffer.from(pictures.colour())).negate().jpeg();
    fs.writeFileSync(path.join(root, 'plates/1.jpg'), await edited.toBuffer());
    assert.match(
      await checked(),
      /The book has an earlier state of plates\/1\.jpg: plates\/1\.jpg\.rgb-neutral\.png was made of it, and it was changed since\. Convert it again\./,
    );
    const again = await evengrey(['convert', 'plates/1.jpg', '--to', 'rgb-neutral', '--relink'], here);
    assert.match(again.stdout, /which was made before the picture was changed/);
    assert.doesNotMatch(await checked(), /earlier state/);
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

  it('has the settings name the results, tells what waivers waive no more, and is undone to the byte', async () => {
    const settings = `{
  "process": "offset-coated", // the spring book
  "rules": { "mixed-encodings": "error" },
  "spreads": [["plates/3.tif", "plates/4.tif"]]
}
`;
    const layout = [1, 2, 3, 4].map(n => `![](plates/${n}.tif)\n`).join('\n');
    const root = temporaryFolder({
      'evengrey.json': settings,
      'book.md': layout,
      ...Object.fromEntries([1, 2, 3].map(n => [`plates/${n}.tif`, pictures.neutral(n)])),
      'plates/4.tif': pictures.blackOnly(4),
    });
    const how = { cwd: root, env: { EVENGREY_CACHE_DIR: temporaryFolder() } };
    assert.equal((await evengrey(['check', '--waive'], how)).code, 0);
    const waived = await evengrey(['check'], how);
    assert.deepEqual([waived.code, /1 finding is waived/.test(waived.stdout)], [0, true]);

    const args = ['convert', 'plates', '--to', 'rgb-neutral', '--relink'];
    const plan = await evengrey([...args, '--dry-run'], how);
    golden('convert/relink-settings-dry-run.txt', plan.stdout);
    assert.deepEqual([textOf(root, 'evengrey.json'), textOf(root, 'book.md')], [settings, layout]);
    const ran = await evengrey([...args, '--format', 'json'], how);
    const report = JSON.parse(ran.stdout);
    assert.equal(strictErrors(convertReportSchema, report), '');
    assert.deepEqual(
      report.relinking.settings.map((change: { line: number; to: string }) => [change.line, change.to]),
      [[4, 'plates/4.tif.rgb-neutral.png']],
    );
    assert.match(report.notices.join(), /^1 waiver of .* mixed-encodings on plates\/4\.tif/);
    assert.equal(textOf(root, 'evengrey.json'), settings.replace('4.tif', '4.tif.rgb-neutral.png'));
    const after = await evengrey(['check', '--format', 'json'], how);
    const book = JSON.parse(after.stdout);
    assert.deepEqual(
      book.pictures.map((picture: { path: string }) => picture.path),
      ['plates/1.tif', 'plates/2.tif', 'plates/3.tif', 'plates/4.tif.rgb-neutral.png'],
    );
    assert.match(
      `${after.stderr}${after.stdout}`,
      /1 waiver of no finding: mixed-encodings on plates\/4\.tif/,
    );

    const undone = await evengrey(['convert', '.', '--undo'], how);
    golden('convert/relink-undone.txt', undone.stdout);
    assert.deepEqual([textOf(root, 'evengrey.json'), textOf(root, 'book.md')], [settings, layout]);
    const again = await evengrey(['check'], how);
    assert.deepEqual([plan.code, ran.code, undone.code, again.code], [0, 0, 0, 0]);
    assert.match(again.stdout, /1 finding is waived/);
    assert.doesNotMatch(again.stdout, /no finding any more/);
  });

  it('tells in place, too, what waivers waive no more', async () => {
    const root = temporaryFolder({
      'evengrey.json': '{ "process": "offset-coated" }',
      ...Object.fromEntries([1, 2, 3].map(n => [`${n}.tif`, pictures.neutral(n)])),
      '4.tif': pictures.blackOnly(4),
    });
    await evengrey(['check', '--waive'], { cwd: root });
    const { stdout } = await evengrey(['convert', '.', '--to', 'rgb-neutral', '--in-place'], { cwd: root });
    assert.match(stdout, /1 waiver of \.evengrey-waivers\.json is of pictures whose results/);
  });
});
