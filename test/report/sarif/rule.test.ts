import assert from 'node:assert/strict';
import { descriptorOf } from '../../../src/report/sarif/rule';
import { rules } from '../../../src/rules';

describe('a rule in SARIF', () => {
  it('carries its page as help, and without marks as text', () => {
    const { help, defaultConfiguration } = descriptorOf('ink-total');
    assert.match(help.markdown, /^# ink-total\n\n.*\n\n## In print\n/);
    assert.match(help.text, /^ink-total\n\n.*\n\nIn print\n/);
    assert.equal(defaultConfiguration.level, 'warning');
  });

  it('says of every rule what it means in print, no longer than services show', () => {
    for (const { id } of rules) {
      const { text } = descriptorOf(id).fullDescription;
      assert.match(text, /^[A-Z“"][\s\S]{40,1000}[.]$/, id);
      assert.doesNotMatch(text, /What to do/, id);
    }
    assert.match(descriptorOf('profile-mismatch').fullDescription.text, /:\n\n- Inks separated/);
  });
});
