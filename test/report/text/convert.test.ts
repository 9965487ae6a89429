import assert from 'node:assert/strict';
import { convertText, undoText } from '../../../src/report/text/convert';
import type { Conversion } from '../../../src/shared/conversion';
import type { Encoding } from '../../../src/shared/picture';
import type { Moved } from '../../../src/shared/remedy';
import { fitting, noFitting, relinking, report, undone } from './conversions';

const style = { width: 60, colour: false };

describe('conversions for people', () => {
  it('say the sum first, then every picture, what is said of all once', () => {
    assert.equal(
      convertText(report, noFitting, style),
      `2 pictures converted, 1 skipped, 1 failed.

a.tif -> a.rgb-neutral.tif
  four-channel to rgb-neutral, TIFF, 8 bits. Read again:
  rgb-neutral, its lightness off by L* 0.33 at most, 0.10 on
  average.
  - Said of one.

b\\u{1b}[2J.tif, in place
  four-channel to rgb-neutral, TIFF, 8 bits. Read again:
  rgb-neutral, its lightness off by L* 0.33 at most, 0.10 on
  average.

Of all of them:
  - Said of all.

Skipped
  It is rgb-neutral already.
    c.tif

Failed
  It is cut short.
    d.tif

1 picture was left out.

The results were read again and are what was asked for.
Check the book, and have a test print made before the run.
`,
    );
  });

  it('tell in one number of digits how far lightness is off, and no nought that is none', () => {
    const off = (maxError: number, meanError: number) => {
      const [first] = report.conversions;
      const proof = { ...first.proof!, maxError, meanError };
      return /off by (.*?)\./s.exec(
        convertText({ ...report, conversions: [{ ...first, proof }] }, noFitting, {
          ...style,
          width: 500,
        }).replaceAll('0.', '0,'),
      )?.[1];
    };
    assert.equal(off(0.21, 0.095), 'L* 0,21 at most, 0,10 on average');
    assert.equal(off(0.012, 0.001), 'L* 0,01 at most, less than 0,01 on average');
    assert.equal(off(0.004, 0.001), 'less than L* 0,01');
  });

  it('do not say that a result is what was asked where its proof says otherwise', () => {
    const [first, second] = report.conversions;
    const other = { ...second, proof: { ...second.proof!, encoding: 'rgb-residual' as const } };
    const said = convertText({ ...report, conversions: [first, other] }, noFitting, { ...style, width: 200 });
    assert.match(
      said,
      /1 of them is not what was asked: rgb-residual instead of rgb-neutral\. Check the book/,
    );
    assert.doesNotMatch(said, /are what was asked for/);
  });

  it('do not say so either where tones are off by more than a rounding, and name where', () => {
    const [first, second] = report.conversions;
    const off = { ...second, output: 'b.tif', proof: { ...second.proof!, maxError: 13.96 } };
    const said = convertText({ ...report, conversions: [first, off] }, noFitting, { ...style, width: 300 });
    assert.match(
      said,
      /of the encoding that was asked for\. Tones are off .* a rounding: b\.tif by L\* 13\.96 at most\. Check/,
    );
    assert.doesNotMatch(said, /are what was asked for/);
  });

  it('say first that they are of work that was stopped', () => {
    const stopped = 'Stopped. Every picture is whole.';
    assert.match(
      convertText({ ...report, stopped }, noFitting, style),
      /^Stopped before the end: 2 pictures converted, 1 skipped, 1 failed\.\n/,
    );
    assert.match(
      undoText({ ...undone, stopped }, style),
      /^Stopped before the end\. 1 original brought back/,
    );
  });

  it('say once what many share, and refer to it', () => {
    const [first] = report.conversions;
    const told = (path: string, ...sentences: string[]) => ({
      ...first,
      path,
      output: `${path}.tif`,
      told: sentences,
    });
    const conversions = [
      ...['a', 'b', 'c'].map(path => told(path, 'Said of all.', 'Said of three.')),
      told('d', 'Said of all.', 'Said of one.'),
    ];
    const said = convertText({ ...report, conversions }, noFitting, { ...style, width: 200 });
    assert.match(said, /\na -> a\.tif\n {2}four-channel to .* on average\. \[1\]\n\nb -> /);
    assert.match(said, /\nd -> d\.tif\n {2}.* on average\.\n {2}- Said of one\.\n/);
    assert.match(
      said,
      /\n\nOf all of them:\n {2}- Said of all\.\n\nOf 3 of them \[1\]:\n {2}- Said of three\.\n\n/,
    );
    assert.equal(said.match(/Said of three/g)!.length, 1);
  });

  it('end with the pictures that are not in the folder for the results, and why', () => {
    const [first] = report.conversions;
    const colour = (path: string): Conversion => ({
      ...{ ...report.conversions[2], path },
      reason: 'It is in colour, and nobody said that it is to be grey. Name it.',
    });
    const conversions = [
      first,
      ...'defghi'.split('').map(name => colour(`${name}.jpg`)),
      report.conversions[3],
    ];
    const into = { ...report, conversions, folder: 'set' };
    const said = convertText(into, noFitting, { ...style, width: 120 });
    assert.ok(
      said.endsWith(`are what was asked for. Check the book, and have a test print made before the run.

7 pictures of the book are not in "set", which is not the whole set without them:
  d.jpg, e.jpg, f.jpg, g.jpg, h.jpg and i.jpg: It is in colour, and nobody said that it is to be grey.
  d.tif: It is cut short.
`),
      said,
    );
    const one = { ...into, conversions: [first, report.conversions[3]], dryRun: true };
    assert.match(
      convertText(one, noFitting, { ...style, width: 120 }),
      /1 picture of the book would not be in "set", which is not the whole set without it:\n {2}d\.tif: It is cut short\.\n$/,
    );
    const before = { ...colour('x.jpg'), output: 'set/x.jpg' };
    assert.doesNotMatch(
      convertText({ ...into, conversions: [first, before] }, noFitting, style),
      /whole set/,
    );
    const judged = (settings: string) => convertText(into, noFitting, { ...style, width: 400 }, settings);
    assert.match(
      judged('../book/evengrey.json'),
      /"evengrey check \S+ --settings \.\.\/book\/evengrey\.json", and have/,
    );
    assert.match(judged('my book/evengrey.json'), /--settings 'my book\/evengrey\.json'"/);
    assert.doesNotMatch(convertText({ ...into, folder: null }, noFitting, style), /whole set/);
  });

  it('take colour that was to stay for what was asked', () => {
    const [first, second] = report.conversions;
    const kept = { ...second, proof: { ...second.proof!, encoding: 'colour' as const } };
    const said = convertText({ ...report, conversions: [first, kept], below: 6 }, noFitting, {
      ...style,
      width: 200,
    });
    assert.match(
      said,
      /are what was asked for; in 1 of them colour is left, since only colour below a chroma of 6 was to go\. Check/,
    );
    assert.doesNotMatch(said, /not what was asked/);
  });

  it('do not take another loss for colour that was to stay', () => {
    const [first, second] = report.conversions;
    const found = (encoding: Encoding) => ({ ...second, proof: { ...second.proof!, encoding } });
    const conversions = [first, found('single-channel'), found('rgb-residual')];
    assert.match(
      convertText({ ...report, conversions, below: 6 }, noFitting, { ...style, width: 300 }),
      /1 of them is not what was asked: single-channel instead of rgb-neutral\. In 1 of them colour is left, since only colour below a chroma of 6 was to go\. Check/,
    );
  });

  it('say where the originals are that results took the place of, and how they come back', () => {
    const said = (more: object) =>
      convertText({ ...report, originals: '.git/evengrey/originals', ...more }, noFitting, {
        ...style,
        width: 200,
      });
    assert.match(
      said({}),
      /\nThe originals are kept in "\.git\/evengrey\/originals"\. "evengrey convert --undo" with the same names brings them back/,
    );
    assert.match(said({ dryRun: true }), /originals would be kept in/);
    assert.doesNotMatch(said({ conversions: report.conversions.slice(2) }), /originals/);
  });

  it('hold tones that were moved on purpose against the plan, and say what moved them how far', () => {
    const [first] = report.conversions;
    const said = (moved: Moved) =>
      convertText({ ...report, conversions: [{ ...first, moved }] }, noFitting, { ...style, width: 400 });
    const plain = { maxMove: 23.456, meanMove: 5.4321, method: 'darker-sky', fit: false, blackPoint: false };
    assert.match(
      said(plain),
      /off by L\* 0\.33 at most, 0\.10 on average, from what was planned\. On purpose the method darker-sky moved it by L\* 23\.46 at most, 5\.43 on average, from the picture's own\.\n/,
    );
    assert.match(
      said({ ...plain, method: '1,0,0', fit: true, blackPoint: true }),
      /On purpose the weights 1,0,0 and the curve and the scaling of the black point moved it/,
    );
  });

  it('show the curve and the tint, and what they rest on', () => {
    const text = convertText({ ...report, conversions: [] }, fitting, style);
    assert.equal(
      text,
      `0 pictures converted.

Tones fitted to book, strength 0.5
  L* in the file     0  10  100
  in the result      4  18  100
  prints as it was  31  33   95
  prints now        31  38   95
  - It rests on a guess.

A tint of a* -1.2, b* 0.5 answers that of the print and its
  paper: book, strength 0.5
  - The next order will differ.

1 picture was left out.
`,
    );
    const still = { ...fitting.fit!, moves: false };
    assert.doesNotMatch(convertText(report, { ...noFitting, fit: still }, style), /in the result/);
  });

  it('tell every line of a layout that places a result, and what was left', () => {
    const none = { ...report, conversions: [], notices: [] };
    assert.equal(
      convertText({ ...none, relinking }, noFitting, style),
      `0 pictures converted.

1 line of the layouts places the results:
  book.md:3:9: a.tif -> a.rgb-neutral.tif

evengrey.json names the results, too:
  evengrey.json:4:7: a.tif -> a.rgb-neutral.tif

Left as it is
  book.tex:7
    It cannot be named here.
  old.tex
    It is write-protected.
`,
    );
    const [place] = relinking.changes;
    const twice = { ...relinking, changes: [place, { ...place, column: 40 }, { ...place, line: 9 }] };
    assert.match(
      convertText({ ...none, relinking: twice }, noFitting, style),
      /\n2 lines of the layouts place the results, in 3 places:\n/,
    );
    const planned = { ...none, relinking, dryRun: true };
    assert.match(
      convertText(planned, noFitting, style),
      /1 line of the layouts would place the results[^?]*evengrey\.json would name the results, too/,
    );
    const back = undoText({ ...undone, undone: [], relinking }, style);
    assert.match(
      back,
      /^The layouts place the originals again; no picture was brought back\.\n\n1 line of the layouts places the originals again:/,
    );
    const nothing = { changes: [], settings: [], problems: [], placedBefore: 0 };
    assert.match(
      convertText({ ...none, relinking: nothing }, noFitting, style),
      /No layout places any of them\./,
    );
    const before = { ...none, relinking: { ...nothing, placedBefore: 2 } };
    assert.match(convertText(before, noFitting, style), /\n\nThe layouts place the results already\.\n/);
  });

  it('tell what lies among the results as it is', () => {
    const one = {
      ...report.conversions[0],
      outcome: 'copied' as const,
      output: 'out/a.tif',
      proof: null,
      told: ['It is one bit.'],
    };
    const text = convertText({ ...report, conversions: [one], notices: [] }, noFitting, style);
    assert.match(
      text,
      /^0 pictures converted, 1 copied\.\n\nCopied as they are, .*\n {2}a\.tif -> out\/a\.tif\n {4}- It is one bit\.\n$/,
    );
  });

  it('never say that anything was written in a dry run', () => {
    const planned = report.conversions.map(each => ({ ...each, outcome: 'planned' as const, proof: null }));
    const text = convertText({ ...report, conversions: planned.slice(0, 1), dryRun: true }, noFitting, style);
    assert.match(text, /^1 picture would be converted\. Nothing was written\.\n\na\.tif -> /);
    assert.doesNotMatch(text, /read again/i);
  });

  it('say what was brought back, and what was not', () => {
    assert.equal(
      undoText(undone, style),
      '1 original brought back, bit for bit.\n\na.tif\n\nFailed\n  It was changed.\n    b.tif\n',
    );
    assert.equal(undoText({ ...undone, undone: [] }, style), 'Nothing was undone.\n');
    const planned = { ...undone.undone[0], outcome: 'planned' as const };
    assert.match(
      undoText({ ...undone, undone: [planned], dryRun: true }, style),
      /^1 original would be brought back\./,
    );
  });
});
