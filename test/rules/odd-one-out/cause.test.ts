import assert from 'node:assert/strict';
import { causeAmong, causeOf } from '../../../src/rules/odd-one-out/cause';
import { picture, pictures } from '../support/pictures';

const sepias = pictures(3, 'rgb-toned', { tone: [2, 8] });
const cool = picture('rgb-toned', { tone: [0, -3] });
const separation = picture('three-ink');

describe('why a picture is odd', () => {
  it('among toned ones: no call for grey "as the others were"', () => {
    const told = causeOf([cool], sepias);
    assert.match(told, /^The others are toned in another way: .*tone it again .*as they are/);
    assert.doesNotMatch(told, /as the others were/);
  });
  it('among casts: grey as the others were', () =>
    assert.match(
      causeOf([cool, sepias[0]], pictures(3, 'rgb-toned', { tone: [0, 1.5] })),
      /^Their values have another colour: turn them into grey again from their originals as the others were/,
    ));
  it('of tones that are meant, and of inks', () => {
    assert.match(causeOf([{ ...cool, intent: 'toned' }], sepias), /^The tone itself differs: tone it again/);
    assert.match(causeOf([separation], [separation]), /^Its inks are mixed in another way/);
  });
  it('of pictures of which no two are alike', () => {
    assert.match(causeAmong([cool, sepias[0]]), /^Their values have different colours: turn both into grey/);
    assert.match(causeAmong([cool, ...sepias]), /turn all of them into grey/);
    assert.match(causeAmong([separation, separation]), /separate both again in one way/);
    assert.match(causeAmong([{ ...cool, intent: 'toned' }, cool]), /tone both again/);
  });
});
