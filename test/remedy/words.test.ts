import assert from 'node:assert/strict';
import { offWords, parametersOf } from '../../src/remedy/words';
import { wishFor } from './support';

describe('a tone that is off', () => {
  it('is told with the way out, but of JPEG, which rounds anyway', () => {
    assert.deepEqual(offWords(0.49, { bits: 8 }, 'tiff'), []);
    assert.match(offWords(1.73, { bits: 8 }, 'tiff').join(), /up to L\* 1\.7.*--bits 16/);
    assert.match(offWords(1.73, { bits: 16 }, 'png').join(), /another profile/);
    assert.deepEqual(offWords(1.73, { bits: 8 }, 'jpeg'), []);
  });
});

describe('the record of what was done', () => {
  it('names everything that a person would need to do it again', () => {
    assert.equal(parametersOf(wishFor(), 8, null), 'R = G = B, 8 bits; grey by CIELAB lightness');
    const curve = Array.from({ length: 101 }, (_, L) => L);
    assert.equal(
      parametersOf(
        wishFor({
          to: 'rgb-toned',
          tone: { kind: 'stated', a: 1, b: -2.5 },
          curve,
          grey: { kind: 'mix', red: 0.8, green: 0.3, blue: -0.1 },
        }),
        16,
        'black point scaled from L* 0 to L* 1',
      ),
      'RGB with a tone, 16 bits; grey by weights of the linear channels: 0.8 red, 0.3 green, -0.1 blue; stated tone a* 1, b* -2.5; tones fitted by a curve; black point scaled from L* 0 to L* 1',
    );
    assert.match(
      parametersOf(wishFor({ below: 4 }), 8, 'black point kept'),
      /colour below a chroma of 4 removed; black point kept$/,
    );
    assert.match(
      parametersOf(wishFor({ grey: { kind: 'luma' }, to: 'rgb-toned', tone: { kind: 'even' } }), 8, null),
      /by luma, the weights of ITU-R BT.709 on the stored values.*one tone, the picture's mean/,
    );
  });
});
