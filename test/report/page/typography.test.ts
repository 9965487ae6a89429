import assert from 'node:assert/strict';
import fs from 'node:fs';
import { printed } from '../../../src/report/page/typography';

describe('a message as a page prints it', () => {
  // common typesetting practice, no source
  it('has a sign for "by" between numbers alone', () => {
    assert.equal(printed('Place it at 40 x 48 mm.'), 'Place it at 40 × 48 mm.');
    assert.equal(printed('plan x 2.tif'), 'plan x 2.tif');
  });

  it('has the quotes that every other place of the tool has', () => {
    const text = `List it under "toned" in the settings' "intent": the house's own.`;
    assert.equal(printed(text), text);
  });

  it('needs no more than one kind of quotes, since the whole tool writes plain ones', () => {
    const sources = fs
      .readdirSync('src', { recursive: true, encoding: 'utf8' })
      .flatMap(name => (/\.(ts|md)$/.test(name) ? `src/${name}` : []));
    assert.ok(sources.includes('src/report/page/typography.ts'));
    const curly = [...sources, 'package.nls.json'].filter(file =>
      /[\u2018\u2019\u201c\u201d]/.test(fs.readFileSync(file, 'utf8')),
    );
    assert.deepEqual(curly, []);
  });
});
