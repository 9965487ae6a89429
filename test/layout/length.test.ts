import assert from 'node:assert/strict';
import { lengthOf, units } from '../../src/layout/length';

describe('a length', () => {
  it('is mm in every unit', () => {
    const near = (text: string, known: Record<string, number>, mm: number) =>
      assert.ok(Math.abs(lengthOf(text, known)! - mm) < 1e-9, text);
    for (const [text, mm] of [
      ['12mm', 12],
      ['1.5 cm', 15],
      ['.5in', 12.7],
      ['72pt', 25.4],
      ['96PX', 25.4],
    ] as const)
      near(text, units.web, mm);
    near('72.27pt', units.tex, 25.4);
    near('72bp', units.tex, 25.4);
    near('72pt', units.typst, 25.4);
  });

  it('is a share where the whole is known, a bare number where its unit is', () => {
    assert.equal(lengthOf('50%', units.web, { whole: 120 }), 60);
    assert.equal(lengthOf('50%', units.web), undefined);
    assert.equal(lengthOf('96', units.web, { bare: 'px' }), 25.4);
    assert.equal(lengthOf('96', units.web), undefined);
  });

  it('is unknown where nobody can tell', () => {
    for (const text of ['auto', '10em', '-5mm', '0mm', '', '10 mm wide', 'mm', '1e3mm', '10constructor'])
      assert.equal(lengthOf(text, units.web), undefined, text);
  });
});
