import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { book, compared, rulesOf } from './support/compared';
import { commit, repositoryOf } from './support/repository';

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
    assert.deepEqual([comparison.base.pictures, comparison.head.pictures], [2, 1]);
    assert.deepEqual(rulesOf(comparison, 'new'), ['plates/002.tif unreadable']);
    assert.equal(comparison.summary.new.errors, 1);
  });
});
