import assert from 'node:assert/strict';
import { element, Text } from '../../../src/report/junit/xml';

describe('XML', () => {
  it('escapes what means something, in attributes and in text', () => {
    assert.equal(
      element('a', { b: '<"&\'>' }, new Text(['<&>'])),
      '<a b="&lt;&quot;&amp;\'&gt;">&lt;&amp;&gt;</a>',
    );
  });

  it('writes out what XML 1.0 cannot hold, and breaks in names', () => {
    assert.equal(element('a', { b: '\u0000\n\t\ufffe\ud800é' }), '<a b="\\u{0}\\u{a}\\u{9}\ufffd\ufffdé"/>');
  });

  it('keeps the lines of a text, and puts elements on lines of their own', () => {
    const inner = element('b', {}, new Text(['1', '2']));
    assert.equal(element('a', {}, [inner]), '<a>\n<b>1\n2</b>\n</a>');
  });
});
