import assert from 'node:assert/strict';
import { type Contact, contacts } from '../../../src/report/page/contacts';
import type { Image } from '../../../src/report/page/image';
import { sheetOf } from '../../../src/report/sheet';
import type { PictureReport } from '../../../src/shared/finding';
import { finding, picture, report } from '../text/support';

const small: Image = { type: 'image/jpeg', bytes: Buffer.from('x'), fullWidth: 6, fullHeight: 4 };

function page(
  pictures: PictureReport[],
  image: Image | null = small,
  notShown: string | null = null,
): string {
  const entries = pictures.map(
    (of, i): Contact => ({
      sheet: sheetOf(of, [], { light: null, series: 0 }),
      small: image,
      notShown,
      id: `picture-${i + 1}`,
    }),
  );
  return contacts(report(pictures), entries, 'all').text;
}

describe('the contact sheet', () => {
  it('is drawn as one possible order at first, says so, and lets others and the files be chosen', () => {
    const text = page([picture('a.tif'), picture('b.tif')]);
    const radios = [
      ...text.matchAll(/<input type="radio" name="contacts" id="([^"]+)" value="[^"]+"( checked)?/g),
    ];
    assert.deepEqual(
      radios.map(([, id, checked]) => [id, Boolean(checked)]),
      [
        ['contacts-0', true],
        ['contacts-1', false],
        ['contacts-2', false],
        ['contacts-files', false],
      ],
    );
    assert.match(text, /<strong>One possible order, .*: not the colours that they will have\.<\/strong>/);
  });

  it('draws the same order for pictures that print alike, and each by filters that are there', () => {
    const text = page([picture('a.tif'), picture('b.tif')]);
    const filters = new Map(
      [...text.matchAll(/<filter id="([^"]+)"(.*?)<\/filter>/g)].map(([, id, body]) => [id, body]),
    );
    assert.equal(filters.size, 6);
    assert.equal(filters.get('drawn-1-0'), filters.get('drawn-2-0'));
    assert.notEqual(filters.get('drawn-1-0'), filters.get('drawn-1-1'));
    for (const [, id] of text.matchAll(/url\(#([^)]+)\)/g)) assert.ok(filters.has(id), id);
  });

  it('takes the file’s own tone out, which the forecast has in it, and leaves left-over colour', () => {
    for (const encoding of ['rgb-toned', 'single-channel', 'rgb-neutral'] as const)
      assert.match(page([picture('a.tif', [], { encoding })]), /<feColorMatrix/, encoding);
    assert.doesNotMatch(page([picture('a.tif', [], { encoding: 'rgb-residual' })]), /<feColorMatrix/);
  });

  it('says why a picture is not shown that is not broken, and draws no mark of a broken one', () => {
    const text = page([picture('a.tif')], null, 'The file is another one now.');
    assert.match(text, /<span class="frame"><small>The file is another one now\.<\/small><\/span>/);
    assert.doesNotMatch(text, /<span class="frame"><svg/);
    assert.match(page([picture('a.tif')], null), /<span class="frame"><svg/);
  });

  it('has what faces each other in one frame, in the order of the spread', () => {
    const pictures = ['a.tif', 'b.tif', 'c.tif'].map(path => picture(path));
    const spreads = [
      ['b.tif', 'a.tif'],
      ['gone.tif', 'c.tif'],
    ];
    const entries = pictures.map(
      (of): Contact => ({
        sheet: sheetOf(of, [], { light: null, series: 0 }),
        small,
        notShown: null,
        id: null,
      }),
    );
    const ordered = [pictures[1], pictures[0], pictures[2]];
    const text = contacts(
      report(
        ordered.map((of, i) => ({ ...of, position: i + 1 })),
        { spreads },
      ),
      [entries[1], entries[0], entries[2]],
      'all',
    ).text;
    const frames = [...text.matchAll(/<li class="opening" style="--pages:(\d)"><ol aria-label="([^"]+)">/g)];
    assert.deepEqual(
      frames.map(([, pages, label]) => [pages, label]),
      [['2', 'Facing: b.tif, a.tif']],
    );
    const [framed] = text.match(/<li class="opening"[\s\S]*?<\/ol>/)!;
    assert.deepEqual(
      [...framed.matchAll(/<span>(\w\.tif)/g)].map(([, name]) => name),
      ['b.tif', 'a.tif'],
    );
    assert.match(text.slice(text.indexOf(framed) + framed.length), /<span>c\.tif/);
    assert.doesNotMatch(page(pictures), /opening/);
  });

  it('says in words which will be seen among the others', () => {
    const odd = picture('b.tif', [finding('odd-one-out', 'warning', 'It differs.')]);
    const [first, second] = page([picture('a.tif'), odd])
      .split('<li')
      .slice(1);
    assert.doesNotMatch(first, /unlike/);
    assert.match(second, /<b class="tag">.*unlike its neighbours<\/b>/);
  });

  it('says what each asks for in a word or two, names of formats as they are written', () => {
    const asking = (...rules: string[]) =>
      picture(
        'a.tif',
        rules.map(rule => finding(rule, 'warning', '')),
      );
    const tags = ([...rules]: string[]) =>
      /<b class="tag">(?:<svg.*?<\/svg>|<[^>]*>)*([^<]*)/.exec(page([asking(...rules)]))?.[1];
    assert.equal(tags(['format-not-placed']), 'place a PNG of it');
    assert.equal(tags(['low-resolution']), 'place smaller');
    assert.equal(tags(['likely-tint']), 'convert');
    assert.equal(tags([]), undefined);
  });

  it('shows files, and offers no order, where nothing is forecast or nothing can be shown', () => {
    const colour = { ...picture('a.tif', [], { encoding: 'colour' }), forecasts: [], targets: [] };
    for (const text of [page([colour]), page([picture('a.tif')], null)]) {
      assert.doesNotMatch(text, /<filter|<input|possible order, the same/);
      assert.match(text, /<p>The files, as a screen shows them\. <\/p>/);
    }
  });
});
