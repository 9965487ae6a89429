import assert from 'node:assert/strict';
import { describeProblem, positionOf } from '../../../src/book/settings/problem';

describe('places in a text', () => {
  it('counts lines and columns from 1', () => {
    assert.deepEqual(positionOf('ab\ncd', 0), { line: 1, column: 1 });
    assert.deepEqual(positionOf('ab\ncd', 2), { line: 1, column: 3 });
    assert.deepEqual(positionOf('ab\ncd', 3), { line: 2, column: 1 });
    assert.deepEqual(positionOf('ab\r\ncd', 5), { line: 2, column: 2 });
  });
  it('writes a place as compilers do', () => {
    const problem = { offset: 0, length: 1, line: 2, column: 3, message: 'No.', suggestion: null };
    const of = (file: string, folder: string) => describeProblem({ ...problem, file }, '/books/one', folder);
    assert.equal(of('a.json', '/books/one'), 'a.json:2:3: No.');
    assert.equal(of('houses/a.json', '/books'), 'one/houses/a.json:2:3: No.');
    assert.equal(of('../strict.json', '/books/one/plates'), '../../strict.json:2:3: No.');
  });
});
