import assert from 'node:assert/strict';
import { judged } from './support/judged';
import { picture, pictures } from './support/pictures';

describe('quietness', () => {
  it('sixty photographs alike on silver halide: nothing but one note about the process', () => {
    const { named, book } = judged(pictures(60, 'rgb-neutral'));
    assert.deepEqual(named, []);
    assert.deepEqual(
      book.map(f => [f.rule, f.severity]),
      [['likely-tint', 'note']],
    );
  });

  it('thirty-nine of them and one of black ink alone: that one is named, nothing else', () => {
    const { named, book } = judged([
      ...pictures(39, 'rgb-neutral'),
      picture('black-only', { path: 'odd.tif' }),
    ]);
    assert.deepEqual(named, ['odd.tif']);
    assert.deepEqual(
      book.map(f => f.severity),
      ['note'],
    );
  });

  it('coloured pictures of which nobody said what they are: listed by the report, not judged', () => {
    const { named, book } = judged(pictures(5, 'colour'));
    assert.deepEqual([named, book], [[], []]);
  });

  it('the same book twice: the same findings', () => {
    const book = [
      ...pictures(5, 'rgb-neutral'),
      ...pictures(2, 'black-only'),
      ...pictures(4, 'single-channel'),
    ];
    assert.deepEqual(judged(book), judged(book));
  });
});
