import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { compareReportSchema } from '../../../src/report/compare/schema';
import { commit, git, repositoryOf } from '../../book/revisions/support/repository';
import { temporaryFolder } from '../../book/support/folder';
import { strictErrors } from '../../report/support';
import { pictures } from '../support/book';
import { golden } from '../support/golden';
import { evengrey, withReader } from '../support/run';

const settings = {
  'evengrey.json': '{ "process": "offset-coated", "spreads": [["plates/02.tif", "plates/04.tif"]] }',
};

/** A book of five alike, and a change of every kind on a branch of its own; `main` went on meanwhile. */
function review(): string {
  const plates = Object.fromEntries([1, 2, 3, 4, 5].map(i => [`plates/0${i}.tif`, pictures.neutral(i)]));
  const top = repositoryOf({ ...settings, ...plates, 'text.md': 'words' });
  git(top, 'checkout', '--quiet', '-b', 'work');
  fs.renameSync(path.join(top, 'plates/01.tif'), path.join(top, 'plates/01 | new.tif'));
  fs.chmodSync(path.join(top, 'plates/03.tif'), 0o755);
  fs.rmSync(path.join(top, 'plates/05.tif'));
  commit(top, {
    'plates/02.tif': pictures.blackOnly(2),
    'plates/06.tif': pictures.neutral(6),
    'plates/07.tif': pictures.neutral(7).subarray(0, 900),
  });
  git(top, 'checkout', '--quiet', 'main');
  commit(top, { 'plates/03.tif': pictures.neutral(33) });
  git(top, 'checkout', '--quiet', 'work');
  return top;
}

/** Commits are called otherwise in every run of git that writes another format; their length stays. */
const plain = (text: string) =>
  text.replace(/\b[0-9a-f]{40}\b/g, 'COMMIT').replace(/\b[0-9a-f]{10}\b/g, 'COMMIT');

