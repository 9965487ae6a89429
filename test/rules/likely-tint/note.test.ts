import assert from 'node:assert/strict';
import { forecastPicture } from '../../../src/print';
import type { BookPicture, Finding } from '../../../src/shared/finding';
import { judged } from '../support/judged';
import { type PictureOptions, picture, pictures, record, target } from '../support/pictures';

const house = [target('silver-halide', { printRecord: record('silver-halide', 14) })];
const notes = (...book: BookPicture[]): Finding[] =>
  judged(book, 'likely-tint').book.filter(({ severity }) => severity === 'note');
const inks = (d: number) => [0.9 * d, 0.8 * d, 0.75 * d, 0.5 * d];
const toned = (options: PictureOptions = {}) =>
  picture('rgb-toned', { tone: [0, 1.2], targets: house, intent: 'toned', intentStated: true, ...options });
const remedied = (counter: boolean) => ({
  facts: {
    remedied: {
      from: '0'.repeat(64),
      to: 'rgb-toned' as const,
      toned: true,
      ...(counter && { counter: true as const }),
      fitted: false,
    },
  },
});

describe('what the process does, where prints of the house were read', () => {
  it('is told apart from what is known by the process in general only, each with its own direction', () => {
    const toner = [target('liquid-toner', { printRecord: record('liquid-toner') })];
    const book = [
      ...pictures(4, 'rgb-neutral', { targets: toner }),
      picture('four-channel', { targets: toner, inks }),
    ];
    const generic = book[4].forecasts[0];
    assert.notEqual(generic.condition.basis, 'record');
    assert.ok(generic.tint.seen > 0.2 && generic.tint.direction !== 'bluish', 'else nothing would differ');
    const found = notes(...book);
    assert.equal(found.length, 2);
    const [read, unread] = [true, false].map(
      isRead => found.find(({ data }) => (data.basis === 'record') === isRead)!,
    );
    assert.match(
      read.message,
      /^By the forecast 4 of 5 grey pictures \(rgb-neutral\) come back .* nearly every order; .*it leans bluish/,
    );
    assert.match(unread.message, /^By the forecast 1 of 5 grey pictures \(four-channel\) comes back/);
    assert.doesNotMatch(unread.message, /bluish|differs from picture to picture/);
    assert.match(
      unread.message,
      /what another encoding would change is not known, since of this house only prints of rgb-neutral were read/,
    );
  });
  it('says that another encoding would not change it where one machine prints both, and else that nobody knows', () => {
    assert.match(
      notes(...pictures(2, 'rgb-neutral', { targets: house }))[0].message,
      /would not change that much/,
    );
    const toner = [target('liquid-toner', { printRecord: record('liquid-toner') })];
    const found = judged(
      [...pictures(5, 'rgb-neutral', { targets: toner }), picture('single-channel', { targets: toner })],
      'likely-tint',
    );
    assert.deepEqual(found.named, []);
    assert.equal(found.book.length, 1, 'the generic chance of one grey channel is small');
    assert.match(
      found.book[0].message,
      /is not known, since of this house only prints of rgb-neutral were read/,
    );
    assert.doesNotMatch(found.book[0].message, /as single-channel/);
  });
});

describe('what the process does to pictures with a tone', () => {
  it('is told of those that were counter-tinted, and what that cannot answer', () => {
    const book = Array.from({ length: 5 }, () => toned(remedied(true)));
    assert.ok(book[0].forecasts[0].tint.seen > 0.2, 'else there is nothing to tell');
    const [note, ...others] = notes(...book);
    assert.deepEqual(others, []);
    assert.match(
      note.message,
      /^By the forecast 5 counter-tinted pictures come back from silver halide with a visible tint .*, counter-tint and all: it answers the mean/,
    );
    assert.equal((note.data.counted as string[]).length, 5);
  });
  it('counts them among the greys', () => {
    const [one] = notes(
      picture('rgb-neutral', { targets: house }),
      ...Array.from({ length: 7 }, () => toned(remedied(true))),
    );
    assert.match(one.message, /^By the forecast 1 of 8 grey pictures comes back/);
    const [alone] = notes(picture('rgb-neutral', { targets: house }));
    assert.match(alone.message, /^By the forecast all greys come back/);
  });
  it('is not told of a tone that is meant', () => {
    assert.deepEqual(notes(toned(), toned(remedied(false)), toned({ tone: [4, 12] })), []);
    const [{ message }] = notes(picture('rgb-neutral', { targets: house }), toned(remedied(false)));
    assert.match(message, /all greys/, 'it is none of the greys');
  });
});

describe('what the process does under another light', () => {
  it('is told beside what it does in daylight, so that each has its own part', () => {
    const lamp = target('silver-halide', { light: 'FL11' });
    const book = pictures(3, 'rgb-neutral', { targets: [lamp] });
    const [{ message }] = notes(...book);
    const day = forecastPicture(book[0].facts, { ...lamp, light: 'D50' })!.tint.seen;
    assert.ok(book[0].forecasts[0].tint.seen - day > 0.2, 'else the light would change nothing');
    assert.match(
      message,
      new RegExp(` as seen under FL11 \\(in daylight in about ${Math.round(day * 10)} orders of 10\\); `),
    );
    assert.doesNotMatch(notes(...pictures(3, 'rgb-neutral'))[0].message, /daylight/);
  });
});
