import assert from 'node:assert/strict';
import { contentOf, figuresOf, keyOf, waiverOf } from '../../../src/book/waivers/key';
import type { Finding, PictureReport } from '../../../src/shared/finding';

const finding = (data: Finding['data'], rule = 'x'): Finding => ({
  rule,
  severity: 'warning',
  message: 'It is so.',
  data,
});
const picture = (path: string, sha256: string, page = 1) =>
  ({ path, facts: { sha256, page }, findings: [] }) as unknown as PictureReport;
const book = { pictures: [picture('a.tif', 'aa'), picture('b.tif', 'bb'), picture('c.tif', '')] };

describe('what a waiver is known by', () => {
  it('is what the finding says in figures, to the digits that a decision rests on, and nothing of other pictures', () => {
    assert.deepEqual(
      figuresOf(
        finding({
          share: 0.123456,
          most: 3,
          all: 4,
          best: ['rgb-neutral'],
          target: 'book',
          size: { b: -0.0449, a: 1 },
          pictures: ['a.tif'],
        }),
      ),
      { best: ['rgb-neutral'], share: 0.12, size: { a: 1, b: -0.045 }, target: 'book' },
    );
    assert.deepEqual(figuresOf(finding({ zero: -0, none: Number.NaN })), { zero: 0, none: null });
  });

  it('is the picture’s own content, or that of every picture that a finding about the book names', () => {
    assert.deepEqual(contentOf(finding({}), book.pictures[0], book), ['aa']);
    assert.deepEqual(
      contentOf(finding({ groups: [{ pictures: ['b.tif'] }, { pictures: ['a.tif'] }] }), null, book),
      ['aa', 'bb'],
    );
    assert.deepEqual(contentOf(finding({ pictures: 7 }), null, book), [], 'a number is a count');
  });

  it('is the contents of both where it is of two, whichever has it and whatever they are called', () => {
    const near = (beside: string, a: number) => finding({ beside, size: 3, difference: { a, b: 1 } });
    const [one, other] = book.pictures;
    const waiver = waiverOf(near('b.tif', 2), one, book)!;
    assert.deepEqual([waiver.content, waiver.other], [['aa', 'bb'], 'b.tif']);
    assert.equal(keyOf(waiverOf(near('a.tif', -2), other, book)!), keyOf(waiver));
    assert.equal(waiverOf(near('c.tif', 2), one, book), null, 'not read');
  });

  it('is nothing where a picture was not read', () => {
    assert.equal(waiverOf(finding({}), book.pictures[2], book), null);
    assert.equal(waiverOf(finding({ convert: ['a.tif', 'c.tif'] }), null, book), null);
  });

  it('is the same wherever the picture lies, and another for another page, value, content or rule', () => {
    const key = (of: Finding, where: PictureReport) => keyOf(waiverOf(of, where, book)!);
    const own = key(finding({ share: 0.123 }), picture('a.tif', 'aa'));
    assert.equal(key(finding({ share: 0.1234 }), picture('moved.tif', 'aa')), own);
    for (const other of [
      key(finding({ share: 0.2 }), picture('a.tif', 'aa')),
      key(finding({ share: 0.123 }), picture('a.tif', 'ab')),
      key(finding({ share: 0.123 }), picture('a.tif', 'aa', 2)),
      key(finding({ share: 0.123 }, 'y'), picture('a.tif', 'aa')),
    ])
      assert.notEqual(other, own);
  });
});
