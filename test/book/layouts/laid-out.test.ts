import assert from 'node:assert/strict';
import type { BookLayouts } from '../../../src/book/layouts';
import { laidOut } from '../../../src/book/layouts/laid-out';

const root = '/book';
const found = (...paths: string[]) => paths.map(path => ({ path, file: `${root}/${path}`, obstacle: null }));
const places = (...paths: string[]): BookLayouts => ({
  files: ['book.md'],
  placements: paths.map((picture, i) => ({ file: 'book.md', line: i + 1, column: 3, picture, size: null })),
  missing: [],
  outside: [],
  notRead: [],
  notThere: [],
  unread: [],
});
const whole = { root, paths: [root], settings: { pictures: null } };
const pathsOf = (files: { path: string }[]) => files.map(({ path }) => path);

describe('a book by its layouts', () => {
  it('lacks the pages of a text that is taken in and not there, which is told with its line', () => {
    const notThere = [{ file: 'book.tex', line: 4, column: 1, path: 'two.tex' }];
    const { notices } = laidOut(found('a.jpg'), { ...places('a.jpg'), notThere }, whole);
    assert.deepEqual(notices, [
      `Pages may be missing: book.tex:4 takes in "two.tex", and there is no such file in the book's folder, so the pictures that it places were not checked. Put it back, or correct the line.`,
    ]);
  });

  it('is what they place, where the settings name no pictures; the others are told', () => {
    const { files, notices, placements, unplaced } = laidOut(
      found('a.jpg', 'b.jpg', 'c.jpg'),
      places('a.jpg', 'c.jpg', 'a.jpg'),
      whole,
    );
    assert.deepEqual(pathsOf(files), ['a.jpg', 'c.jpg']);
    assert.deepEqual(
      placements.get('a.jpg')?.map(({ line }) => line),
      [1, 3],
    );
    assert.deepEqual(unplaced, { paths: ['b.jpg'], told: notices[0] });
    assert.deepEqual(notices, [
      'One picture is placed by no layout (book.md): b.jpg. It is not in the book then, and was not checked: name it under "pictures" if it is printed.',
    ]);
  });

  it('has no use for originals and earlier results of what they place, which is told', () => {
    const { notices, unplaced } = laidOut(
      found('a.jpg', 'a.rgb-neutral.jpg', 'a.single-channel.jpg', 'a.tif', 'b.jpg'),
      places('a.single-channel.jpg'),
      whole,
    );
    assert.deepEqual(unplaced?.paths, ['a.tif', 'b.jpg']);
    assert.equal(
      notices[0],
      '2 pictures are replaced by converted copies that layouts place, and are not judged: a.jpg by a.single-channel.jpg, a.rgb-neutral.jpg by a.single-channel.jpg.',
    );
    const [one] = laidOut(found('a.jpg', 'a.rgb-neutral.jpg'), places('a.rgb-neutral.jpg'), whole).notices;
    assert.match(
      one,
      /^One picture is replaced by a converted copy that layouts place, and is not judged: a\.jpg/,
    );
  });

  it('is what the settings name; what no layout places is told', () => {
    const settings = { pictures: ['*.jpg'] };
    const { files, notices } = laidOut(found('a.jpg', 'b.jpg', 'c.jpg'), places('a.jpg'), {
      ...whole,
      settings,
    });
    assert.deepEqual(pathsOf(files), ['a.jpg', 'b.jpg', 'c.jpg']);
    assert.deepEqual(notices, ['2 pictures are placed by no layout (book.md): b.jpg, c.jpg.']);
  });

  it('is every picture where no layout places any', () => {
    const { files, notices, unplaced } = laidOut(found('a.jpg'), places(), whole);
    assert.equal(unplaced, null);
    assert.deepEqual(pathsOf(files), ['a.jpg']);
    assert.deepEqual(notices, []);
    assert.deepEqual(
      pathsOf(laidOut(found('a.jpg'), places('x.pdf'), whole).files),
      ['a.jpg'],
      'a drawing is none',
    );
  });

  it('has the files that a person names, placed or not', () => {
    const asked = { ...whole, paths: [`${root}/b.jpg`, `${root}/c`] };
    const { files, notices } = laidOut(
      found('b.jpg', 'c/1.jpg', 'c/2.jpg'),
      places('a.jpg', 'c/2.jpg'),
      asked,
    );
    assert.deepEqual(pathsOf(files), ['b.jpg', 'c/2.jpg']);
    assert.deepEqual(notices, [], 'nothing is said of the rest');
  });

  it('lacks what is placed and not there: told once a picture, with its lines', () => {
    const all = {
      ...places('a.jpg'),
      missing: ['x.tif', 'y.pdf', 'z', 'x.tif', 'x.tif'].map((path, i) => ({
        file: 'book.md',
        line: i + 1,
        column: 1,
        path,
        ...{ folders: [], behind: i < 3 ? 0 : 1, size: null },
      })),
    };
    const { missing } = laidOut(found('a.jpg'), all, whole);
    assert.deepEqual(pathsOf(missing), ['x.tif', 'z']);
    assert.deepEqual(
      missing.map(({ facts: [{ unreadable }] }) => [unreadable?.reason, unreadable?.text]),
      [
        [
          'missing',
          'It stays blank on the page: book.md:1, book.md:4 and 1 more place it, and there is no such file. Put the picture there, or correct the path.',
        ],
        [
          'missing',
          'It stays blank on the page: book.md:3 places it, and there is no such file. Put the picture there, or correct the path.',
        ],
      ],
    );
    assert.deepEqual(pathsOf(laidOut([], all, { ...whole, paths: [`${root}/deep`] }).missing), []);
    assert.deepEqual(pathsOf(laidOut([], all, { ...whole, paths: [`${root}/z`] }).missing), ['z']);
  });

  it('has a missing picture that may be one of those that no layout places, whose name is near', () => {
    const lost = { file: 'a.md', line: 5, column: 1, folders: [], size: null, behind: 0 };
    const all = { ...places('12 Küche.jpg'), missing: [{ ...lost, path: '13 Garden.jpg' }] };
    const textOf = (...names: string[]) =>
      laidOut(found('12 Küche.jpg', ...names), all, whole).missing[0].facts[0].unreadable!.text;
    assert.match(textOf('13 Garten.jpg'), / or correct the path\. Did you mean "13 Garten\.jpg"\?$/);
    assert.match(textOf('14 Hafen.jpg'), /or correct the path\.$/);
    const placed = { ...all, missing: [{ ...lost, path: '12 Kueche.jpg' }] };
    const [{ facts }] = laidOut(found('12 Küche.jpg'), placed, whole).missing;
    assert.match(facts[0].unreadable!.text, /or correct the path\.$/);
  });

  it('has what is missing in its place in the order of the book, and tells where it was looked for', () => {
    const lost = { file: 'a.tex', line: 5, column: 1, folders: ['bilder', 'bilder/teil zwei'], size: null };
    const all = { ...places('a.jpg', 'b.jpg'), missing: [{ ...lost, path: 'bilder/x.jpg', behind: 1 }] };
    const { missing, placements, notices } = laidOut(found('a.jpg', 'b.jpg'), all, whole);
    assert.deepEqual([...placements.keys()], ['a.jpg', 'bilder/x.jpg', 'b.jpg']);
    assert.equal(
      missing[0].facts[0].unreadable?.text,
      'It stays blank on the page: a.tex:5 places it, and there is no such file in "bilder" or "bilder/teil zwei". Put the picture into one of these folders, or correct the path.',
    );
    assert.deepEqual(notices, [], 'it was not left out');
  });

  it('may hold more than can be read: told once a file, and nothing is said to be out of the book', () => {
    const unread = [
      { file: 'a.typ', line: 1 },
      { file: 'a.typ', line: 9 },
    ];
    assert.deepEqual(laidOut(found('a.jpg', 'b.jpg'), { ...places('a.jpg'), unread }, whole).notices, [
      'a.typ:1 places pictures in a way that cannot be read: name them under "pictures".',
      'One picture is placed by no line that can be read (book.md): b.jpg. It was not checked: name it under "pictures" if it is printed.',
    ]);
    const settings = { pictures: ['*.jpg'] };
    const { notices } = laidOut(found('a.jpg'), { ...places('a.jpg'), unread }, { ...whole, settings });
    assert.deepEqual(notices, []);
  });

  it('tells what is placed and not looked at', () => {
    const all = {
      ...places('a.jpg', 'old/b.jpg'),
      outside: [{ file: 'x.md', line: 7, column: 1, path: '../c.jpg' }],
      notRead: [{ path: 'huge.html', why: 'It is larger than 4 MB.' }],
    };
    assert.deepEqual(laidOut(found('a.jpg'), all, whole).notices, [
      '"huge.html" was not read as a layout: it is larger than 4 MB.',
      'x.md:7 places "../c.jpg", which lies outside the book\'s folder and was not looked at. Copy the picture into the folder.',
      'One picture is placed by a layout and was not checked, left out by "pictures", "ignore" or an ignore file: old/b.jpg (book.md:2).',
    ]);
  });
});
