import assert from 'node:assert/strict';
import { adviceTable } from '../../src/print';
import { pressOf } from '../../src/print/press';
import { restated } from '../../src/print/restated';
import { defaultTarget } from '../../src/print/target';
import type { Target } from '../../src/shared/target';
import { judged } from './support/judged';
import { pictures } from './support/pictures';

/** What the table is computed from: greys of equal area. */
const TONES = Array.from({ length: 12 }, (_, i) => 8 + i * 7.5);

describe('a check of a book all of whose pictures are stored in one way', () => {
  for (const line of adviceTable())
    it(`says what the table says: ${line.process}, ${line.paper}, ${line.encoding}`, () => {
      const target = { ...defaultTarget(line.process), paper: line.paper } as Target;
      const greys = { zones: TONES.map(L => ({ L, weight: 1 / 12 })), histogram: null };
      const { zones } = restated(line.encoding, greys, pressOf(target));
      const facts = { zones: zones.map(zone => ({ ...zone, clusters: zone.clusters.map(whole) })) };
      const book = pictures(5, line.encoding, { targets: [target], tones: TONES, facts });
      const found = judged(book, 'likely-tint').book;
      const better = found.find(({ severity }) => severity === 'warning')?.data.better ?? null;
      assert.equal(better, line.better);
      const asks = found.some(({ data }) => typeof data.ask === 'string');
      assert.equal(line.verdict, better ? 'convert' : asks ? 'ask' : 'send');
    });
});

const whole = ({ weight, mean }: { weight: number; mean: number[] }) => ({
  ...{ weight, mean, covariance: Array(mean.length ** 2).fill(0) },
});
