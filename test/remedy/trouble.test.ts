import assert from 'node:assert/strict';
import { troubleOf } from '../../src/remedy/trouble';

describe('why a picture was not written', () => {
  const system = (code: string) => Object.assign(new Error(code), { code });

  it('says where else the result of a conversion can go, and of an original that it cannot', () => {
    for (const code of ['EROFS', 'EACCES']) {
      assert.match(troubleOf(system(code), '/book'), /or have the results written into another folder\.$/);
      assert.doesNotMatch(troubleOf(system(code), '/book', null), /results/);
    }
  });
});
