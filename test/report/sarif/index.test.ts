import assert from 'node:assert/strict';
import fs from 'node:fs';
import { bookSarif } from '../../../src/report/sarif';
import { AWKWARD } from '../awkward';
import { finding, picture, report } from '../text/support';
import { sarifErrors } from './support';

const place = { folder: 'books/', settings: 'books/evengrey.json' };
const pictures = [
  picture(AWKWARD, [finding('untagged', 'note', 'Of {0}.'), finding('ink-total', 'error', 'Too much.')]),
  picture('b.tif', [], { encoding: 'colour' }),
];
const book = report(pictures, {
  findings: [finding('mixed-profiles', 'note', 'All.')],
  notices: ['"x" was not searched.'],
});

describe('a report as SARIF', () => {
  const text = bookSarif(book, place);
  const log = JSON.parse(text);
  const [run] = log.runs;

  it('is valid', () => {
    assert.equal(sarifErrors(log), '');
    assert.equal(sarifErrors(JSON.parse(bookSarif(report([]), { folder: '', settings: null }))), '');
    assert.notEqual(sarifErrors({ ...log, runs: [{ ...run, results: [{}] }] }), '', 'or nothing would be');
  });

  it('has a location on every result, the picture or the settings', () => {
    const uris = run.results.map(
      (result: { locations: { physicalLocation: { artifactLocation: { uri: string } } }[] }) =>
        decodeURIComponent(result.locations[0].physicalLocation.artifactLocation.uri),
    );
    assert.deepEqual(uris, [`books/${AWKWARD}`, 'books/evengrey.json', `books/${AWKWARD}`]);
  });

  it('says which version wrote it', () => {
    const { version } = JSON.parse(fs.readFileSync('package.json', 'utf8'));
    const { driver } = run.tool;
    assert.deepEqual([driver.version, driver.semanticVersion], [version, version]);
  });

  it('names rules and artifacts by their places in the lists', () => {
    for (const { ruleId, ruleIndex, locations } of run.results) {
      assert.equal(run.tool.driver.rules[ruleIndex].id, ruleId);
      const { uri, index } = locations[0].physicalLocation.artifactLocation;
      assert.equal(run.artifacts[index].location.uri, uri);
    }
  });

  it('keeps severities, data and notices, and braces from being taken for places to fill in', () => {
    assert.deepEqual(
      run.results.map((result: { level: string; message: { text: string } }) => [
        result.level,
        result.message.text,
      ]),
      [
        ['error', 'Too much.'],
        ['note', 'All.'],
        ['note', 'Of {{0}}.'],
      ],
    );
    assert.equal(run.invocations[0].toolExecutionNotifications[0].message.text, '"x" was not searched.');
  });

  it('tells waived findings last, as suppressed, by the same fingerprints', () => {
    const [first, second] = [finding('untagged', 'note', '1'), finding('untagged', 'note', '2')];
    const results = (of: ReturnType<typeof picture>) =>
      JSON.parse(bookSarif(report([of]), place)).runs[0].results;
    const standing = results(picture('a.tif', [first, second]));
    const waived = results({ ...picture('a.tif', [second]), waived: [{ ...first, reason: 'It is meant.' }] });
    const print = (result: { partialFingerprints: object }) => Object.values(result.partialFingerprints)[0];
    assert.deepEqual(waived.map(print), [print(standing[1]), print(standing[0])]);
    assert.deepEqual(
      waived.map((result: { suppressions?: object[] }) => result.suppressions),
      [undefined, [{ kind: 'external', status: 'accepted', justification: 'It is meant.' }]],
    );
  });

  it('points from a finding about the book to the pictures that it asks to be changed', () => {
    const all = { ...finding('mixed-encodings', 'warning', 'Mixed.'), data: { convert: ['a.tif', 'c.tif'] } };
    const of = report(
      ['a.tif', 'b.tif', 'c.tif'].map(name => picture(name)),
      { findings: [all] },
    );
    const log = JSON.parse(bookSarif(of, place));
    assert.equal(sarifErrors(log), '');
    const [{ message, relatedLocations }] = log.runs[0].results;
    assert.equal(message.text, 'Mixed. This asks for 2 pictures: a.tif and c.tif.');
    assert.deepEqual(
      relatedLocations.map(
        (of: { physicalLocation: { artifactLocation: { uri: string } } }) =>
          of.physicalLocation.artifactLocation.uri,
      ),
      ['books/a.tif', 'books/c.tif'],
    );
  });

  it('is of no successful run where not all was checked', () => {
    const at = { file: 'books/evengrey.json', line: 3, column: 7 };
    const log = JSON.parse(bookSarif(report([]), place, [{ message: 'Broken.', at }]));
    assert.equal(sarifErrors(log), '');
    const [{ executionSuccessful, toolExecutionNotifications }] = log.runs[0].invocations;
    const [{ level, message, locations }] = toolExecutionNotifications;
    assert.deepEqual([executionSuccessful, level, message.text], [false, 'error', 'Broken.']);
    assert.deepEqual(locations[0].physicalLocation.region, { startLine: 3, startColumn: 7 });
    assert.equal(run.invocations[0].executionSuccessful, true);
  });

  it('knows another book of the repository for another analysis', () => {
    const [other] = JSON.parse(bookSarif(book, { folder: 'other/', settings: null })).runs;
    assert.deepEqual(
      [run, other].map(r => r.automationDetails.id),
      ['evengrey/books/', 'evengrey/other/'],
    );
  });
});
