import assert from 'node:assert/strict';
import { matcherOf } from '../../../src/book/comparison/match';
import type { Finding } from '../../../src/shared/finding';
import { picture, pictures, target } from '../../rules/support/pictures';

const targets = [target('offset-coated', { route: 'separated' })];
const neutral = pictures(5, 'rgb-neutral', { targets });
const mixed: Finding = { rule: 'mixed-encodings', severity: 'warning', message: '', data: {} };

describe('whether a picture matches its book', () => {
  it('matches where no rule denies it, and is told how far it prints from the others', () => {
    const match = matcherOf(neutral);
    const [same] = match(picture('rgb-neutral', { targets }), []);
    assert.deepEqual([same.target, same.verdict, same.rules], [targets[0].name, 'matches', []]);
    assert.ok(same.distance! < 0.01 && same.probability! < 0.01);
  });

  it('blames no sound picture for the odd ones among the others, however few of them did not change', () => {
    const toned = pictures(3, 'rgb-toned', { targets, tone: [4, 8] });
    const book = [...neutral, ...toned];
    const match = matcherOf(book);
    for (const sound of neutral) {
      const [{ verdict, distance }] = match(sound, []);
      assert.equal(verdict, 'matches');
      assert.ok(distance! < 0.01, `${distance} away`);
    }
    const [odd] = match(toned[0], [mixed]);
    assert.deepEqual([odd.verdict, odd.rules], ['differs', ['mixed-encodings']]);
    assert.ok(odd.distance! > 4 && odd.probability! > 0.9, 'from the many, not from those like it');
  });

  it('leaves open what is likely to be seen and what no rule speaks of', () => {
    const few = [
      picture('rgb-toned', { targets, tone: [4, 8] }),
      picture('rgb-toned', { targets, tone: [-4, -8] }),
    ];
    const [open] = matcherOf(few)(few[0], []);
    assert.equal(open.verdict, 'unknown');
    assert.ok(open.distance! > 4 && open.probability! > 0.9);
  });

  it('goes by the others of its part and intent alone', () => {
    const one = picture('rgb-neutral', { targets });
    const cover = pictures(9, 'rgb-toned', { targets, tone: [4, 8], part: 'cover' });
    assert.equal(matcherOf([one, ...cover])(one, [])[0].verdict, 'alone');
    assert.equal(matcherOf([one, ...cover, ...neutral])(one, [])[0].verdict, 'matches');
  });

  it('is denied by a rule that compares, whatever the forecast', () => {
    const match = matcherOf(neutral);
    const one = picture('rgb-neutral', { targets });
    assert.deepEqual(
      [match(one, [mixed])[0].verdict, match(one, [mixed])[0].rules],
      ['differs', ['mixed-encodings']],
    );
    assert.equal(match(one, [{ ...mixed, severity: 'note' }])[0].verdict, 'matches');
    assert.equal(match(one, [{ ...mixed, data: { target: 'elsewhere' } }])[0].verdict, 'matches');
  });

  it('is not denied to what is printed twice, whatever the settings make of that', () => {
    const twice: Finding = { ...mixed, rule: 'same-picture', data: { same: 'other.tif' } };
    assert.equal(matcherOf(neutral)(picture('rgb-neutral', { targets }), [twice])[0].verdict, 'matches');
  });

  it('has no fault of its own where a rule asks the others to be stored as it is', () => {
    const odd = picture('single-channel', { targets });
    const book = [...pictures(2, 'rgb-neutral', { targets }), ...pictures(2, 'single-channel', { targets })];
    const [kept] = book;
    const split: Finding = {
      ...mixed,
      data: { convert: [odd.path], groups: [{ pictures: [kept.path] }, { pictures: [odd.path] }] },
    };
    const match = matcherOf([...book, odd]);
    const of = (...asked: Parameters<typeof match>) => {
      const [{ verdict, rules, waived, stored }] = match(...asked);
      return { verdict, rules, waived, stored };
    };
    const ahead = { verdict: 'ahead', rules: ['mixed-encodings'], stored: undefined };
    assert.deepEqual(of(kept, [split]), { ...ahead, waived: false });
    assert.deepEqual(of(kept, [], [split]), { ...ahead, waived: true });
    assert.equal(of(odd, [split]).verdict, 'differs');
    const own = { ...mixed, rule: 'facing-difference', data: {} };
    assert.deepEqual(of(kept, [split, own]).rules, ['facing-difference'], 'its own fault goes first');
    assert.equal(of(kept, [split, own]).verdict, 'differs');
  });

  it('is stored like most where a rule asks all of these for a change, and the odd ones differ', () => {
    const odd = picture('single-channel', { targets });
    const convert = [...neutral, odd].map(({ path }) => path);
    const split: Finding = { ...mixed, data: { convert, odd: [odd.path], groups: [] } };
    const match = matcherOf([...neutral, odd]);
    const [of] = match(neutral[0], [split]);
    assert.deepEqual([of.verdict, of.rules, of.stored], ['along', ['mixed-encodings'], undefined]);
    assert.equal(match(neutral[0], [], [split])[0].waived, true);
    assert.equal(match(odd, [split])[0].verdict, 'differs');
    const own = { ...mixed, rule: 'facing-difference', data: {} };
    assert.equal(match(neutral[0], [split, own])[0].verdict, 'differs', 'its own fault goes first');
  });

  it('is not known where the others were not looked at, and not asked of what is no grey', () => {
    assert.equal(matcherOf(null)(picture('rgb-neutral', { targets }), [])[0].verdict, 'unknown');
    assert.equal(matcherOf(null)(picture('rgb-neutral', { targets: [] }), [])[0].target, null);
    assert.deepEqual(matcherOf(neutral)(picture('colour', { targets }), []), []);
    assert.deepEqual(matcherOf(neutral)(picture('bilevel', { targets, intent: 'line' }), []), []);
  });

  it('is denied to what the print house refuses, where it is stored otherwise than the others', () => {
    const refused = (data = {}): Finding => ({
      ...mixed,
      rule: 'encoding-not-accepted',
      severity: 'error',
      data,
    });
    const odd = picture('single-channel', { targets });
    const [apart] = matcherOf([...neutral, odd])(odd, [refused({ target: targets[0].name })]);
    assert.deepEqual(
      [apart.verdict, apart.rules, apart.stored],
      ['differs', ['encoding-not-accepted'], { as: 'single-channel', others: 'rgb-neutral' }],
    );
    const all = matcherOf(neutral)(neutral[0], [refused()])[0];
    assert.deepEqual([all.verdict, all.stored], ['matches', undefined], 'refused like all the others');
    assert.equal(matcherOf([...neutral, odd])(odd, [refused({ target: 'elsewhere' })])[0].verdict, 'matches');
    assert.equal(matcherOf([...neutral, odd])(odd, [], [refused()])[0].waived, true);
  });

  it('is denied by what is waived too, and says that it is', () => {
    const match = matcherOf(neutral);
    const one = picture('rgb-neutral', { targets });
    const [waived] = match(one, [], [mixed]);
    assert.deepEqual([waived.verdict, waived.rules, waived.waived], ['differs', ['mixed-encodings'], true]);
    assert.equal(match(one, [mixed], [mixed])[0].waived, false, 'as long as one stands');
    assert.equal(match(one, [])[0].waived, false);
  });
});
