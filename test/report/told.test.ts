import assert from 'node:assert/strict';
import { everyFinding } from '../../src/report/told';
import { finding, picture, report } from './text/support';

describe('every finding of a report', () => {
  it('comes worst first, the book’s before a picture’s, then in the order of the pictures', () => {
    const pictures = [
      picture('a.tif', [finding('x', 'note', '1'), finding('y', 'error', '2')]),
      picture('b.tif', [finding('y', 'error', '3'), finding('z', 'warning', '4')]),
    ];
    const book = [finding('w', 'note', '5'), finding('v', 'error', '6')];
    const told = everyFinding(report(pictures, { findings: book }));
    assert.deepEqual(
      told.map(({ finding: { message }, picture }) => [message, picture?.path ?? null]),
      [
        ['6', null],
        ['2', 'a.tif'],
        ['3', 'b.tif'],
        ['4', 'b.tif'],
        ['5', null],
        ['1', 'a.tif'],
      ],
    );
  });
});
