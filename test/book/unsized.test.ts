import assert from 'node:assert/strict';
import { noSettings } from '../../src/book/settings/settings';
import { unsizedNotices } from '../../src/book/unsized';
import { picture } from '../rules/support/pictures';

const at = [{ file: 'book.md', line: 3, column: 5 }];
const sized = { ...picture('rgb-neutral', { path: 'a.tif', placed: { width: 80 } }), placedAt: at };
const unsized = { ...picture('rgb-neutral', { path: 'b.tif', placed: null }), placedAt: at };
const unplaced = picture('rgb-neutral', { path: 'c.tif', placed: null });

describe('pictures whose printed size nobody knows', () => {
  it('are counted among those that layouts place', () => {
    assert.deepEqual(unsizedNotices([sized, unsized, unplaced], noSettings), [
      'One picture that a layout places has no printed size that can be read there, so whether it has enough pixels is not judged: give a size in the layout or its style sheet, or under "placements", or say "textWidth" where they are shares of the text.',
    ]);
    assert.match(
      unsizedNotices([sized, unsized, unsized], { ...noSettings, textWidth: 120 })[0],
      /^2 of the 3 pictures .* not judged: .* or under "placements"\.$/,
    );
    assert.match(unsizedNotices([unsized, unsized], noSettings)[0], /^All 2 pictures that layouts place /);
  });

  it('are told where they have few pixels and nothing gives them a size', () => {
    // 600 pixels with 200 an inch: 3 inches
    const few = picture('rgb-neutral', { path: 'few.tif', facts: { width: 600, height: 400 } });
    assert.deepEqual(unsizedNotices([few, unplaced], noSettings), [
      'A picture has few pixels (printed with 200 an inch: few.tif, 76 mm), and nobody said how large it is to be, so whether that is enough is not judged: give a size under "placements", or in a layout.',
    ]);
    assert.deepEqual(unsizedNotices([{ ...few, placed: { width: 60 } }], noSettings), []);
    assert.match(
      unsizedNotices(Array(5).fill(few), noSettings)[0],
      /^5 pictures have few pixels .* and 2 more\)/,
    );
  });

  it('are not told where all have one, where no layout places any, and where no rule asks', () => {
    assert.deepEqual(unsizedNotices([sized, unplaced], noSettings), []);
    const off = { ...noSettings, rules: { 'low-resolution': 'off' as const } };
    assert.deepEqual(unsizedNotices([unsized], off), []);
  });
});
