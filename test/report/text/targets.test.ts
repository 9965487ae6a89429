import assert from 'node:assert/strict';
import { targetLines } from '../../../src/report/text/targets';
import type { BookPicture } from '../../../src/shared/finding';
import { picture, pictures, record, target } from '../../rules/support/pictures';

const house = target('silver-halide', { printRecord: record('silver-halide', 14) });
const lines = (...book: BookPicture[]) =>
  targetLines({ targets: [house], pictures: book.map(known => ({ ...known, findings: [] })) });
const READ = 'by what this print house has delivered before: 3 orders of this print house read';

describe('how a book is printed', () => {
  it('says once what all forecasts rest on', () => {
    const [line, ...others] = lines(...pictures(3, 'rgb-neutral', { targets: [house] }));
    assert.deepEqual(others, []);
    assert.ok(line.includes(` Forecasts: ${READ}`), line);
  });
  it('says which pictures rest on which ground, where there are several', () => {
    const [line] = lines(
      picture('rgb-neutral', { targets: [house] }),
      picture('rgb-toned', { targets: [house], tone: [1, 4] }),
      picture('single-channel', { targets: [house] }),
      picture('four-channel', { targets: [house], inks: d => [d, d, d, d] }),
    );
    const [, read, alike, generic] =
      /Forecasts: (rgb-neutral and rgb-toned: .*); (single-channel: .*); (four-channel: .*)\.$/.exec(line)!;
    assert.ok(read.includes(READ) && !read.includes('taken to hold'));
    assert.match(
      alike,
      /of greys sent as R = G = B read, the last on \d{4}-\d\d-\d\d, and taken to hold for one grey channel/,
    );
    assert.equal(generic, 'four-channel: generic process, not your printer');
  });
});
