import assert from 'node:assert/strict';
import { matcher } from '../../../src/book/discovery/globs';

describe('globs', () => {
  it('name files, folders, and a file by its own odd name', () => {
    assert.ok(matcher(['a/*.jpg'])('a/1.jpg'));
    assert.ok(!matcher(['a/*.jpg'])('a/b/1.jpg'));
    assert.ok(matcher(['a'])('a/b/1.jpg'));
    assert.ok(matcher(['./a/'])('a/b/1.jpg'));
    assert.ok(matcher(['*/b'])('a/b/1.jpg'));
    assert.ok(matcher(['.'])('a/1.jpg'));
    assert.ok(matcher(['[1] (2).jpg'])('[1] (2).jpg'));
    assert.ok(matcher(['{a,b}/**/*.{jpg,tif}'])('b/c/d.tif'));
  });
  it('match a name however its umlauts are composed', () => {
    assert.ok(matcher(['Bär/*'.normalize('NFD')])('Bär/1.jpg'.normalize('NFC')));
  });
  it('match a name that holds the end of a line', () => {
    for (const pattern of ['a/**', 'a/*.jpg', '**/*.jpg', 'a/2?3.jpg', '*'])
      assert.ok(matcher([pattern])('a/2\n3.jpg'), pattern);
    assert.ok(!matcher(['a/*.jpg'])('a/2.jpg\n3'));
  });
  it('take away again with !', () => {
    assert.ok(!matcher(['**', '!b'])('b/1.jpg'));
    assert.ok(!matcher(['!b'])('a/1.jpg'));
    assert.ok(!matcher([])('a/1.jpg'));
  });
});
