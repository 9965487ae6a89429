import assert from 'node:assert/strict';
import { bookCommands } from '../../../src/report/github';
import { AWKWARD } from '../awkward';
import { finding, picture, report } from '../text/support';
import { readCommand } from './support';

const notes = (count: number) => Array.from({ length: count }, (_, i) => finding('clipped', 'note', `n${i}`));

describe('a report as workflow commands', () => {
  it('tells all findings, worst first, on their files, then the verdict and a count', () => {
    const book = report(
      [picture(AWKWARD, [finding('untagged', 'note', '5 %'), finding('ink-total', 'error', 'Too much.')])],
      { findings: [finding('mixed-encodings', 'warning', 'All.')] },
    );
    const lines = bookCommands(book, { folder: 'b/', settings: 'b/evengrey.json' }).trimEnd().split('\n');
    const read = lines.slice(0, 3).map(readCommand);
    assert.deepEqual(
      read.map(({ name, properties }) => [name, properties]),
      [
        ['error', { file: `b/${AWKWARD}`, line: '1', title: 'ink-total' }],
        ['warning', { file: 'b/evengrey.json', line: '1', title: 'mixed-encodings' }],
        ['notice', { file: `b/${AWKWARD}`, line: '1', title: 'untagged' }],
      ],
    );
    assert.match(read[0].data, /^a\/50% of: .*\\u\{d\}\\u\{a\} 丹=\.tif: Too much\.$/, 'readable in the log');
    assert.deepEqual(lines.slice(3), [
      '1 of 1 picture wants attention before this book is ordered.',
      '1 picture: 1 error, 1 warning, 1 note.',
    ]);
  });

  it('names the pictures that a finding about the book asks to be changed', () => {
    const all = { ...finding('mixed-encodings', 'warning', 'Mixed.'), data: { convert: ['a.tif', 'c.tif'] } };
    const book = report(
      ['a.tif', 'b.tif', 'c.tif'].map(name => picture(name)),
      { findings: [all] },
    );
    assert.match(
      bookCommands(book, { folder: '', settings: null }),
      /^::warning title=mixed-encodings::Mixed\. This asks for 2 pictures: a\.tif and c\.tif\.\n2 of 3 pictures/,
    );
  });

  it('says where it stands why nothing was checked, and passes no verdict then', () => {
    const troubles = [{ message: 'No: 5 %.', at: { file: 'b/e,1.json', line: 3, column: 7 } }];
    const lines = bookCommands(report([]), { folder: 'b/', settings: null }, { troubles }).split('\n');
    assert.deepEqual(readCommand(lines[0]), {
      name: 'error',
      properties: { file: 'b/e,1.json', line: '3', title: 'Evengrey' },
      data: 'No: 5 %.',
    });
    assert.deepEqual(lines.slice(1), ['Nothing was checked.', '']);
  });

  it('counts lines of the settings that say something in vain, as a warning does', () => {
    const slip = { file: 'evengrey.json', line: 2, column: 3, length: 1, message: 'It names nothing.' };
    const lines = bookCommands(report([picture('a.tif')], { slips: [slip] }), { folder: '', settings: null });
    assert.match(
      lines,
      /0 warnings, 0 notes\. Besides, 1 line of the settings says something in vain, and counts as a/,
    );
  });

  it('points nowhere for a book without settings', () => {
    const book = report([], { findings: [finding('x', 'note', 'All.')] });
    assert.match(bookCommands(book, { folder: '', settings: null }), /^::notice title=x::All\.\n/);
  });

  it('tells what is waived beside its picture, as a notice, where it is asked for', () => {
    const waived = { ...finding('clipped', 'error', 'Cut off.'), reason: 'Meant: 5 %.' };
    const book = report([{ ...picture('p/a,1.tif'), waived: [waived] }], {
      waived: [{ ...finding('untagged', 'warning', 'All.'), reason: '' }],
    });
    const place = { folder: 'b/', settings: 'b/evengrey.json' };
    const lines = bookCommands(book, place, { showWaived: true }).split('\n').slice(0, 2).map(readCommand);
    assert.deepEqual(lines, [
      {
        name: 'notice',
        properties: { file: 'b/p/a,1.tif', line: '1', title: 'clipped' },
        data: 'p/a,1.tif: Waived error (Meant: 5 %.): Cut off.',
      },
      {
        name: 'notice',
        properties: { file: 'b/evengrey.json', line: '1', title: 'untagged' },
        data: 'Waived warning: All.',
      },
    ]);
    assert.doesNotMatch(bookCommands(book, place), /Waived/);
  });

  it('says that not all are shown beside the files where there are more than ten of a severity', () => {
    const of = (count: number) =>
      bookCommands(report([picture('a.tif', notes(count))]), { folder: '', settings: null });
    assert.match(of(11), /this log has all of them\.\n$/);
    assert.equal(of(11).match(/^::notice /gm)!.length, 11);
    assert.match(of(10), /10 notes\.\n$/);
  });
});
