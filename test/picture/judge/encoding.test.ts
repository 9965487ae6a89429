import assert from 'node:assert/strict';
import type { ChromaJudgement } from '../../../src/picture/judge/chroma';
import { encodingOf } from '../../../src/picture/judge/encoding';
import type { ChromaFacts, Space } from '../../../src/shared/picture';
import { labPicture } from './cells';

type Change = Partial<Omit<ChromaJudgement, 'facts'>> & { facts?: Partial<ChromaFacts> };

const judgement = (change: Change = {}): ChromaJudgement => ({
  tone: 0,
  strong: 0,
  clear: 0,
  limit: 2,
  smooth: 0,
  strays: null,
  pixelResidual: 0,
  ...change,
  facts: {
    max: 0,
    mean: 0,
    share: 0,
    hue: null,
    zones: [],
    places: [],
    maxBlock: 0,
    maxPixel: 0,
    ...change.facts,
  },
});

function encoding(
  space: Space,
  { bits = 8, spread = 255, levels = [] as number[][] } = {},
  chroma: ChromaJudgement = judgement(),
) {
  const { tally } = labPicture(1, 1, () => [0, 0, 0]);
  const named = levels.map(([min, max]) => ({ min, max, mean: (min + max) / 2 }));
  return encodingOf(space, bits, 255, { ...tally, spread, levels: named }, chroma);
}

describe('the encoding', () => {
  it('of one channel is by its bits', () => {
    assert.equal(encoding('grey', { bits: 1 }), 'bilevel');
    assert.equal(encoding('grey', { bits: 16 }), 'single-channel');
  });

  it('of RGB is neutral where channels differ by no more than 1/255, whatever their colour', () => {
    const coloured = judgement({ strong: 1, facts: { mean: 30, maxBlock: 40 } });
    assert.equal(encoding('rgb', { spread: 1 }, coloured), 'rgb-neutral');
    assert.notEqual(encoding('rgb', { spread: 1.01 }, coloured), 'rgb-neutral');
  });

  it('is colour where single pixels are, even if blocks average to one tone', () => {
    const confetti = judgement({ tone: 5, pixelResidual: 30, facts: { mean: 40, maxBlock: 3 } });
    assert.equal(encoding('rgb', {}, confetti), 'colour');
    const scan = judgement({ tone: 0.2, pixelResidual: 4, facts: { mean: 4, maxBlock: 1 } });
    assert.equal(encoding('rgb', {}, scan), 'rgb-residual');
  });

  it('is toned where a tone reaches 1 and nothing strays from it', () => {
    assert.equal(encoding('rgb', {}, judgement({ tone: 1, facts: { maxBlock: 2, mean: 0.8 } })), 'rgb-toned');
    assert.equal(
      encoding('rgb', {}, judgement({ tone: 0.9, facts: { maxBlock: 1, mean: 0.8 } })),
      'rgb-residual',
    );
    assert.equal(
      encoding('rgb', {}, judgement({ tone: 1.5, facts: { maxBlock: 4, mean: 0.8 } })),
      'rgb-residual',
    );
  });

  it('stays toned where a codec smears a strong tone along edges, not where smooth areas stray', () => {
    const smeared = { tone: 25, facts: { maxBlock: 6, mean: 6, share: 0.01 } };
    assert.equal(encoding('rgb', {}, judgement(smeared)), 'rgb-toned');
    assert.equal(encoding('rgb', {}, judgement({ ...smeared, smooth: 0.02 })), 'rgb-residual');
    const marked = { ...smeared.facts, maxBlock: 30 };
    assert.equal(encoding('rgb', {}, judgement({ ...smeared, facts: marked })), 'rgb-residual');
  });

  it('is colour by an area of strong or of clear colour', () => {
    assert.equal(encoding('rgb', {}, judgement({ strong: 0.005 })), 'colour');
    assert.equal(encoding('rgb', {}, judgement({ clear: 0.04 })), 'colour');
    assert.equal(encoding('rgb', {}, judgement({ strong: 0.004, clear: 0.03 })), 'rgb-residual');
    assert.equal(encoding('rgb', {}, judgement({ tone: 80, facts: { mean: 73 } })), 'colour');
    assert.equal(encoding('rgb', {}, judgement({ tone: 80, facts: { mean: 69 } })), 'rgb-toned');
  });

  it('is colour where one strong hue all over is no tone, but a toned picture with one mark is not', () => {
    const mist = { tone: 30, smooth: 0.02, facts: { mean: 20, maxBlock: 8, share: 0.02 } };
    assert.equal(encoding('rgb', {}, judgement(mist)), 'colour');
    const marked = { ...mist.facts, maxBlock: 40, share: 0.0002 };
    assert.equal(encoding('rgb', {}, judgement({ ...mist, facts: marked })), 'rgb-residual');
  });

  it('of inks is by those that are used, once it is no colour', () => {
    const [none, trace, full] = [
      [0, 0],
      [0, 2],
      [0, 255],
    ];
    assert.equal(encoding('cmyk', { levels: [none, trace, none, full] }), 'black-only');
    assert.equal(encoding('cmyk', { levels: [full, full, full, trace] }), 'three-ink');
    assert.equal(encoding('cmyk', { levels: [none, [0, 3], none, full] }), 'four-channel');
    assert.equal(
      encoding('cmyk', { levels: [full, full, full, full] }, judgement({ strong: 0.1 })),
      'colour',
    );
    // the tone of equal inks is brown, and no colour
    assert.equal(
      encoding('cmyk', { levels: [full, full, full, none] }, judgement({ tone: 7, facts: { mean: 5 } })),
      'three-ink',
    );
  });

  it('of Lab is neutral where a* and b* are', () => {
    assert.equal(
      encoding('lab', {
        levels: [
          [0, 100],
          [-1, 1],
          [0, 0.5],
        ],
      }),
      'lab-neutral',
    );
    assert.equal(
      encoding('lab', {
        levels: [
          [0, 100],
          [-3, 1],
          [0, 0.5],
        ],
      }),
      'rgb-residual',
    );
  });
});
