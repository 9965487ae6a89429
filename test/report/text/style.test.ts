import assert from 'node:assert/strict';
import { paintOf, safe, styleFor } from '../../../src/report/text/style';

describe('style of a text', () => {
  it('is as wide as the terminal, within what is good to read', () => {
    assert.equal(styleFor({}, false).width, 80);
    assert.equal(styleFor({ columns: 200 }, false).width, 96);
    assert.equal(styleFor({ columns: 20 }, false).width, 40);
  });
  it('paints only where colour is allowed', () => {
    assert.equal(paintOf({ width: 80, colour: false }).red('a'), 'a');
    assert.notEqual(paintOf({ width: 80, colour: true }).red('a'), 'a');
  });
  it('writes out what would steer a terminal or turn the writing round', () => {
    assert.equal(safe('a\u001b[2Jb\nc\u202egpj'), 'a\\u{1b}[2Jb\\u{a}c\\u{202e}gpj');
    assert.equal(safe('Bär 鳥.jpg'), 'Bär 鳥.jpg');
  });
});
