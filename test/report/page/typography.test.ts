import assert from 'node:assert/strict';
import { printed } from '../../../src/report/page/typography';

// common typesetting practice, no source
describe('a message as a page prints it', () => {
  it('has curly quotes, apostrophes and a sign for "by"', () => {
    assert.equal(
      printed(`List it under "toned" in the settings' "intent": the house's 40 x 48 pixels.`),
      'List it under “toned” in the settings’ “intent”: the house’s 40 × 48 pixels.',
    );
  });

  it('leaves a lone quote and the names of files as they are', () => {
    for (const text of ['12" wide', `plates/o'neil.tif`, 'plan x 2.tif']) assert.equal(printed(text), text);
  });
});
