import assert from 'node:assert/strict';
import { untagged } from '../../../src/picture/meaning/untagged';
import type { Header } from '../../../src/picture/types';

function read(header: Pick<Header, 'space' | 'gamma'>, values: number[]): number[] {
  const lab = new Float32Array(3);
  untagged(header).meaning.lab(Float32Array.from(values), 1, lab);
  return [...lab].map(v => Math.round(v * 100) / 100 + 0);
}

describe('numbers that no profile explains', () => {
  // sRGB (IEC 61966-2-1): 119 is L* 50.03, 128 is L* 53.59
  it('are sRGB where there are three', () =>
    assert.deepEqual(read({ space: 'rgb' }, [128, 128, 128]), [53.59, 0, 0]));
  it('have the tone curve of sRGB where there is one', () =>
    assert.deepEqual(read({ space: 'grey' }, [119]), [50.03, 0, 0]));
  it('are Lab where they are Lab', () =>
    assert.deepEqual(read({ space: 'lab' }, [50, -20, 30]), [50, -20, 30]));

  it('follow an exponent that the file states, but not the usual one, which stands for sRGB', () => {
    // 0.5^1.8 = 0.2872, L* 60.53
    assert.deepEqual(read({ space: 'grey', gamma: 1 / 1.8 }, [127.5]), [60.53, 0, 0]);
    assert.deepEqual(read({ space: 'grey', gamma: 0.45455 }, [119]), [50.03, 0, 0]);
    assert.match(untagged({ space: 'grey', gamma: 1 / 1.8 }).assumed!, /exponent 1\.8/);
  });

  it('say what was assumed', () => {
    assert.match(untagged({ space: 'rgb' }).assumed!, /sRGB/);
    assert.match(untagged({ space: 'grey' }).assumed!, /tone curve of sRGB/);
    assert.match(untagged({ space: 'cmyk' }).assumed!, /TR 006/);
    assert.equal(untagged({ space: 'lab' }).assumed, null);
  });
});
