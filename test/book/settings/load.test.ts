import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { loadSettings } from '../../../src/book/settings/load';
import { disk } from '../../../src/book/settings/within';
import { temporaryFolder } from '../support/folder';

async function load(files: Record<string, string>) {
  const { settings, problems } = await loadSettings(temporaryFolder(files));
  return { settings, problems: problems.map(p => `${p.file}:${p.line}:${p.column}: ${p.message}`) };
}

/** A record of one reading. */
const recordOf = (process: string) =>
  JSON.stringify({
    record: 1,
    process,
    date: '2026-03-01',
    readings: [{ encoding: 'rgb-neutral', orders: 2, greys: [{ L: 50, a: 3, b: 1 }] }],
  });

describe('loading settings', () => {
  it('takes a folder without settings as a book without targets', async () => {
    const { settings, problems } = await load({});
    assert.deepEqual(problems, []);
    assert.deepEqual(settings?.targets, []);
    assert.equal(settings?.pictures, null);
  });

  it('fills in the short form of one target', async () => {
    const { settings } = await load({ 'evengrey.json': '{"process": "silver-halide"}' });
    assert.equal(settings?.targets.length, 1);
    const [target] = settings!.targets;
    assert.deepEqual(
      [target.name, target.process, target.paper, target.light, target.route, target.encodings],
      ['book', 'silver-halide', 'photo-lustre', 'D50', 'rgb', null],
    );
  });

  it('asks for the process', async () => {
    const { problems } = await load({ 'evengrey.json': '{"light": "A"}' });
    assert.deepEqual(problems, ['evengrey.json:1:2: The target does not say its process.']);
  });

  it('reads a house file, whose keys the target may overrule and whose paths count from it', async () => {
    const { settings, problems } = await load({
      'evengrey.json': '{"targets": {"run": {"house": "houses/north.json", "light": "A"}}}',
      'houses/north.txt': recordOf('offset-coated'),
      'houses/north.json': '{"process": "offset-coated", "light": "D65", "record": "north.txt"}',
    });
    assert.deepEqual(problems, []);
    const [target] = settings!.targets;
    assert.deepEqual(
      [target.process, target.light, target.record],
      ['offset-coated', 'A', 'houses/north.txt'],
    );
    assert.ok(!('house' in target));
  });

  it('keeps the paths of the short form', async () => {
    const { settings } = await load({
      'evengrey.json': '{"process": "offset-coated", "record": "./press/north.txt"}',
      'press/north.txt': recordOf('offset-coated'),
    });
    assert.equal(settings?.targets[0].record, 'press/north.txt');
  });

  it('tells a slip in a house file in that file, and once', async () => {
    const { settings, problems } = await load({
      'evengrey.json': '{"targets": {"a": {"house": "h.json"}, "b": {"house": "h.json"}}}',
      'h.json': '{\n"proces": "inkjet"}',
    });
    assert.equal(settings, null);
    assert.deepEqual(problems, ['h.json:2:1: Unknown key "proces". Did you mean "process"?']);
  });

  it('tells a layout that is not there, or that nobody reads, at its line', async () => {
    const files = { 'chapters/one.md': '', 'notes.docx': '', 'two.md': '' };
    const problemsOf = async (layouts: string) =>
      (await load({ ...files, 'evengrey.json': `{\n  "layouts": ${layouts}\n}` })).problems;
    assert.deepEqual(
      await problemsOf('["two.md", "chapter/one.md", "notes.docx", "../out.md", "chapters", "*.adoc"]'),
      [
        'evengrey.json:2:25: There is no layout "chapter/one.md". Did you mean "chapters/one.md"?',
        'evengrey.json:2:43: "notes.docx" is no layout that can be read. Markdown, HTML, CSS, LaTeX, Typst and AsciiDoc are.',
        'evengrey.json:2:57: "../out.md" lies outside the book\'s folder. Copy it into the folder and name it there.',
      ],
    );
    assert.deepEqual(await problemsOf('"missing.md"'), [
      'evengrey.json:2:14: There is no layout "missing.md". Correct the name, or take it out.',
    ]);
  });

  it('finds a layout whose name is composed of other characters on the disk', async () => {
    const { problems } = await load({ 'evengrey.json': '{"layouts": "m\u00f6we.md"}', 'mo\u0308we.md': '' });
    assert.deepEqual(problems, []);
  });

  it('finds what a schema cannot see', async () => {
    const { problems } = await load({
      'evengrey.json':
        '{"light": "A",\n"targets": {"run": {"process": "inkjet"}, "dummy": {"light": "A"}},\n"parts": {"cover": {"pictures": "c/**", "target": ["run", "cover"]}}}',
    });
    assert.deepEqual(problems, [
      'evengrey.json:1:2: "light" stands at the top level beside "targets". Move it into the target it belongs to.',
      'evengrey.json:2:43: The target "dummy" does not say its process.',
      'evengrey.json:3:59: No target is called "cover". Targets here: run, dummy.',
    ]);
  });

  it('tells what is wrong with a profile where it is named', async () => {
    const { problems } = await load({
      'evengrey.json': '{"process": "offset-coated",\n"profile": "north.icc"}',
      'north.icc': 'no profile at all',
    });
    assert.equal(problems.length, 1);
    assert.match(problems[0], /^evengrey\.json:2:12: "north\.icc": .*profile/);
  });

  it('gives a target its record, and tells what is wrong with one where it is named', async () => {
    const settings = '{"process": "silver-halide",\n"record": "north.json"}';
    const good = await load({ 'evengrey.json': settings, 'north.json': recordOf('silver-halide') });
    assert.deepEqual(good.problems, []);
    assert.equal(good.settings?.targets[0].printRecord?.readings[0].orders, 2);
    const broken = await load({ 'evengrey.json': settings, 'north.json': '{"record": 1}' });
    assert.deepEqual(broken.problems, [
      'evengrey.json:2:11: "north.json": "readings" should be a list in brackets.',
    ]);
    const other = await load({
      'evengrey.json': settings,
      'north.json': recordOf('inkjet'),
    });
    assert.match(other.problems[0], /^evengrey\.json:2:11: The record is of Inkjet, not of Silver halide/);
  });

  it('never reaches outside the root', async () => {
    const above = temporaryFolder({ 'secret.json': '{"process": "inkjet"}', 'book/evengrey.json': '' });
    const root = path.join(above, 'book');
    fs.symlinkSync(path.join(above, 'secret.json'), path.join(root, 'link.json'));
    for (const house of ['../secret.json', path.join(above, 'secret.json'), 'link.json']) {
      fs.writeFileSync(path.join(root, 'evengrey.json'), JSON.stringify({ house }));
      const { settings, problems } = await loadSettings(root);
      assert.equal(settings, null);
      assert.match(problems[0].message, /outside the book's folder|leads out of the book's folder/);
      assert.equal(problems[0].column, 10);
    }
  });

  it('says what is not there', async () => {
    const { problems } = await load({ 'evengrey.json': '{"process": "inkjet", "profile": "p.icc"}' });
    assert.deepEqual(problems, ['evengrey.json:1:34: There is no file "p.icc".']);
  });

  it('does not wait for a pipe', async () => {
    const root = temporaryFolder();
    execFileSync('mkfifo', [path.join(root, 'evengrey.json')]);
    const { problems } = await loadSettings(root);
    assert.equal(problems[0].message, '"evengrey.json" is not a file.');
  });

  it('reads what is not on the disk', async () => {
    const root = temporaryFolder({ 'evengrey.json': '{}' });
    const source = { ...disk, bytes: async () => Buffer.from('{"process": "inkjet"}') };
    const { settings } = await loadSettings(root, { source });
    assert.equal(settings?.targets[0].process, 'inkjet');
  });

  it('turns one word into a list, and keeps the order of intents', async () => {
    const { settings } = await load({
      'evengrey.json':
        '{"pictures": "a/**", "intent": {"toned": ["x/**", {"pictures": "y/**", "reference": "y/1.tif"}], "line": "z/**"}}',
    });
    assert.deepEqual(settings?.pictures, ['a/**']);
    assert.deepEqual(settings?.intents, [
      { intent: 'toned', pictures: ['x/**'], reference: null },
      { intent: 'toned', pictures: ['y/**'], reference: 'y/1.tif' },
      { intent: 'line', pictures: ['z/**'], reference: null },
    ]);
  });
});
