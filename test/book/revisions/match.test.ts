import assert from 'node:assert/strict';
import { matcherOf } from '../../../src/book/revisions/match';
import type { Finding } from '../../../src/shared/finding';
import { picture, pictures, target } from '../../rules/support/pictures';

const targets = [target('offset-coated', { route: 'separated' })];
const neutral = pictures(5, 'rgb-neutral', { targets });
const mixed: Finding = { rule: 'mixed-encodings', severity: 'warning', message: '', data: {} };

describe('whether a picture matches its book', () => {
  it('goes by how it prints beside the middle of the others', () => {
    const match = matcherOf({ unchanged: neutral, all: neutral });
    const [same] = match(picture('rgb-neutral', { targets }), []);
    assert.deepEqual([same.target, same.verdict, same.rules], [targets[0].name, 'matches', []]);
    assert.ok(same.distance! < 0.01 && same.probability! < 0.01);
    const [toned] = match(picture('rgb-toned', { targets, tone: [4, 8] }), []);
    assert.equal(toned.verdict, 'differs');
    assert.ok(toned.distance! > 4 && toned.probability! > 0.9);
  });

  it('goes by the unchanged before the changed, and by the others of its part and intent alone', () => {
    const toned = pictures(9, 'rgb-toned', { targets, tone: [4, 8] });
    const one = picture('rgb-neutral', { targets });
    assert.equal(
      matcherOf({ unchanged: neutral, all: [...neutral, ...toned] })(one, [])[0].verdict,
      'matches',
    );
    assert.equal(matcherOf({ unchanged: [], all: [one, ...toned] })(one, [])[0].verdict, 'differs');
    const cover = pictures(9, 'rgb-toned', { targets, tone: [4, 8], part: 'cover' });
    assert.equal(matcherOf({ unchanged: cover, all: [one, ...cover] })(one, [])[0].verdict, 'alone');
  });

  it('is denied by a rule that compares, whatever the forecast', () => {
    const match = matcherOf({ unchanged: neutral, all: neutral });
    const one = picture('rgb-neutral', { targets });
    assert.deepEqual(
      [match(one, [mixed])[0].verdict, match(one, [mixed])[0].rules],
      ['differs', ['mixed-encodings']],
    );
    assert.equal(match(one, [{ ...mixed, severity: 'note' }])[0].verdict, 'matches');
    assert.equal(match(one, [{ ...mixed, data: { target: 'elsewhere' } }])[0].verdict, 'matches');
  });

  it('is not known where the others were not looked at, and not asked of what is no grey', () => {
    assert.equal(matcherOf(null)(picture('rgb-neutral', { targets }), [])[0].verdict, 'unknown');
    assert.equal(matcherOf(null)(picture('rgb-neutral', { targets: [] }), [])[0].target, null);
    assert.deepEqual(matcherOf({ unchanged: neutral, all: neutral })(picture('colour', { targets }), []), []);
    assert.deepEqual(
      matcherOf({ unchanged: neutral, all: neutral })(picture('bilevel', { targets, intent: 'line' }), []),
      [],
    );
  });

  it('is denied by what is waived too, and says that it is', () => {
    const match = matcherOf({ unchanged: neutral, all: neutral });
    const one = picture('rgb-neutral', { targets });
    const [waived] = match(one, [], [mixed]);
    assert.deepEqual([waived.verdict, waived.rules, waived.waived], ['differs', ['mixed-encodings'], true]);
    assert.equal(match(one, [mixed], [mixed])[0].waived, false, 'as long as one stands');
    assert.equal(match(one, [])[0].waived, false);
  });
});
