import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { checkBook } from '../../../src/book/check';
import { loadSettings } from '../../../src/book/settings/load';
import { GENERATOR } from '../../../src/layout';
import { headline } from '../../../src/report/compare/headline';
import { closing } from '../../../src/report/compare/words';
import { book, compared, neutral, picture, pool, rulesOf, settings } from '../revisions/support/compared';
import { commit, repositoryOf } from '../revisions/support/repository';

describe('comparing revisions of a book with layouts', () => {
  it('follows a named main file into its chapters', async () => {
    const top = repositoryOf({
      ...book(3),
      'evengrey.json': '{ "process": "offset-coated", "layouts": ["book.tex"] }',
      'book.tex': '\\documentclass{book}\\graphicspath{{plates/}}\\input{one}',
      'one.tex': '\\includegraphics{001.tif}\\includegraphics{002.tif}',
    });
    fs.rmSync(path.join(top, 'plates/002.tif'));
    commit(top);
    const comparison = await compared(top);
    assert.deepEqual([comparison.base.pictures, comparison.head.pictures], [2, 2]);
    assert.deepEqual(rulesOf(comparison, 'new'), ['plates/002.tif unreadable']);
    assert.equal(comparison.summary.new.errors, 1);
  });

  it('tells what is placed still and not looked at any more, in the words of a check, with its place', async () => {
    const plates = (...names: string[]) => names.map(name => `![p](plates/${name}.tif)\n`).join('');
    const top = repositoryOf({ ...settings, ...book(4), 'book.md': plates('001', '002', '003', '004') });
    commit(top, { '.evengreyignore': 'plates/002.tif\n', 'plates/002.tif': picture('black-only', 2) });
    const ignored = await compared(top, { whole: true });
    assert.deepEqual(ignored.unlooked, { pictures: ['plates/002.tif'], never: [], texts: [] });
    assert.deepEqual(
      ignored.changes.map(({ path, kind, still }) => [path, kind, still]),
      [['plates/002.tif', 'deleted', 'left-out']],
    );
    assert.deepEqual(ignored.notices, [
      'Which pictures are checked is said otherwise than before, by .evengreyignore: 1 picture that is still there is left out since.',
      'One picture is placed by a layout and was not checked, left out by "pictures", "ignore" or an ignore file: plates/002.tif (book.md:2).',
    ]);
    const checked = await checkedNotices(top);
    assert.ok(checked.includes(ignored.notices[1]));
    assert.doesNotMatch(headline(ignored), /Nothing new/);
    assert.match(headline(ignored), /plates\/002\.tif is still there and not checked any more/);

    // what was so before is not told again
    commit(top, {
      'evengrey.json': '{ "process": "offset-coated", "pictures": ["plates/001.tif", "plates/005.tif"] }',
    });
    const chosen = await compared(top, { whole: true });
    assert.deepEqual(chosen.unlooked?.pictures, ['plates/003.tif', 'plates/004.tif']);
    assert.match(
      chosen.notices.join(' '),
      /by "pictures" in evengrey\.json: 2 pictures that are still there are left out since\. 2 pictures are placed by a layout and were not checked, .*: plates\/003\.tif \(book\.md:3\), plates\/004\.tif \(book\.md:4\)\.$/,
    );
    commit(top, { 'plates/001.tif': neutral('new') });
    const later = await compared(top, { whole: true });
    assert.deepEqual([later.unlooked, later.notices], [undefined, []]);
    commit(top, { '.evengreyignore': 'plates/002.tif\nnothing/*\n' });
    assert.match((await compared(top)).notices[0], /: none that is still there is left out for it\.$/);
  });

  it('has nothing ended of a picture that is left out of the check: nobody put it right', async () => {
    const files = { ...book(3), 'plates/004.tif': picture('broken', 4) };
    const top = repositoryOf({ 'evengrey.json': '{ "process": "offset-coated" }', ...files });
    commit(top, { 'evengrey.json': '{ "process": "offset-coated", "ignore": ["plates/004.tif"] }' });
    const out = await compared(top, { whole: true });
    assert.deepEqual([rulesOf(out, 'ended'), out.summary.ended.errors, out.summary.base.errors], [[], 0, 1]);
    assert.deepEqual([out.changes[0].still, out.unlooked?.pictures], ['left-out', ['plates/004.tif']]);
    assert.match(closing(out), /nothing has ended that was said of a picture which is not checked any more/);
    fs.rmSync(path.join(top, 'plates/004.tif'));
    commit(top, { 'evengrey.json': '{ "process": "offset-coated" }' });
    const gone = await compared(top, { whole: true, base: 'HEAD~2' });
    assert.deepEqual(rulesOf(gone, 'ended'), ['plates/004.tif unreadable'], 'what is gone prints no more');
  });

  it('tells what is placed and left out at once as that: it was never looked at', async () => {
    const top = repositoryOf({ ...settings, ...book(2), 'book.md': '![p](plates/001.tif)\n' });
    fs.mkdirSync(path.join(top, 'scans'));
    fs.renameSync(path.join(top, 'plates/001.tif'), path.join(top, 'scans/001.tif'));
    commit(top, {
      '.evengreyignore': 'scans\n',
      'scans/new.tif': neutral('new'),
      'book.md': '![p](scans/001.tif)\n\n![p](scans/new.tif)\n',
    });
    const comparison = await compared(top, { whole: true });
    assert.deepEqual(comparison.unlooked, {
      ...{ pictures: ['scans/001.tif'], never: ['scans/new.tif'], texts: [] },
    });
    assert.match(
      headline(comparison),
      /scans\/001\.tif is still there and not checked any more; scans\/new\.tif is placed since and not checked\./,
    );
  });

  it('takes no page of our own for a layout, whatever its size', async () => {
    const page = (of: string, more = '') => `<!DOCTYPE html>\n<head>${GENERATOR}</head>${of}${more}`;
    const top = repositoryOf({
      ...settings,
      ...book(2),
      'book.md': '![p](plates/001.tif)\n',
      'report.html': page('<img src="plates/002.tif">'),
    });
    commit(top, { 'large.html': page('', ' '.repeat(5 << 20)), 'plates/001.tif': neutral(7) });
    const { head, notices } = await compared(top);
    assert.deepEqual([head.pictures, notices.filter(told => told.includes('html'))], [1, []]);
  });

  it('tells a text that layouts take in and that is gone, where it was there before', async () => {
    const top = repositoryOf({
      ...settings,
      ...book(2),
      'book.tex': '\\graphicspath{{plates/}}\n\\input{one}\n\\input{two}\n\\input{never}\n',
      'one.tex': '\\includegraphics{001.tif}',
      'two.tex': '\\includegraphics{002.tif}',
    });
    fs.rmSync(path.join(top, 'two.tex'));
    commit(top);
    const lost = await compared(top, { whole: true });
    assert.deepEqual(lost.unlooked, {
      pictures: [],
      never: [],
      texts: [{ file: 'book.tex', line: 3, path: 'two.tex' }],
    });
    assert.match(
      lost.notices[0],
      /^Pages may be missing: book\.tex:3 takes in "two\.tex", and there is no such file/,
    );
    assert.match(
      lost.notices[1],
      /^1 picture that is still there is placed by no layout any more, .*: plates\/002\.tif\.$/,
    );
    assert.ok((await checkedNotices(top)).includes(lost.notices[0]));
    assert.match(headline(lost), /but 1 text that is taken in by a layout is not there/);
    assert.doesNotMatch(headline(lost), /Nothing new/);
  });
});

async function checkedNotices(root: string): Promise<string[]> {
  const { settings: read } = await loadSettings(root);
  return (await checkBook({ root, paths: [root], settings: read!, pool: pool(), cache: null })).notices;
}
