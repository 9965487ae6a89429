import assert from 'node:assert/strict';
import { sharedWords } from '../../../src/report/text/shared-words';
import { report } from './conversions';

const told = (path: string, ...sentences: string[]) => ({
  ...report.conversions[0],
  path,
  told: sentences,
});

const shown = (all: Parameters<typeof sharedWords>[0]) =>
  sharedWords(all).map(({ sentences, pictures, number }) => [
    sentences.join(' '),
    [...pictures].map(({ path }) => path).join(''),
    number,
  ]);

describe('what is told of many pictures', () => {
  it('is of all, or of the same ones together, the widest first', () => {
    const all = [
      told('a', 'All.', 'JPEG.', 'Turned.', 'Own.'),
      told('b', 'All.', 'JPEG.', 'Turned.'),
      told('c', 'All.', 'JPEG.', 'Turned.'),
      told('d', 'All.', 'Four.', 'Rare.'),
      told('e', 'All.', 'Four.', 'Rare.'),
      told('f', 'All.', 'Four.'),
      told('g', 'All.', 'Four.'),
    ];
    assert.deepEqual(shown(all), [
      ['All.', 'abcdefg', null],
      ['Four.', 'defg', 1],
      ['JPEG. Turned.', 'abc', 2],
    ]);
  });

  it('is of two where these are all', () => {
    assert.deepEqual(shown([told('a', 'Said.'), told('b', 'Said.', 'Own.')]), [['Said.', 'ab', null]]);
    assert.deepEqual(shown([told('a', 'Said.'), told('b', 'Said.'), told('c')]), []);
  });

  it('is nothing where there is one picture, or none', () => {
    assert.deepEqual(shown([told('a', 'Said.')]), []);
    assert.deepEqual(shown([]), []);
  });
});
