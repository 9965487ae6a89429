import assert from 'node:assert/strict';
import { type By, groupsOf } from '../../../src/editor/tree/groups';
import type { BookEntry, CheckAnswer } from '../../../src/shared/checker-protocol';
import type { Severity } from '../../../src/shared/finding';
import type { ShownFinding } from '../../../src/shared/sheet';

const found = (rule: string, severity: Severity): ShownFinding & { fix: null } => ({
  rule,
  severity,
  message: `${rule}!`,
  fix: null,
});
const entry = (path: string, encoding: BookEntry['encoding'], rules: string[] = []): BookEntry => ({
  ...{ path, encoding, rules },
  page: 1,
  doing: 'send',
});

const answer: CheckAnswer = {
  entries: [
    entry('a.tif', 'rgb-neutral', ['untagged', 'clipped']),
    entry('b.tif', 'rgb-neutral', ['clipped']),
    entry('cover/c.tif', 'four-channel', ['unreadable', 'mixed-encodings']),
    { ...entry('cover/c.tif', 'four-channel', ['clipped']), page: 2 },
    entry('cover/d.tif', 'rgb-neutral'),
    entry('mo\u0308we.tif', 'bilevel'),
  ],
  pictures: [
    { path: 'a.tif', findings: [found('untagged', 'note'), found('clipped', 'warning')] },
    { path: 'b.tif', findings: [found('clipped', 'note')] },
    { path: 'cover/c.tif', findings: [found('unreadable', 'error'), found('clipped', 'note')] },
  ],
  book: [found('mixed-encodings', 'warning'), found('light-shift', 'note')].map(one => ({
    ...one,
    convert: [],
  })),
  ...{ layouts: [], unplaced: null, outdated: [], summary: null, attention: 0, settings: [], slips: [] },
  waivers: { problems: [], notices: [] },
};

const seen = (by: By, filter = '') =>
  groupsOf(answer, by, filter).map(({ id, severity, pictures }) => [
    id,
    severity,
    pictures.map(({ path }) => path).join(' '),
  ]);

describe('the pictures of a book in groups', () => {
  it('are by finding with the worst first, then the most frequent; a file of several pages is one', () =>
    assert.deepEqual(seen('finding'), [
      ['unreadable', 'error', 'cover/c.tif'],
      ['clipped', 'warning', 'a.tif b.tif cover/c.tif'],
      ['mixed-encodings', 'warning', 'cover/c.tif'],
      ['untagged', 'note', 'a.tif'],
      ['light-shift', 'note', ''],
    ]));

  it('are by encoding with the most frequent first', () =>
    assert.deepEqual(seen('encoding'), [
      ['rgb-neutral', null, 'a.tif b.tif cover/d.tif'],
      ['bilevel', null, 'mo\u0308we.tif'],
      ['four-channel', null, 'cover/c.tif'],
    ]));

  it('have with them what was found: by the rule, of the book where it asks, or all', () => {
    const leaf = (by: By, group: string, path: string) =>
      groupsOf(answer, by, '')
        .find(({ id }) => id === group)!
        .pictures.find(picture => picture.path === path)!
        .findings.map(({ message }) => message);
    assert.deepEqual(leaf('finding', 'clipped', 'a.tif'), ['clipped!']);
    assert.deepEqual(leaf('finding', 'mixed-encodings', 'cover/c.tif'), ['mixed-encodings!']);
    assert.deepEqual(leaf('encoding', 'rgb-neutral', 'a.tif'), ['untagged!', 'clipped!']);
  });

  it('are only those that have all words, in their path, encoding or findings', () => {
    assert.deepEqual(seen('encoding', 'COVER'), [
      ['four-channel', null, 'cover/c.tif'],
      ['rgb-neutral', null, 'cover/d.tif'],
    ]);
    assert.deepEqual(seen('encoding', 'cover neutral'), [['rgb-neutral', null, 'cover/d.tif']]);
    assert.deepEqual(seen('encoding', 'untagged'), [['rgb-neutral', null, 'a.tif']]);
    assert.deepEqual(seen('finding', 'light-shift'), [['light-shift', 'note', '']]);
    assert.deepEqual(seen('finding', 'nothing like it'), []);
    assert.deepEqual(
      seen('encoding', 'm\u00f6we'),
      [['bilevel', null, 'mo\u0308we.tif']],
      'in two characters',
    );
  });

  it('are shown by what is searched also where nothing was found on them, last', () => {
    assert.deepEqual(seen('finding', 'cover/d'), [['', null, 'cover/d.tif']]);
    assert.deepEqual(seen('finding', 'tif rgb').at(-1), ['', null, 'cover/d.tif']);
  });
});
