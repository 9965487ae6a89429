import assert from 'node:assert/strict';
import { bookCommands } from '../../src/report/github';
import { bookJunit } from '../../src/report/junit';
import { bookSarif } from '../../src/report/sarif';
import type { PictureReport } from '../../src/shared/finding';
import { readCommand } from './github/support';
import { sarifErrors } from './sarif/support';
import { finding, picture, report } from './text/support';

const place = { folder: 'b/', settings: 'b/evengrey.json' };
const placedAt = [
  { file: 'text/1.md', line: 13, column: 5 },
  { file: 'text/2.md', line: 2, column: 1 },
];
const lost = (placed = placedAt): PictureReport => ({
  ...picture('p/a.jpg', [finding('unreadable', 'error', 'Blank.')], {
    encoding: 'unreadable',
    unreadable: { reason: 'missing', text: 'Blank.' },
  }),
  placedAt: placed,
});
/** What is there and cannot be read is mended in its own file. */
const broken: PictureReport = {
  ...picture('p/b.jpg', [finding('unreadable', 'error', 'Cut off.')], {
    encoding: 'unreadable',
    unreadable: { reason: 'truncated', text: 'Cut off.' },
  }),
  placedAt,
};

describe('a picture that is placed and not there', () => {
  it('is told at the first line that places it, in annotations', () => {
    const where = (one: PictureReport) => {
      const { properties, data } = readCommand(bookCommands(report([one]), place).split('\n')[0]);
      return [properties.file, properties.line, data];
    };
    assert.deepEqual(where(lost()), ['b/text/1.md', '13', 'p/a.jpg: Blank.']);
    assert.deepEqual(where(lost([])), ['b/p/a.jpg', '1', 'p/a.jpg: Blank.']);
    assert.deepEqual(where(broken), ['b/p/b.jpg', '1', 'p/b.jpg: Cut off.']);
  });

  it('is told there in SARIF too, which leads on to where it would lie', () => {
    const log = JSON.parse(bookSarif(report([lost(), broken]), place));
    assert.equal(sarifErrors(log), '');
    const [first, second] = log.runs[0].results;
    const [{ physicalLocation }] = first.locations;
    assert.equal(physicalLocation.artifactLocation.uri, 'b/text/1.md');
    assert.deepEqual(physicalLocation.region, { startLine: 13, startColumn: 5 });
    assert.equal(first.relatedLocations[0].physicalLocation.artifactLocation.uri, 'b/p/a.jpg');
    assert.equal(second.locations[0].physicalLocation.artifactLocation.uri, 'b/p/b.jpg');
    assert.equal(second.relatedLocations, undefined);
  });

  it('is told there in JUnit, under its own name', () => {
    const xml = bookJunit(report([lost(), broken]), place, new Set(['error']));
    assert.match(xml, / name="p\/a\.jpg" file="b\/text\/1\.md" line="13">/);
    assert.match(xml, / name="p\/b\.jpg" file="b\/p\/b\.jpg">/);
  });
});
