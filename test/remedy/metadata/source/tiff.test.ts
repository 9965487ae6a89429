import assert from 'node:assert/strict';
import { fromTiff } from '../../../../src/remedy/metadata/source/tiff';
import { greyPage, tiffBytes, UNDEFINED } from '../../../picture/bytes';

const ascii = (text: string) => [...Buffer.from(text)];

describe('fromTiff', () => {
  it('reads what the page says, not another', () => {
    const page = (name: string) =>
      greyPage([
        [315, 2, ascii(`${name}\0`)],
        [700, 1, ascii(`<${name}/>`)],
      ]);
    const file = tiffBytes([page('first'), page('second')]);
    for (const [number, name] of [
      [1, 'first'],
      [2, 'second'],
    ] as const) {
      const { exif, xmp } = fromTiff(file, number);
      assert.equal(exif?.tree.main[0].data.toString(), `${name}\0`);
      assert.equal(xmp?.toString(), `<${name}/>`);
    }
  });

  it('tells of layers that stay behind', () => {
    const layered = fromTiff(tiffBytes([greyPage([[37724, UNDEFINED, ascii('layers')]])]), 1);
    assert.match(layered.told.join(), /layers .* left out/);
  });
});
