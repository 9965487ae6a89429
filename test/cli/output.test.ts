import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { temporaryFolder } from '../book/support/folder';
import { evenBook, pictures } from './support/book';
import { evengrey } from './support/run';

/** Formats of results, with a name that could be somebody's own work. */
const RESULTS = [
  ['html', 'report.html'],
  ['markdown', 'report.md'],
  ['json', 'report.json'],
  ['junit', 'report.xml'],
  ['sarif', 'sarif.json'],
];

describe('a file for the result', () => {
  const books = {
    'a book': () => evenBook(),
    'a book in a folder of its repository': () => {
      const top = temporaryFolder({ '.git/HEAD': '' });
      const book = path.join(top, 'one, two');
      fs.renameSync(evenBook(), book);
      return book;
    },
  };
  for (const [format, output, book] of RESULTS.flatMap(([format, output]) =>
    Object.keys(books).map(book => [format, output, book] as const),
  ))
    it(`is written over where it holds an earlier result: ${format} of ${book}`, async () => {
      const root = books[book as keyof typeof books]();
      const args = ['check', '--format', format, '--output', output];
      assert.equal((await evengrey(args, { cwd: root })).code, 0);
      const first = fs.readFileSync(path.join(root, output), 'utf8');
      fs.writeFileSync(path.join(root, 'plates/05.tif'), pictures.blackOnly(5));
      assert.equal((await evengrey(args, { cwd: root })).code, 0);
      assert.notEqual(fs.readFileSync(path.join(root, output), 'utf8'), first);
    });

  it('is written over where it holds a shard, as a job does that runs again', async () => {
    const root = evenBook();
    const args = ['check', '--shard', '1/2', '--output', 'shard.json'];
    for (let n = 0; n < 2; n++) assert.deepEqual((await evengrey(args, { cwd: root })).code, 0);
  });

  it('is left alone where it may be a layout of the book, or data that somebody wrote', async () => {
    const root = evenBook();
    const works = {
      'book.html': '<!DOCTYPE html><img src="plates/01.tif">',
      'book.md': '![One](plates/01.tif)',
      'book.tex': '\\includegraphics{plates/01}',
      'book.typ': '#image("plates/01.tif")',
      'record.json': '{ "readings": [] }',
      '.evengrey-waivers.json': '{"schema":1}',
    };
    for (const [name, text] of Object.entries(works)) fs.writeFileSync(path.join(root, name), text);
    const told = /^evengrey: "[^"]+" is (?:there already and is no result of Evengrey|the name of waivers)/;
    for (const [name, text] of Object.entries(works)) {
      const format = name.endsWith('.json') ? 'json' : 'markdown';
      const args = ['check', '--format', format, '--output', name];
      const { code, stderr } = await evengrey(args, { cwd: root });
      assert.equal(code, 2, name);
      assert.match(stderr, told);
      assert.equal(fs.readFileSync(path.join(root, name), 'utf8'), text);
    }
    const shown = ['convert', 'plates/01.tif', '--candidates', 'book.html'];
    assert.equal((await evengrey(shown, { cwd: root })).code, 2);
    assert.equal(fs.readFileSync(path.join(root, 'book.html'), 'utf8'), works['book.html']);
  });

  it('is called neither like a layout nor like data where it is plain text, by which nobody could tell whose it is', async () => {
    const root = evenBook();
    for (const [format, name] of [
      ['text', 'notes.md'],
      ['text', 'report.json'],
      ['github', 'book.html'],
    ]) {
      const { code, stderr } = await evengrey(['check', '--format', format, '--output', name], { cwd: root });
      assert.equal(code, 2, name);
      assert.match(stderr, /is called like a layout or data, and this result is neither\. Call it \.txt, or/);
      assert.equal(fs.existsSync(path.join(root, name)), false);
    }
  });

  it('is none of those that the command reads', async () => {
    const root = evenBook();
    const text = { 'other.json': '{"process":"inkjet"}', 'w.txt': '{"schema":1,"waivers":[]}' };
    for (const [name, content] of Object.entries(text)) fs.writeFileSync(path.join(root, name), content);
    await evengrey(['check', '--shard', '1/1', '--output', 'shard.json'], { cwd: root });
    const shard = fs.readFileSync(path.join(root, 'shard.json'), 'utf8');
    for (const args of [
      ['check', '--settings', 'other.json', '--output', 'other.json'],
      ['check', '--waivers', 'w.txt', '--output', 'w.txt'],
      ['merge', 'shard.json', '--output', './shard.json'],
    ]) {
      const { code, stderr } = await evengrey(args, { cwd: root });
      assert.equal(code, 2, args.join(' '));
      assert.match(stderr, /is read for this result; it is not written over\. Name another file/);
    }
    for (const [name, content] of Object.entries({ ...text, 'shard.json': shard }))
      assert.equal(fs.readFileSync(path.join(root, name), 'utf8'), content);
  });

  it('may be an empty one', async () => {
    const root = evenBook();
    fs.writeFileSync(path.join(root, 'new.html'), '');
    const { code } = await evengrey(['check', '--format', 'html', '--output', 'new.html'], { cwd: root });
    assert.equal(code, 0);
    assert.ok(fs.statSync(path.join(root, 'new.html')).size > 0);
  });
});
