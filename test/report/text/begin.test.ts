import assert from 'node:assert/strict';
import { begin, verdict } from '../../../src/report/text/begin';
import { brokenFacts } from '../../book/support/facts';
import { finding, picture, report } from './support';

const broken = (path: string) =>
  picture(path, [finding('unreadable', 'error', 'E.')], brokenFacts('truncated'));
const odd = (path: string) => picture(path, [finding('mixed-encodings', 'warning', 'W.')]);

describe('what to do first', () => {
  it('is a test print where nothing stands against the files', () => {
    const clean = report([picture('a.jpg', [finding('untagged', 'note', 'N.')]), picture('b.jpg')]);
    assert.equal(verdict(clean), 'Nothing in the files stands against printing all 2 pictures.');
    assert.equal(
      verdict({ ...clean, unplaced: 6 }),
      'Nothing in the files stands against printing all 2 pictures. 6 other pictures here are placed by no layout, and were not checked.',
    );
    assert.equal(begin(clean), 'Have a test print made first.');
  });

  it('passes no picture that could not be read, whatever the settings make of that', () => {
    const blank = picture('a.jpg', [], brokenFacts('truncated'));
    assert.equal(
      verdict(report([blank, picture('b.jpg'), picture('c.jpg')])),
      'Nothing in the files stands against printing the 2 pictures that could be read. 1 picture could not be read, and the settings have that passed over.',
    );
    assert.match(verdict(report([blank, blank])), /^Nothing was judged\. 2 pictures could not be read, /);
    assert.match(
      verdict(report([blank, odd('b.jpg')])),
      /^1 of 2 pictures wants .* 1 picture could not be read/,
    );
  });

  it('does not pass over what the team lives with', () => {
    const lived = (waived: number, more = {}) => {
      const book = report([picture('a.jpg'), picture('b.jpg')], more);
      return verdict({ ...book, summary: { ...book.summary, waived } });
    };
    assert.equal(lived(1), 'Only 1 waived finding stands against printing all 2 pictures.');
    assert.match(
      lived(3, { scope: { which: 'named', unread: 2 } }),
      /^Only 3 waived findings stand against printing these 2 files, each looked at by itself; 2 other/,
    );
  });

  it('does not pass pictures that were not compared with the others of their book', () => {
    const alone = (pictures: number, unread: number) =>
      verdict(
        report(
          Array.from({ length: pictures }, (_, i) => picture(`${i}.jpg`)),
          {
            scope: { which: 'named', unread },
          },
        ),
      );
    assert.equal(
      alone(1, 26),
      'Nothing in this file stands against printing, each looked at by itself; 26 other pictures of the book were not compared.',
    );
    assert.match(
      alone(2, 1),
      /^Nothing in these 2 files .*; 1 other picture of the book was not compared\.$/,
    );
    assert.equal(alone(2, 0), 'Nothing in the files stands against printing all 2 pictures.');
  });

  it('is the worst picture, with those that want the same', () => {
    const book = report([odd('a.jpg'), broken('b.jpg'), odd('c.jpg'), broken('d.jpg'), picture('e.jpg')]);
    assert.equal(verdict(book), '4 of 5 pictures want attention before this book is ordered.');
    assert.match(
      begin(book) ?? '',
      /^Begin with b\.jpg: put the file right\. .* The same goes for 1 more\.$/,
    );
    assert.match(begin(report([odd('a.jpg'), picture('b.jpg')])) ?? '', /^Begin with a\.jpg: convert it\. /);
  });

  it('counts pictures that a finding about the book asks to be changed', () => {
    const split = {
      ...finding('mixed-encodings', 'warning', 'W.'),
      data: { groups: [], convert: ['a.jpg', 'b.jpg'], save: 'rgb-neutral' },
    };
    const book = report([picture('a.jpg'), picture('b.jpg'), picture('c.jpg')], { findings: [split] });
    assert.equal(verdict(book), '2 of 3 pictures want attention before this book is ordered.');
    assert.match(
      begin(book) ?? '',
      /^Begin with a\.jpg: convert it\. It is stored as equal red, green and blue, and others around it are not: side by side they are unlikely to match in print\. Save it as rgb-neutral\. The same goes for 1 more\.$/,
    );
  });

  it('calls alike only what wants the same for the same reason', () => {
    const locked = picture('b.jpg', [finding('unreadable', 'error', 'E.')], brokenFacts('permission'));
    const first = begin(report([broken('a.jpg'), locked])) ?? '';
    assert.match(first, /^Begin with a\.jpg: put the file right\./);
    const format = (path: string, text: string) =>
      picture(path, [finding('unreadable', 'error', 'E.')], {
        ...brokenFacts('format'),
        unreadable: { reason: 'format', text },
      });
    const formats = begin(
      report([
        format('a.psd', 'A layered document (640 MB).'),
        format('b.heic', 'A HEIC picture.'),
        format('c.psd', 'A layered document (12 MB).'),
      ]),
    );
    assert.match(formats ?? '', /^Begin with a\.psd: .* A layered document.* The same goes for 1 more\.$/);
  });

  it('calls not alike what is stored in unlike ways, and not unlike others what half of them are like', () => {
    const data = { groups: [], convert: ['a.jpg', 'b.jpg', 'c.jpg'] };
    const split = { ...finding('mixed-encodings', 'warning', 'W.'), data };
    const pictures = [
      picture('a.jpg'),
      picture('b.jpg', [], { encoding: 'rgb-toned' }),
      picture('c.jpg', [], { encoding: 'rgb-residual' }),
    ];
    const first = begin(report(pictures, { findings: [split] })) ?? '';
    assert.match(
      first,
      /^Begin with a\.jpg: .* The same goes for 1 more\.$/,
      'a trace of colour makes no other way',
    );
    assert.doesNotMatch(first, /unlike others/);
    const alone = begin(report([odd('a.jpg')])) ?? '';
    assert.match(alone, /stored unlike others/);
    assert.doesNotMatch(alone, /The same/);
  });

  it('says that a picture was taken out, where that is all', () => {
    const of = (gone: string[]) => verdict(report([], { scope: { which: 'staged', unread: 0, gone } }));
    assert.equal(of([]), 'No picture of this book is staged.');
    assert.match(
      of(['a.tif']),
      /^Nothing was judged: 1 picture is taken out of the book, and no other is staged\.$/,
    );
  });

  it('names no picture where only the whole book is at fault', () => {
    const book = report([picture('a.jpg')], { findings: [finding('mixed-profiles', 'warning', 'W.')] });
    assert.equal(begin(book), null);
    assert.match(verdict(book), /the book as a whole does/);
  });

  it('says that there is nothing', () => {
    assert.equal(verdict(report([])), 'No pictures were found here.');
    assert.equal(begin(report([])), null);
    assert.equal(
      verdict(report([odd('a.jpg')])),
      '1 of 1 picture wants attention before this book is ordered.',
    );
  });
});
