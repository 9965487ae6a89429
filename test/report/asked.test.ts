import assert from 'node:assert/strict';
import { askedBy, askedWords, unlisted } from '../../src/report/asked';
import { list } from '../../src/rules/words';
import type { Finding } from '../../src/shared/finding';
import { finding, picture } from './text/support';

const names = Array.from({ length: 30 }, (_, i) => `p${i + 10}.tif`);
const asking = (message: string, convert: string[]): Finding => ({
  ...finding('mixed-encodings', 'warning', message),
  data: { convert },
});
const wordsOn = (message: string, convert: string[]) => {
  const all = asking(message, convert);
  return askedWords(
    all,
    askedBy(
      all,
      ['other.tif', ...names].map(name => picture(name)),
    ),
  );
};

describe('the pictures that a finding about the book asks for', () => {
  it('are files, however many of their pages are judged', () => {
    const pages = [1, 2].map(page => picture('a.tif', [], { page }));
    const all = asking('Mixed.', ['a.tif', 'b.tif']);
    const asked = askedBy(all, [...pages, picture('b.tif')]);
    assert.deepEqual(asked, [pages[0], picture('b.tif')]);
    assert.equal(askedWords(all, asked), ' This asks for 2 pictures: a.tif and b.tif.');
    assert.deepEqual(askedBy({ ...all, severity: 'note' }, pages), []);
  });

  it('are named up to a number', () => {
    assert.match(
      wordsOn('Mixed.', names),
      /^ This asks for 30 pictures: p10\.tif, .*, p29\.tif and 10 more\.$/,
    );
  });

  it('are known as a whole where its message lists some of them', () => {
    const seven = names.slice(0, 7);
    assert.deepEqual(unlisted(asking(`That leaves ${list(seven, 5)} to convert.`, seven)), seven);
    assert.deepEqual(unlisted(asking(`That leaves ${list(seven, 7)} to convert.`, seven)), []);
    assert.deepEqual(unlisted(asking('All alike.', [])), []);
    assert.deepEqual(unlisted(asking('All alike.', seven)), seven);
    assert.deepEqual(unlisted({ ...asking('All alike.', seven), severity: 'note' }), []);
    const some = asking(`It is said of ${list(seven, 5)}.`, seven);
    assert.deepEqual(unlisted({ ...some, severity: 'note' }), seven);
  });

  it('are not named again where the message itself lists them', () => {
    assert.equal(wordsOn(`That leaves ${list(names.slice(0, 3))} to convert.`, names.slice(0, 3)), '');
    assert.equal(wordsOn('That leaves p10.tif.', names.slice(0, 1)), '');
    assert.equal(
      wordsOn('That leaves pp10.tif.', names.slice(0, 1)),
      ' This asks for 1 picture: p10.tif.',
      'another name',
    );
    const seven = names.slice(0, 7);
    assert.equal(
      wordsOn(`That leaves ${list(seven, 5)} to convert.`, seven),
      ' The other 2 pictures are p15.tif and p16.tif.',
    );
    assert.equal(wordsOn(`${list(seven, 6)}.`, seven), ' The other picture is p16.tif.');
  });
});
