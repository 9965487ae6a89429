import assert from 'node:assert/strict';
import { bookCommands } from '../../src/report/github';
import { bookJunit } from '../../src/report/junit';
import { bookSarif } from '../../src/report/sarif';
import { slipsApart } from '../../src/report/slips';
import { sarifErrors } from './sarif/support';
import { report } from './text/support';

const place = { folder: 'b/', settings: 'b/evengrey.json' };
const slip = { file: 'evengrey.json', line: 12, column: 6, length: 9, message: 'A spread names "x.tif".' };
const book = report([], {
  slips: [slip],
  notices: ['1 picture is left out.', 'evengrey.json:12:6: A spread names "x.tif".'],
});

describe('a name in the settings that names nothing', () => {
  it('is told apart from the other notices, with its file as services know it', () => {
    const at = { file: 'b/evengrey.json', line: 12, column: 6 };
    assert.deepEqual(slipsApart(book, place), { slips: [{ slip, at }], notices: ['1 picture is left out.'] });
    const house = { ...slip, file: '../house.json' };
    assert.equal(slipsApart({ slips: [house], notices: [] }, place).slips[0].at, null);
  });

  it('is a warning on its line in annotations, once', () => {
    const lines = bookCommands(book, place).split('\n');
    const told = lines.filter(line => line.includes('x.tif'));
    assert.deepEqual(told, [
      '::warning file=b/evengrey.json,line=12,title=Evengrey::A spread names "x.tif".',
    ]);
    assert.ok(lines.includes('::notice title=Evengrey::1 picture is left out.'));
  });

  it('has its location in SARIF', () => {
    const log = JSON.parse(bookSarif(book, place));
    assert.equal(sarifErrors(log), '');
    const [first, second] = log.runs[0].invocations[0].toolExecutionNotifications;
    assert.deepEqual([first.level, first.message.text], ['warning', 'A spread names "x.tif".']);
    const [{ physicalLocation }] = first.locations;
    assert.equal(physicalLocation.artifactLocation.uri, 'b/evengrey.json');
    assert.deepEqual(physicalLocation.region, { startLine: 12, startColumn: 6 });
    assert.equal(second.message.text, '1 picture is left out.');
  });

  it('has a row in JUnit, which fails where warnings do', () => {
    const row = (...failing: 'warning'[]) =>
      /<testcase [^>]*name="evengrey\.json:12:6" file="b\/evengrey\.json" line="12">\n<([\w-]+)/.exec(
        bookJunit(book, place, new Set(failing)),
      )![1];
    assert.deepEqual([row(), row('warning')], ['system-out', 'failure']);
  });
});
