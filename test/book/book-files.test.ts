import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import path from 'node:path';
import { checkBook } from '../../src/book/check';
import { noSettings, type Settings } from '../../src/book/settings/settings';
import { bookJson } from '../../src/report/json';
import type { PictureFacts } from '../../src/shared/picture';
import { greyFacts } from './support/facts';
import { temporaryFolder } from './support/folder';

const sha = (digit: number) => String(digit).repeat(64);
const shaOf = (file: string) => createHash('sha256').update(file).digest('hex');

/** Checks a book whose pictures are 600 x 400 pixels; `facts` says more of some. */
async function check(
  files: Record<string, string>,
  settings: Partial<Settings> = {},
  more: { paths?: string[]; facts?: Record<string, Partial<PictureFacts>> } = {},
) {
  const root = temporaryFolder(files);
  return checkBook({
    root,
    paths: (more.paths ?? ['']).map(name => path.join(root, name)),
    settings: { ...noSettings, ...settings },
    pool: {
      facts: async file => [
        greyFacts(shaOf(file), {
          format: 'jpeg',
          width: 600,
          height: 400,
          ...more.facts?.[path.relative(root, file)],
        }),
      ],
    },
    cache: null,
  });
}

const book = {
  'book.md': '![](p/a.jpg){width=50%}\n\n![](p/b.jpg)\n![](p/a.jpg){width=30mm}\n',
  'p/a.jpg': '',
  'p/b.jpg': '',
  'p/c.jpg': '',
};

describe('a book that is laid out in its folder', () => {
  it('is what the layouts place, with the lines', async () => {
    const { pictures, notices } = await check(book);
    assert.deepEqual(
      pictures.map(picture => [
        picture.path,
        ...picture.placedAt!.map(({ file, line, column }) => `${file}:${line}:${column}`),
      ]),
      [
        ['p/a.jpg', 'book.md:1:5', 'book.md:4:5'],
        ['p/b.jpg', 'book.md:3:5'],
      ],
    );
    assert.deepEqual(notices, [
      'One picture is placed by no layout (book.md): p/c.jpg. It is not in the book then, and was not checked: name it under "pictures" if it is printed.',
      'One picture that a layout places has no printed size that can be read there, so whether it has enough pixels is not judged: give a size in the layout or its style sheet, or under "placements", or say "textWidth" where they are shares of the text.',
    ]);
  });

  it('is what the settings name, where they name pictures, and every one where nothing is laid out', async () => {
    const paths = async (files: Record<string, string>, settings: Partial<Settings>) =>
      (await check(files, settings)).pictures.map(picture => picture.path);
    assert.deepEqual(await paths(book, { pictures: ['p'] }), ['p/a.jpg', 'p/b.jpg', 'p/c.jpg']);
    assert.deepEqual(await paths(book, { layouts: [] }), ['p/a.jpg', 'p/b.jpg', 'p/c.jpg']);
  });

  it('tells what the tool of a layout cannot place, once a picture, for sure or with doubt', async () => {
    const { pictures } = await check({
      'a.tex': '\\includegraphics{1.tif}\\includegraphics{2.tif}\\includegraphics{3.jpg}',
      'b.md': '![](2.tif)\n\n![](4.webp)\n![](5.psd)\n',
      'c.html': '<img src="1.tif"><img src="1.tif"><img src="3.jpg">',
      ...{ '1.tif': '', '2.tif': '', '3.jpg': '', '4.webp': '', '5.psd': '' },
    });
    assert.deepEqual(
      pictures.map(({ path, findings }) => [
        path,
        ...findings.flatMap(({ rule, severity, data }) =>
          rule === 'format-not-placed' ? `${severity} ${data.file}:${data.line}` : [],
        ),
      ]),
      [
        ['1.tif', 'error c.html:1'],
        ['2.tif', 'note a.tex:1'],
        ['3.jpg'],
        ['4.webp'],
        ['5.psd', 'note b.md:4'],
      ],
    );
  });

  it('gives its pictures their true resolution', async () => {
    const found = await check(book, { textWidth: 160 });
    assert.deepEqual(
      found.pictures.map(({ placed, findings }) => [
        placed,
        findings.map(({ rule, data }) => `${rule} ${Math.round(Number(data.ppi))}`),
      ]),
      [
        [{ width: 80 }, ['low-resolution 191']],
        [null, []],
      ],
      'the larger of its two places decides: 600 pixels on 80 mm',
    );
    const placements = [{ picture: 'p/a.jpg', width: 40 }];
    const [first] = (await check(book, { textWidth: 160, placements })).pictures;
    assert.deepEqual(
      [first.placed, first.findings],
      [{ width: 40, height: undefined }, []],
      'the settings go before',
    );
  });

  it('lacks a picture that is placed and not there', async () => {
    const { pictures, summary } = await check({ 'text/x.md': 'a\n\n![](../p/no.jpg)', 'p/z.jpg': '' });
    assert.deepEqual(
      pictures.map(({ path, facts, findings: [finding] }) => [
        path,
        facts.encoding,
        finding?.severity,
        finding?.message,
      ]),
      [
        [
          'p/no.jpg',
          'unreadable',
          'error',
          'Nothing can be said of how this picture will print, and the print house may fail on it too. It stays blank on the page: text/x.md:3 places it, and there is no such file. Put the picture there, or correct the path.',
        ],
        ['p/z.jpg', 'rgb-neutral', undefined, undefined],
      ],
    );
    assert.equal(summary.errors, 1);
  });

  it('is looked at in part where a part is named', async () => {
    const one = await check(book, {}, { paths: ['p/c.jpg'] });
    assert.deepEqual([one.pictures.map(({ path }) => path), one.notices], [['p/c.jpg'], []]);
    const folder = await check(book, {}, { paths: ['p'] });
    assert.deepEqual(
      folder.pictures.map(({ path }) => path),
      ['p/a.jpg', 'p/b.jpg'],
    );
  });

  it('prints the original that it places, whatever copies lie about', async () => {
    const facts = {
      'a.jpg': { sha256: sha(1) },
      'copy.jpg': {
        sha256: sha(2),
        remedied: { from: sha(1), to: 'rgb-neutral', toned: false, fitted: false },
      },
    } as Record<string, Partial<PictureFacts>>;
    const files = { 'a.jpg': '', 'copy.jpg': '' };
    const settings = { pictures: ['*.jpg'] };
    const replaced = async (layout: string) =>
      (await check({ ...files, 'x.md': layout }, settings, { facts })).pictures.map(
        ({ replacedBy }) => replacedBy ?? null,
      );
    assert.deepEqual(await replaced('![](a.jpg)'), [null, null]);
    assert.deepEqual(await replaced('![](copy.jpg)'), ['copy.jpg', null]);
  });

  it('tells in its JSON where each picture is placed', async () => {
    const report = JSON.parse(bookJson(await check(book, { pictures: ['p'] })));
    assert.deepEqual(
      report.pictures.map((picture: { placedAt: unknown }) => picture.placedAt),
      [
        [
          { file: 'book.md', line: 1, column: 5 },
          { file: 'book.md', line: 4, column: 5 },
        ],
        [{ file: 'book.md', line: 3, column: 5 }],
        [],
      ],
    );
  });
});