describe('evengrey compare', () => {
  it('tells a review what changed, whether it matches the book, and what is new', async () => {
    const cwd = review();
    const ran = await evengrey(['compare', 'main', '--whole'], { cwd });
    golden('compare/whole.txt', plain(ran.stdout));
    assert.deepEqual([ran.code, ran.stderr], [1, '']);
    const markdown = await evengrey(['compare', 'main', '--whole', '--format', 'markdown'], { cwd });
    golden('compare/whole.md', plain(markdown.stdout));
  });

  it('shows before and after on one page, with the neighbours, from git alone', async () => {
    const cwd = review();
    fs.rmSync(path.join(cwd, 'plates'), { recursive: true });
    const page = (await evengrey(['compare', 'main', '--format', 'html'], { cwd })).stdout;
    assert.equal(
      page.match(/<img /g)!.length,
      13,
      'before and after, gone, new, renamed; and eight among neighbours',
    );
    assert.match(page, /The file ends before its picture does/);
    assert.ok(!page.includes(cwd));
    assert.equal((await evengrey(['compare', 'main', '--format', 'html'], { cwd })).stdout, page);
  });

  it('says of what nobody remembers that the set was not judged', async () => {
    const ran = await evengrey(['compare', 'main'], { cwd: review() });
    golden('compare/changes.txt', plain(ran.stdout));
  });

  it('says so where nothing changed', async () => {
    const ran = await evengrey(['compare', 'HEAD'], { cwd: review() });
    golden('compare/nothing.txt', plain(ran.stdout));
    assert.deepEqual([ran.code, ran.stderr], [0, '']);
  });

  it('writes the same JSON to the byte, cold and warm, as its schema says', async () => {
    const cwd = review();
    const env = { EVENGREY_CACHE_DIR: temporaryFolder() };
    for (const more of [[], ['--whole']]) {
      const args = ['compare', 'main', '--format', 'json', ...more];
      const cold = await evengrey(args, { cwd, env });
      const report = JSON.parse(cold.stdout);
      assert.equal(strictErrors(compareReportSchema, report), '');
      assert.ok(!cold.stdout.includes(cwd), 'no absolute path');
      assert.equal((await evengrey(args, { cwd, env })).stdout, cold.stdout);
      assert.equal((await evengrey([...args, '--no-cache'], { cwd, env })).stdout, cold.stdout);
      assert.deepEqual(report.summary.changes, {
        added: 2,
        deleted: 1,
        changed: 1,
        renamed: 1,
        moved: 0,
        mode: 1,
      });
    }
  });

  it('fails where the settings alone make an error, cold and warm, and says first that nothing was judged where it was not', async () => {
    const top = repositoryOf({
      'evengrey.json': '{ "process": "offset-coated" }',
      'a.tif': pictures.neutral(1),
      'b.tif': pictures.grey(2),
    });
    commit(top, { 'evengrey.json': '{ "process": "offset-coated", "encodings": ["rgb-neutral"] }' });
    const env = { EVENGREY_CACHE_DIR: temporaryFolder() };
    const cold = await evengrey(['compare', 'HEAD~1'], { cwd: top, env });
    assert.match(cold.stdout, /^1 new error\. No picture of the book changed, but its settings did\.\n/);
    assert.match(
      cold.stdout,
      /\nERROR {2}encoding-not-accepted {2}1 picture\n {2}b\.tif\n {4}The print house may refuse/,
    );
    assert.equal(cold.code, 1);
    assert.deepEqual(await evengrey(['compare', 'HEAD~1'], { cwd: top, env }), cold);
    assert.deepEqual(await evengrey(['compare', 'HEAD~1', '--whole'], { cwd: top, env }), cold);
    commit(top, { 'words.md': 'no picture' });
    const nothing = await evengrey(['compare', 'HEAD~1', '--no-cache'], { cwd: top });
    assert.match(
      nothing.stdout,
      /^No picture of the book changed\. Nothing was judged: the 2 pictures were not\nlooked at\.\n/,
    );
    assert.equal(nothing.code, 0);
  });

  it('decodes only what changed: of 200 pictures and 30 changed, 60 contents', async () => {
    const cwd = repositoryOf({
      'evengrey.json': '{ "process": "offset-coated" }',
      ...Object.fromEntries(Array.from({ length: 200 }, (_, i) => [`${1000 + i}.tif`, pictures.neutral(i)])),
    });
    commit(
      cwd,
      Object.fromEntries(Array.from({ length: 30 }, (_, i) => [`${1000 + i}.tif`, pictures.grey(i)])),
    );
    const log = path.join(temporaryFolder(), 'log');
    const program = withReader(`
      const fs = require('node:fs');
      process.on('message', ({ kind, file }) => kind === 'facts' && fs.appendFileSync(${JSON.stringify(log)}, file + '\\n'));
      require(real);`);
    const { stdout, code } = await evengrey(['compare', 'HEAD~1', '--format', 'json'], { cwd, program });
    assert.equal(fs.readFileSync(log, 'utf8').trim().split('\n').length, 60);
    const { changes, unread } = JSON.parse(stdout);
    assert.deepEqual([code, changes.length, unread], [0, 30, 170]);
  });

  it('fails on more new warnings than are allowed, and on new errors, not on old ones', async () => {
    const top = repositoryOf({
      ...settings,
      'a.tif': pictures.neutral(1),
      'b.tif': pictures.neutral(2),
      'broken.tif': 'no picture',
    });
    commit(top, { 'c.tif': pictures.blackOnly(3), 'broken.tif': 'no picture either' });
    const args = ['compare', 'HEAD~1', '--whole'];
    assert.equal((await evengrey(args, { cwd: top })).code, 0);
    const strict = await evengrey([...args, '--max-warnings', '0'], { cwd: top });
    assert.deepEqual(
      [strict.code, strict.stderr],
      [1, '1 new warning is more than --max-warnings 0 allows.\n'],
    );
  });

  it('compares one book at a time', async () => {
    const top = repositoryOf({ ...settings, '01.tif': pictures.neutral(1) }, 'one');
    commit(top, { 'two/evengrey.json': '{}', 'two/01.tif': pictures.neutral(1) });
    const { code, stderr } = await evengrey(['compare', 'HEAD~1'], { cwd: top });
    assert.equal(code, 2);
    assert.match(
      stderr,
      /\(settings in "one" and "two"\)\. Nothing was compared, .*with --book, as "one"\. If all of it is one book, .*\n$/,
    );
    assert.equal((await evengrey(['compare', 'HEAD~1', '--book', 'two'], { cwd: top })).code, 0);
  });

  it('ends with code 2 and a sentence where there is nothing to compare with', async () => {
    const top = review();
    const told = async (...args: string[]) => {
      const { code, stdout, stderr } = await evengrey(args, { cwd: top });
      assert.deepEqual([code, stdout], [2, '']);
      return stderr;
    };
    assert.match(
      await told('compare', 'nowhere'),
      /^evengrey: There is no revision "nowhere" here\. "git branch --all" .*\n$/,
    );
    assert.match(await told('compare', 'main..work'), / evengrey compare main work --no-merge-base\.\n$/);
    assert.match(await told('compare', 'main', '--book', temporaryFolder()), /is in no git repository/);
    const elsewhere = repositoryOf({ 'texts/a.txt': 'no picture', 'book/1.tif': pictures.neutral(1) });
    commit(elsewhere, { 'book/1.tif': pictures.neutral(2) });
    const gate = (book: string) =>
      evengrey(['compare', 'HEAD~1', '--book', book, '--whole', '--max-warnings', '0'], { cwd: elsewhere });
    const nowhere = await gate('texts');
    assert.deepEqual([nowhere.code, nowhere.stdout, (await gate('book')).code], [2, '', 0]);
    assert.match(
      nowhere.stderr,
      /^evengrey: "texts" holds no picture of the book in either revision, so nothing was compared\. /,
    );
    git(elsewhere, 'mv', 'book', 'moved');
    commit(elsewhere);
    fs.mkdirSync(path.join(elsewhere, 'book'));
    const moved = await gate('book');
    assert.deepEqual([moved.code, moved.stdout, (await gate('moved')).code], [2, '', 0]);
    assert.match(
      moved.stderr,
      /"book" holds no picture of the book any more, .*: before, it held 1\. Where /,
    );
    const bare = path.join(temporaryFolder(), 'bare.git');
    git(top, 'clone', '--quiet', '--bare', `file://${top}`, bare);
    const inside = await evengrey(['compare', 'main', '--book', 'book'], { cwd: bare });
    assert.deepEqual([inside.code, inside.stdout], [2, '']);
    assert.match(
      inside.stderr,
      /bare\.git" is no folder of pictures, but the inside of a git repository, without its files\. Make a folder of them first \("git worktree add FOLDER" /,
    );
    const clone = path.join(temporaryFolder(), 'clone');
    git(top, 'clone', '--quiet', '--depth=1', '--no-single-branch', `file://${top}`, clone);
    const shallow = await evengrey(['compare', 'origin/main', 'origin/work'], { cwd: clone });
    assert.equal(shallow.code, 2);
    assert.match(shallow.stderr, /^evengrey: The history in this shallow clone does not reach back/);
    commit(top, { 'evengrey.json': '{\n  "proces": "inkjet"\n}' });
    assert.match(await told('compare', 'main'), /nothing was compared\.\nevengrey\.json:2:3: /);
  });

  it('refuses the settings that a check refuses, in its words, and says of which revision they are', async () => {
    const plates = { 'a.tif': pictures.neutral(1), 'book.md': '![one](a.tif)\n' };
    const top = repositoryOf({ ...settings, ...plates });
    const refused = async (files: Record<string, string>) => {
      commit(top, files);
      const [compared, checked] = await Promise.all(
        [['compare', 'HEAD~1', '--max-warnings', '0'], ['check']].map(args => evengrey(args, { cwd: top })),
      );
      assert.deepEqual([compared.code, compared.stdout, checked.code, checked.stdout], [2, '', 2, '']);
      const [first, ...lines] = compared.stderr.split('\n');
      assert.match(
        first,
        /^evengrey: The settings after have (a problem|\d problems), so nothing was compared\.$/,
      );
      assert.deepEqual(lines, checked.stderr.split('\n').slice(1), 'the same at the same places');
      return lines.join('\n');
    };
    assert.match(
      await refused({ 'evengrey.json': '{\n  "layouts": ["boook.md"]\n}' }),
      /^evengrey\.json:2:15: There is no layout "boook\.md"\. Did you mean "book\.md"\?$/m,
    );
    await refused({ 'evengrey.json': '{ "house": "none.json" }' });
    await refused({ 'evengrey.json': '{ "process": "inkjet", "layouts": ["a.tif", "../b.md"] }' });
    // what was wrong before is judged by what holds now
    commit(top, { 'evengrey.json': '{ "layouts": ["book.md"] }' });
    const mended = await evengrey(['compare', 'HEAD~1'], { cwd: top });
    assert.equal(mended.code, 0);
    assert.match(
      mended.stdout.replace(/\s+/g, ' '),
      /The settings before have 2 problems, so the pictures before are judged by the settings after\. evengrey\.json:1: "a\.tif" is no layout/,
    );
    const unsaid = await evengrey(['compare', 'HEAD~1', '--paper', 'photo-gloss'], { cwd: top });
    assert.equal(unsaid.code, 2);
    assert.match(unsaid.stderr, /^evengrey: Nobody said how this book is printed/);
  });
});
