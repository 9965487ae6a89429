import assert from 'node:assert/strict';
import { stripVTControlCharacters } from 'node:util';
import { doubtNotices } from '../../../src/book/doubts';
import { bookText } from '../../../src/report/text/book';
import { list } from '../../../src/rules/words';
import type { Target } from '../../../src/shared/target';
import { finding, picture, report, target } from './support';

const plain = { width: 60, colour: false };

describe('report as text', () => {
  it('tells what matters first, each thing once', () => {
    const text = bookText(
      report(
        [
          picture('plates/a.jpg', [
            finding('unreadable', 'error', 'It will not print. The file is cut off.'),
          ]),
          picture('plates/b.jpg', [finding('unreadable', 'error', 'It will not print. The file is empty.')]),
          picture('c.jpg', [], { encoding: 'colour' }),
        ],
        {
          findings: [finding('likely-tint', 'note', 'A tint is seen in about 3 orders of 10.')],
          notices: ['"out" was not searched.'],
        },
      ),
      plain,
    );
    assert.equal(
      text,
      `2 of 3 pictures want attention before this book is ordered.
Offset, coated paper; Gloss coated paper; Daylight of a
  viewing booth (D50); route not known, so several are mixed
  by our own guess of their shares. Forecasts: by public
  press data: a generic process, not your printer.

Begin with plates/a.jpg: put the file right. The file could
not be read. The same goes for 1 more.

ERROR  unreadable  2 pictures
  It will not print.
  plates/a.jpg
    The file is cut off.
  plates/b.jpg
    The file is empty.

NOTE  likely-tint
  A tint is seen in about 3 orders of 10.

How the pictures store their grey
  2  rgb-neutral  equal red, green and blue
  1  colour       a picture in colour

In colour, and not judged, since nobody said what it is
  meant to be ("intent" in evengrey.json): c.jpg

"out" was not searched.

3 pictures: 2 errors, 0 warnings, 1 note.
"evengrey explain RULE" tells more.
`,
    );
  });

  it('keeps to a narrow terminal, in colour too', () => {
    const notes = [finding('x', 'error', 'E.'), finding('y', 'warning', 'W.')];
    const book = report([picture('a.jpg', notes, { encoding: 'three-ink' }), picture('b.jpg')]);
    for (const width of [40, 60]) {
      const lines = bookText(book, { width, colour: false }).split('\n');
      assert.deepEqual(
        lines.filter(line => line.length > width),
        [],
      );
      assert.equal(stripVTControlCharacters(bookText(book, { width, colour: true })), lines.join('\n'));
    }
    const narrow = bookText(book, { width: 40, colour: false });
    assert.match(narrow, /\n {2}1 {2}three-ink {4}grey of three inks,\n {18}without black\n/);
    assert.match(
      narrow,
      /\n2 pictures: 1 error, 1 warning, 0 notes\.\n"evengrey explain RULE" tells more\.\n$/,
    );
  });

  it('says where all pictures of a finding on the book are named, if it lists some of them', () => {
    const names = Array.from({ length: 9 }, (_, i) => `p${i}.tif`);
    const told = (message: string) =>
      bookText(
        report(
          names.map(name => picture(name)),
          { findings: [{ ...finding('mixed-encodings', 'warning', message), data: { convert: names } }] },
        ),
        plain,
      ).replace(/\s+/g, ' ');
    const where = /All 9 are named by "--format markdown" and "--format json"\./;
    assert.match(told(`That leaves ${list(names, 5)} to convert.`), where);
    assert.doesNotMatch(told(`That leaves ${list(names, 9)} to convert.`), where);
  });

  it('says of several pictures at once that each is meant, where the words speak of one', () => {
    const same = [finding('likely-tint', 'warning', 'This picture prints warm.')];
    const text = bookText(report([picture('a.jpg', same), picture('b.jpg', same)]), plain);
    assert.match(
      text,
      /^WARNING {2}likely-tint {2}2 pictures\n {2}a\.jpg, b\.jpg, of each:\n {4}This picture prints warm\.$/m,
    );
    assert.doesNotMatch(bookText(report([picture('a.jpg', same)]), plain), /of each/);
    const many = ['box 1/plate 100.jpg', 'box 1/plate 20.jpg', 'box 1/plate 3.jpg'].map(path =>
      picture(path, same),
    );
    // in the order of their numbers, each name whole
    assert.match(
      bookText(report(many), { ...plain, width: 42 }),
      /^ {2}box 1\/plate 3\.jpg, box 1\/plate 20\.jpg,\n {2}box 1\/plate 100\.jpg, of each:$/m,
    );
  });

  it('tells so many notes in full, and names the rest', () => {
    const pictures = [1, 2, 3, 4].map(n =>
      picture(`${n}.jpg`, [finding('clipped', 'note', `Message ${n}.`)]),
    );
    const text = bookText(report(pictures), plain);
    assert.match(text, / {2}2\.jpg\n {4}Message 2\.\n {2}and 2 more:\n {4}3\.jpg, 4\.jpg\n/);
    assert.ok(!text.includes('Message 3'));
  });

  it('loses no reason of an error, and names those that are not told in full by what they are like', () => {
    const reason = (n: number) =>
      n < 12 ? `The format no. ${'abcdefghijkl'[n]} is not read.` : `Cut off after ${n} bytes.`;
    const pictures = Array.from({ length: 18 }, (_, n) =>
      picture(`${n}.jpg`, [finding('unreadable', 'error', reason(n))]),
    );
    const text = bookText(report(pictures), plain);
    for (let n = 0; n <= 12; n++) assert.ok(text.includes(`\n  ${n}.jpg\n    ${reason(n)}\n`), reason(n));
    assert.match(text, / {2}and 5 more like 12\.jpg:\n {4}13\.jpg, 14\.jpg, 15\.jpg, 16\.jpg, 17\.jpg\n/);
    assert.doesNotMatch(text, /Cut off after 13/);
  });

  it('tells of a warning one of each reason first, then more, and that the rest have others', () => {
    const reasons = ['One 1.', 'One 2.', ...'abcdefghi'.split('').map(word => `Reason ${word}.`)];
    const pictures = reasons.map((words, n) => picture(`${n}.jpg`, [finding('clipped', 'warning', words)]));
    const text = bookText(report(pictures), plain);
    assert.match(text, /0\.jpg\n {4}One 1\./);
    assert.match(
      text,
      / {2}and 1 more like 0\.jpg:\n {4}1\.jpg\n {2}and 2 more for other reasons:\n {4}9\.jpg, 10\.jpg\n/,
    );
  });

  it('tells the range of what is not told in full, and what transparency was taken for', () => {
    const pictures = [0.1, 0.2, 0.12, 0.31].map((share, n) =>
      picture(`${n}.jpg`, [{ ...finding('clipped', 'note', `Message ${n}.`), data: { share } }]),
    );
    const remarks = [{ code: 'transparent' as const, text: 'Some is.' }];
    const text = bookText(report([...pictures, picture('clear.png', [], { remarks })]), plain);
    assert.match(text, / {2}and 2 more \(12 to 31 % of the area\):\n/);
    assert.match(text, /With transparency, .*paper white.*clear\.png/s);
  });

  it('says what is missing for a forecast, and names targets only where there are several', () => {
    const { targets } = report([]);
    assert.match(bookText(report([], { targets: [] }), plain), /Nobody said where it will be printed/);
    const two = [
      targets[0],
      { ...targets[0], name: 'dummy', paper: { lab: [95, 0, 0] as [number, number, number] } },
    ];
    const text = bookText(report([], { targets: two }), { width: 96, colour: false });
    assert.match(text, /^offset-coated: Offset, coated paper; Gloss/m);
    assert.match(text, /^dummy: Offset, coated paper; a paper of your own, as measured/m);
  });

  it('says in the head what is done with the numbers, and what a target cannot have, once', () => {
    const head = (changes: Partial<Target>, notices: string[] = []) =>
      bookText(report([], { targets: [{ ...target, name: 'book', ...changes }], notices }), {
        width: 1000,
        colour: false,
      }).split('\n')[1];
    assert.match(head({ route: 'separated' }), /\(D50\); separated to inks\.$/);
    assert.match(head({ route: 'inks' }), /; ink values kept where a file holds them\.$/);
    assert.match(
      head({ route: 'rgb' }),
      /; separated to inks\. The route "rgb" cannot apply on coated offset/,
    );
    const wrong: Partial<Target> = { process: 'silver-halide', paper: 'uncoated', route: 'inks' };
    assert.match(
      head(wrong),
      /; printed from R, G, B\. No such paper is made for silver halide: .*, a guess\. The route "inks" cannot apply on silver halide: forecast there as "rgb"\.$/,
    );
    const notices = [...doubtNotices({ ...target, name: 'book', ...wrong }), 'Another.'];
    const text = bookText(report([], { targets: [{ ...target, name: 'book', ...wrong }], notices }), plain);
    assert.ok(text.includes('\nAnother.\n'));
    assert.ok(!text.includes('The target "book":'), 'what stands in the head is not told again');
  });

  it('says the same with and without colour', () => {
    const book = report([picture('a.jpg', [finding('unreadable', 'error', 'No.')])]);
    const painted = bookText(book, { width: 60, colour: true });
    assert.ok(painted.includes('\u001b['));
    // biome-ignore lint/suspicious/noControlCharactersInRegex: takes the paint off again
    assert.equal(painted.replace(/\u001b\[\d+m/g, ''), bookText(book, plain));
  });

  it('lets no name of a file steer the terminal', () => {
    const book = report([
      picture('a\u001b[2J.jpg', [finding('unreadable', 'error', 'a\u001b[2J.jpg is bad.')]),
    ]);
    assert.ok(!bookText(book, plain).includes('\u001b'));
  });
});
