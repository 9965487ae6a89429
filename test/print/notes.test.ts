import assert from 'node:assert/strict';
import { defaultTarget, forecastValue } from '../../src/print';
import type { ProcessId } from '../../src/shared/target';

const grey = { space: 'grey' as const, values: [0.5] };
const ink = { space: 'cmyk' as const, values: [0, 0, 0, 0.5] };
const target = (process: ProcessId) => ({
  ...defaultTarget(process),
  separatedFor: { process: 'liquid-toner', paper: 'gloss-coated-bright' } as const,
});

describe('notes of a forecast', () => {
  it('tell what a picture is separated for', () => {
    const [note, ...others] = forecastValue(grey, target('offset-coated')).notes;
    assert.deepEqual(others, []);
    assert.match(note, /separated, that is done for liquid toner \(Gloss coated paper, brightened\)/);
  });
  it('tell where it changes nothing: inks that are kept, and processes that print R, G, B', () => {
    for (const { notes } of [
      forecastValue(ink, target('offset-coated')),
      forecastValue(grey, target('silver-halide')),
    ])
      assert.match(notes.join(), /^Nothing is separated here: .* changes nothing\.$/);
  });
  it('are none where nothing was asked for', () =>
    assert.deepEqual(forecastValue(grey, defaultTarget('offset-coated')).notes, []));
});
