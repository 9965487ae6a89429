import assert from 'node:assert/strict';
import { judged } from '../support/judged';
import { picture, unreadable } from '../support/pictures';

describe('unreadable', () => {
  describe('passes', () => {
    it('a picture that was read', () =>
      assert.deepEqual(judged([picture('rgb-neutral')], 'unreadable').named, []));
    it('a large-file pointer, which is another rule', () =>
      assert.deepEqual(judged([unreadable('not-fetched', 'Fetch it.')], 'unreadable').named, []));
  });
  describe('fails', () => {
    for (const intent of ['grey', 'toned', 'colour', 'line'] as const)
      it(`a picture meant as ${intent} that could not be read, with the reader's reason`, () => {
        const text = 'The file ends in the middle of the picture. Export it again.';
        const [[finding]] = judged([unreadable('truncated', text, { intent })]).pictures;
        assert.equal(finding.severity, 'error');
        assert.ok(finding.message.endsWith(text));
        assert.deepEqual(finding.data, { reason: 'truncated' });
      });
  });
});
