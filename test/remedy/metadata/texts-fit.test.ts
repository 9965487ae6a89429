import assert from 'node:assert/strict';
import { FieldMaker } from '../../../src/remedy/metadata/fields';
import { textsHoused } from '../../../src/remedy/metadata/texts-fit';
import { type ExifTree, emptyTree } from '../../../src/remedy/metadata/tree';

const texts = ['Description', 'Author', 'Comment', 'Warning'].map(keyword => ({
  keyword,
  text: `its ${keyword}`,
}));
const tags = (exif: ExifTree | null) => exif?.main.map(({ id, data }) => [id, data.toString()]);

describe('textsHoused', () => {
  it('leaves all as they are in a PNG', () => {
    assert.deepEqual(textsHoused({ texts, exif: null }, 'png', []), { texts, exif: null });
  });

  it('gives a JPEG tags for some, the rest stays a comment', () => {
    const told: string[] = [];
    const fit = textsHoused({ texts, exif: null }, 'jpeg', told);
    assert.deepEqual(tags(fit.exif), [
      [270, 'its Description\0'],
      [315, 'its Author\0'],
    ]);
    assert.deepEqual([fit.texts.map(({ keyword }) => keyword), told], [['Comment', 'Warning'], []]);
  });

  it('tells what a TIFF has no place for', () => {
    const told: string[] = [];
    const fit = textsHoused({ texts: texts.slice(1), exif: null }, 'tiff', told);
    assert.deepEqual(tags(fit.exif), [
      [315, 'its Author\0'],
      [270, 'its Comment\0'],
    ]);
    assert.deepEqual(
      [fit.texts, told],
      [[], ['A TIFF has no place for the text "Warning" of the file; it was left out.']],
    );
  });

  it('never overwrites a tag, and tells nothing where the tag says the same', () => {
    const exif = (text: string) => ({ ...emptyTree(), main: [new FieldMaker(false).ascii(315, text)] });
    const told: string[] = [];
    const author = texts.slice(1, 2);
    assert.deepEqual(tags(textsHoused({ texts: author, exif: exif('its Author') }, 'tiff', told).exif), [
      [315, 'its Author\0'],
    ]);
    assert.deepEqual(told, []);
    assert.deepEqual(tags(textsHoused({ texts: author, exif: exif('Other') }, 'tiff', told).exif), [
      [315, 'Other\0'],
    ]);
    assert.equal(told.length, 1);
  });

  it('takes a comment however it is spelt, into the description or else into the EXIF comment', () => {
    const told: string[] = [];
    const comment = (text: string) => [{ keyword: 'comment', text }];
    assert.deepEqual(tags(textsHoused({ texts: comment('hello'), exif: null }, 'tiff', told).exif), [
      [270, 'hello\0'],
    ]);
    for (const bigEndian of [false, true]) {
      const exif = {
        ...emptyTree(),
        bigEndian,
        main: [new FieldMaker(bigEndian).ascii(270, 'A gate')],
      };
      const plain = textsHoused({ texts: comment('hello'), exif }, 'tiff', told).exif;
      assert.deepEqual(tags(plain), [[270, 'A gate\0']]);
      assert.equal(plain?.exif[0].data.toString('latin1'), 'ASCII\0\0\0hello');
      const [{ data }] = textsHoused({ texts: comment('Grüße'), exif }, 'tiff', told).exif!.exif;
      assert.equal(data.toString('latin1', 0, 8), 'UNICODE\0');
      const text = Buffer.from(data.subarray(8));
      assert.equal((bigEndian ? text.swap16() : text).toString('utf16le'), 'Grüße');
      assert.deepEqual(told, []);
      textsHoused({ texts: [...comment('one'), ...comment('two')], exif }, 'tiff', told);
      assert.deepEqual(told.splice(0), [
        'A TIFF has no place for the text "comment" of the file; it was left out.',
      ]);
    }
  });

  it('tells many texts without a place in one sentence', () => {
    const told: string[] = [];
    const many = ['a', 'b', 'c', 'd', 'e'].map(keyword => ({ keyword, text: 'x' }));
    textsHoused({ texts: many, exif: null }, 'tiff', told);
    assert.deepEqual(told, [
      'A TIFF has no place for 5 texts of the file; they were left out: "a", "b", "c" and 2 more.',
    ]);
  });
});
