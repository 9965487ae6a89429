import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { checkBook } from '../../../src/book/check';
import { FOLDER } from '../../../src/book/comparison/ends';
import { openRepository } from '../../../src/book/git/repository';
import { snapshotOf, treeOf } from '../../../src/book/git/snapshot';
import { loadSettings } from '../../../src/book/settings/load';
import { byNumber, headline } from '../../../src/report/compare/headline';
import type { Comparison } from '../../../src/shared/comparison';
import {
  book,
  checkedBook,
  compared,
  neutral,
  picture,
  pool,
  rulesOf,
  settings,
} from '../revisions/support/compared';
import { commit, git, repositoryOf } from '../revisions/support/repository';
import { write } from '../support/folder';

const LED = ['plates/nowhere.tif unreadable', 'plates/out.tif unreadable'];
const NONE = { errors: 0, warnings: 0, notes: 0 };
const inFolder = (folder: string, files: Record<string, string>) =>
  Object.fromEntries(Object.entries(files).map(([name, text]) => [`${folder}/${name}`, text]));

describe('comparing revisions', () => {
  it('reads nothing but what changed: of 200 pictures and 30 changed, 60 contents', async () => {
    const top = repositoryOf({ ...settings, ...book(200) });
    const changed = Object.fromEntries(Object.keys(book(30)).map((name, i) => [name, neutral(`new ${i}`)]));
    commit(top, changed);
    const comparison = await compared(top);
    assert.equal(comparison.read.length, 60);
    assert.deepEqual([comparison.scope, comparison.unread, comparison.changes.length], ['changes', 170, 30]);
    assert.ok(comparison.changes.every(({ kind }) => kind === 'changed'));
  });

  it('is exact on renames and modes: reads a renamed content once, and none of which only the mode changed', async () => {
    const top = repositoryOf({ ...settings, ...book(4) });
    fs.renameSync(path.join(top, 'plates/001.tif'), path.join(top, 'plates/new.tif'));
    fs.chmodSync(path.join(top, 'plates/002.tif'), 0o755);
    fs.rmSync(path.join(top, 'plates/003.tif'));
    commit(top, { 'text.md': 'not a picture' });
    const comparison = await compared(top);
    assert.deepEqual(
      comparison.changes.map(({ kind, path, from, modes }) => [kind, path, from, modes]),
      [
        ['mode', 'plates/002.tif', null, { before: '100644', after: '100755' }],
        ['deleted', 'plates/003.tif', null, null],
        ['renamed', 'plates/new.tif', 'plates/001.tif', null],
      ],
    );
    assert.deepEqual(comparison.read.map(text => text.slice(0, 13)).sort(), [
      'rgb-neutral 0',
      'rgb-neutral 2',
    ]);
    assert.deepEqual(comparison.summary.changes, {
      added: 0,
      deleted: 1,
      changed: 0,
      renamed: 1,
      moved: 0,
      mode: 1,
    });
  });

  it('judges the set where all unchanged pictures are known from a check, and reads none of them for it', async () => {
    const { top, checked } = checkedBook();
    const cache = await checked();
    commit(top, { 'plates/006.tif': picture('black-only', 1) });

    const comparison = await compared(top, { cache });
    assert.deepEqual([comparison.scope, comparison.unread], ['book', 0]);
    assert.deepEqual(
      comparison.read.map(text => text.slice(0, 12)),
      ['black-only 1'],
    );
    assert.deepEqual(
      rulesOf(comparison, 'new').filter(rule => /mixed/.test(rule)),
      ['plates/006.tif mixed-encodings'],
    );
    const [{ pages, neighbours }] = comparison.changes;
    assert.deepEqual(neighbours, { before: 'plates/005.tif', after: null, beside: [] });
    const [match] = pages[0].matches;
    assert.deepEqual([match.target, match.verdict, match.rules], ['book', 'differs', ['mixed-encodings']]);

    const again = await compared(top, { cache });
    assert.deepEqual({ ...again, read: [] }, { ...comparison, read: [] });
    assert.deepEqual(again.read, [], 'known by its name in git');
  });

  it('says nothing of the set where one unchanged picture is not known, unless all are to be read', async () => {
    const { top, checked } = checkedBook();
    const cache = await checked(Object.keys(book(4)));
    commit(top, { 'plates/006.tif': picture('black-only', 1) });
    const some = await compared(top, { cache });
    assert.deepEqual([some.scope, some.unread], ['changes', 5]);
    assert.deepEqual(
      rulesOf(some, 'new').filter(rule => /mixed/.test(rule)),
      [],
    );
    assert.deepEqual(
      some.changes[0].pages[0].matches.map(({ verdict }) => verdict),
      ['unknown'],
    );
    const whole = await compared(top, { whole: true });
    assert.deepEqual([whole.scope, whole.read.length], ['book', 6]);
    assert.deepEqual(
      rulesOf(whole, 'new').filter(rule => /mixed/.test(rule)),
      ['plates/006.tif mixed-encodings'],
    );
  });

  it('tells what is new, what ended and what stayed, for others too that changed places with the majority', async () => {
    const top = repositoryOf({
      ...settings,
      'a.tif': neutral(1),
      'b.tif': neutral(2),
      'c.tif': picture('black-only', 3),
    });
    commit(top, { 'b.tif': picture('black-only', 4) });
    const comparison = await compared(top, { whole: true });
    const mixed = (rules: string[]) => rules.filter(rule => /mixed/.test(rule));
    assert.deepEqual(mixed(rulesOf(comparison, 'new')), []);
    assert.deepEqual(
      comparison.others.map(({ path, findings }) => [
        path,
        findings.new.map(f => f.rule),
        findings.ended.map(f => f.rule),
      ]),
      [
        ['a.tif', ['mixed-encodings'], []],
        ['c.tif', [], ['mixed-encodings']],
      ],
    );
    assert.deepEqual(comparison.summary.new.warnings, 1);
  });

  it('judges either side by its own settings', async () => {
    const top = repositoryOf({ ...settings, ...book(3), 'drafts/1.tif': neutral('draft') });
    commit(top, {
      'evengrey.json': '{ "process": "silver-halide", "ignore": "drafts/**" }',
      'plates/001.tif': neutral('new'),
    });
    const { changes, base, head } = await compared(top);
    assert.deepEqual([base.targets[0].process, head.targets[0].process], ['offset-coated', 'silver-halide']);
    assert.deepEqual(
      changes.map(({ kind, path }) => [kind, path]),
      [
        ['deleted', 'drafts/1.tif'],
        ['changed', 'plates/001.tif'],
      ],
    );
    const [{ before, after }] = changes[1].pages;
    assert.deepEqual(
      [before, after].map(side => side?.forecasts[0].condition.process),
      ['offset-coated', 'silver-halide'],
    );
    const inkjet = await compared(top, { conditions: { process: 'inkjet' } });
    assert.deepEqual(
      [inkjet.base, inkjet.head].map(side => side.targets[0].process),
      ['inkjet', 'inkjet'],
    );
  });

  it('borrows settings where those before were broken, and says so', async () => {
    const top = repositoryOf({ 'evengrey.json': '{ "proces": 1 }', ...book(1) });
    commit(top, { ...settings, 'plates/001.tif': neutral('new') });
    const { notices, base } = await compared(top);
    assert.equal(base.targets[0].process, 'offset-coated');
    assert.match(
      notices[0],
      /^The settings before have a problem, so the pictures before are judged by the settings after\. evengrey\.json:1: .*"proces"/,
    );
    await assert.rejects(
      compared(top, { base: 'HEAD', head: 'HEAD~1', fromMergeBase: false }),
      /settings have problems/,
    );
  });

  it('starts from where the two parted, or from the revision itself', async () => {
    const top = repositoryOf({ ...settings, ...book(2) });
    git(top, 'checkout', '--quiet', '-b', 'work');
    commit(top, { 'plates/002.tif': neutral('work') });
    git(top, 'checkout', '--quiet', 'main');
    commit(top, { 'plates/001.tif': neutral('main') });
    const paths = ({ changes }: Comparison) => changes.map(({ path }) => path);
    const parted = await compared(top, { base: 'main', head: 'work' });
    assert.deepEqual([paths(parted), parted.mergeBase], [['plates/002.tif'], true]);
    const itself = await compared(top, { base: 'main', head: 'work', fromMergeBase: false });
    assert.deepEqual([paths(itself), itself.mergeBase], [['plates/001.tif', 'plates/002.tif'], false]);
  });

  it('tells submodules instead of following them, and a link into one', async () => {
    const top = repositoryOf({ ...settings, ...book(1) });
    git(top, 'submodule', '--quiet', 'add', repositoryOf({ 'p.tif': neutral(1) }), 'inner');
    fs.symlinkSync('../inner/p.tif', path.join(top, 'plates/link.tif'));
    commit(top);
    const { notices, changes, read, beyond } = await compared(top);
    assert.deepEqual([changes, read, beyond], [[], [], ['inner']]);
    assert.deepEqual(notices, [
      '"inner" is a submodule: pictures in it belong to another repository and are not compared.',
      '"plates/link.tif" is a symbolic link that is not followed: it leads into a submodule.',
    ]);
    fs.rmSync(path.join(top, 'plates/link.tif'));
    commit(top);
    assert.match(
      (await compared(top)).notices[0],
      /"plates\/link\.tif" is a symbolic link.* not there any more\.$/,
    );
  });

  it('misses no picture that a layout places in a submodule, and says that nobody looked at it', async () => {
    const top = repositoryOf({ ...settings, ...book(1) });
    git(top, 'submodule', '--quiet', 'add', repositoryOf({ 'p.tif': neutral(1) }), 'inner');
    commit(top, { 'book.md': '![](plates/001.tif)\n\n![](inner/p.tif)\n\n![](inner/q.tif)\n' });
    const { notices, head, missing } = await compared(top).then(of => ({
      ...of,
      missing: of.changes.filter(({ path }) => path.startsWith('inner')),
    }));
    assert.deepEqual([missing, head.pictures], [[], 1]);
    assert.match(
      notices.join('\n'),
      /inner\/p\.tif and inner\/q\.tif lie in submodules and were not looked at: /,
    );
    assert.doesNotMatch(notices.join('\n'), /left out/);
  });

  it('judges a link that leads out of the book, or to nothing, as a check of the folder does', async () => {
    const top = repositoryOf({ ...settings, ...book(1) });
    fs.symlinkSync('../../001.tif', path.join(top, 'plates/out.tif'));
    fs.symlinkSync('nowhere.tif', path.join(top, 'plates/nowhere.tif'));
    commit(top);
    const came = await compared(top);
    assert.deepEqual([rulesOf(came, 'new'), came.notices], [LED, []]);
    fs.rmSync(path.join(top, 'plates/out.tif'));
    fs.rmSync(path.join(top, 'plates/nowhere.tif'));
    commit(top);
    const went = await compared(top);
    assert.deepEqual([rulesOf(went, 'ended'), went.notices], [LED, []]);
  });

  it('follows a link to another picture of the book, as a check of the folder does', async () => {
    const top = repositoryOf({ ...settings, ...book(3) });
    const at = path.join(top, 'plates/003.tif');
    fs.rmSync(at);
    fs.symlinkSync('001.tif', at);
    commit(top);
    const linked = await compared(top, { whole: true });
    const kinds = ({ changes }: Comparison) => changes.map(({ kind, path }) => `${kind} ${path}`);
    assert.deepEqual([kinds(linked), linked.head.pictures], [['changed plates/003.tif'], 3]);
    assert.deepEqual(linked.notices, [
      '"plates/003.tif" is no file of its own any more, but a link to "plates/001.tif", and prints as that does.',
    ]);
    const { settings: read } = await loadSettings(top);
    const checked = await checkBook({ root: top, paths: [top], settings: read!, pool: pool(), cache: null });
    const { new: fresh, unchanged } = linked.summary;
    assert.deepEqual(
      [fresh.errors + unchanged.errors, fresh.warnings + unchanged.warnings, fresh.notes + unchanged.notes],
      [checked.summary.errors, checked.summary.warnings, checked.summary.notes],
    );
    // what it leads to changes, and the link itself does not
    commit(top, { 'plates/001.tif': picture('black-only', 1) });
    const behind = await compared(top);
    assert.deepEqual(
      [kinds(behind), behind.notices],
      [['changed plates/001.tif', 'changed plates/003.tif'], []],
    );
    fs.rmSync(at);
    commit(top, { 'plates/003.tif': neutral(2) });
    assert.deepEqual((await compared(top)).notices, [
      '"plates/003.tif" is a file of its own now. Before, it was a link to "plates/001.tif".',
    ]);
  });

  it('compares a book in a folder of its repository, and one that is new there', async () => {
    const top = repositoryOf({ 'other.tif': neutral('other') });
    const off = '{ "process": "offset-coated", "rules": { "untagged": "off" } }';
    const files = { 'evengrey.json': off, ...book(2) };
    commit(top, Object.fromEntries(Object.entries(files).map(([name, text]) => [`books/one/${name}`, text])));
    write(top, { 'books/one/plates/001.tif': 'not committed' });
    const comparison = await compared(path.join(top, 'books/one'));
    const { changes, settings: told, notices } = comparison;
    assert.deepEqual(
      changes.map(({ kind, path }) => `${kind} ${path}`),
      ['added plates/001.tif', 'added plates/002.tif'],
    );
    assert.deepEqual([told.changes, told.off], [[], undefined], 'what was not there has not changed');
    assert.match(
      headline(comparison),
      /^Before, there was nothing in the book's folder under its name now, so all of it is new: /,
    );
    assert.deepEqual(notices, [], 'which is said first');
  });

  it('follows a folder that was renamed, and tells so', async () => {
    const files = { ...settings, ...book(5), 'cover/a.tif': picture('black-only', 'cover') };
    const top = repositoryOf({ 'other.tif': neutral('other'), ...inFolder('old', files) });
    git(top, 'mv', 'old', 'new');
    commit(top);
    const same = await compared(path.join(top, 'new'), { whole: true });
    assert.deepEqual([same.changes, same.others, same.summary.new], [[], [], NONE]);
    assert.deepEqual([same.base.folderThen, same.isFirst], ['old', undefined]);
    const there = await snapshotOf(await openRepository(path.join(top, 'new')), treeOf(same.base));
    assert.deepEqual([...there.keys()].sort(), Object.keys(files).sort(), 'what a page shows of it');
    assert.equal(
      headline(same),
      'Nothing new stands against printing. No picture of the book changed, but its folder was renamed from old.',
    );

    fs.renameSync(path.join(top, 'new/plates/001.tif'), path.join(top, 'new/plates/009.tif'));
    commit(top, { 'new/plates/002.tif': neutral('other') });
    const later = await compared(path.join(top, 'new'), { base: 'HEAD~2', whole: true });
    assert.deepEqual(
      later.changes.map(({ kind, path, from }) => [kind, path, from]),
      [
        ['changed', 'plates/002.tif', null],
        ['renamed', 'plates/009.tif', 'plates/001.tif'],
      ],
    );
    assert.match(headline(later), / 2 pictures: 1 changed and 1 renamed; the folder was renamed from old\.$/);
    assert.doesNotMatch(
      headline(later, byNumber),
      /renamed from/,
      'no name where it could be taken for a command',
    );
    fs.cpSync(path.join(top, 'new'), path.join(top, 'copy'), { recursive: true });
    commit(top);
    const copy = await compared(path.join(top, 'copy'), { whole: true });
    assert.deepEqual([copy.isFirst, copy.base.folderThen], [true, undefined], 'the other is still there');

    const scans = repositoryOf({ 'other.tif': neutral('other'), ...inFolder('scans', book(3)) });
    git(scans, 'mv', 'scans', 'one');
    commit(scans, inFolder('one', settings));
    const made = await compared(path.join(scans, 'one'), { whole: true });
    assert.deepEqual([made.isFirst, made.base.folderThen], [true, undefined], 'that was no book');
  });

  it('follows a book that moved from the top of its repository into a folder, and no other', async () => {
    const moving = async (stays: Record<string, string>) => {
      const top = repositoryOf({ ...settings, ...book(3), 'readme.txt': 'stays' });
      fs.mkdirSync(path.join(top, 'one'));
      for (const name of ['evengrey.json', 'plates'])
        fs.renameSync(path.join(top, name), path.join(top, 'one', name));
      fs.rmSync(path.join(top, 'one/plates/002.tif'));
      commit(top, stays);
      return compared(path.join(top, 'one'), { whole: true });
    };
    const moved = await moving({});
    assert.deepEqual([moved.base.folderThen, moved.isFirst, moved.base.pictures], ['', undefined, 3]);
    assert.deepEqual(
      moved.changes.map(({ kind, path }) => `${kind} ${path}`),
      ['deleted plates/002.tif'],
    );
    assert.match(headline(moved), /1 gone; the folder was the top of the repository before\.$/);
    const split = await moving(settings);
    assert.deepEqual([split.base.folderThen, split.isFirst], [undefined, true], 'a book is still there');
  });

  it('goes by the layouts of either side: what they place is the book, and what they place in vain is new', async () => {
    const layout = (...names: string[]) => names.map(name => `![plate](plates/${name}.tif)\n`).join('\n');
    const top = repositoryOf({ ...settings, ...book(4), 'book.md': layout('001', '002') });
    fs.rmSync(path.join(top, 'plates/002.tif'));
    commit(top, {
      'plates/004.tif': neutral('not placed'),
      'book.md': layout('001', '002', '003', 'nowhere'),
    });
    const { changes, notices, summary } = await compared(top);
    assert.deepEqual(
      changes.map(({ kind, path, pages }) => [
        kind,
        path,
        pages[0].findings.new.filter(f => f.severity === 'error').map(f => f.rule),
      ]),
      [
        ['deleted', 'plates/002.tif', ['unreadable']],
        ['added', 'plates/003.tif', []],
        ['added', 'plates/nowhere.tif', ['unreadable']],
      ],
    );
    assert.deepEqual(notices, ['"plates/004.tif" is placed by no layout, so it is not in the book.']);
    assert.equal(summary.new.errors, 2);
    commit(top, { 'plates/005.tif': neutral(5), 'plates/006.tif': neutral(6) });
    assert.deepEqual((await compared(top)).notices, [
      '"plates/005.tif" and "plates/006.tif" are placed by no layout, so they are not in the book.',
    ]);
    git(top, 'mv', 'plates/005.tif', 'plates/five.tif');
    fs.rmSync(path.join(top, 'plates/004.tif'));
    commit(top);
    assert.deepEqual((await compared(top)).notices, [
      '"plates/five.tif", renamed from "plates/005.tif", is placed by no layout, so it is not in the book.',
      '"plates/004.tif" is not there any more. No layout placed it, so the book did not have it.',
    ]);
  });

  it('tells a picture whose name a layout still has, after it was renamed, as one that is missing', async () => {
    const top = repositoryOf({
      ...settings,
      ...book(2),
      'book.md': '![a](plates/001.tif)\n\n![b](plates/002.tif)\n',
    });
    git(top, 'mv', 'plates/001.tif', 'plates/one.tif');
    commit(top);
    const [old] = (await compared(top)).changes.filter(({ path }) => path === 'plates/001.tif');
    assert.deepEqual(
      [old.pages[0].before?.facts.encoding, old.pages[0].after?.facts.unreadable?.reason],
      ['rgb-neutral', 'missing'],
    );
  });

  it('compares with what lies in the folder, committed, staged or neither, and leaves the repository as it is', async () => {
    const top = repositoryOf({ ...settings, ...book(5), '.gitignore': 'drafts/' });
    write(top, {
      'plates/001.tif': picture('black-only', 1),
      'plates/006.tif': `rgb-neutral ${'new '.repeat(400)}`,
      'drafts/a.tif': neutral('draft'),
    });
    git(top, 'mv', 'plates/002.tif', 'plates/020.tif');
    fs.rmSync(path.join(top, 'plates/003.tif'));
    const state = () => [
      git(top, 'status', '--porcelain'),
      git(top, 'count-objects', '-v'),
      git(top, 'ls-files', '--stage'),
    ];
    const before = state();
    const { changes, head, read } = await compared(top, { base: 'HEAD', head: FOLDER, whole: true });
    assert.deepEqual(
      changes.map(({ kind, path, from }) => [kind, path, from]),
      [
        ['changed', 'plates/001.tif', null],
        ['deleted', 'plates/003.tif', null],
        ['added', 'plates/006.tif', null],
        ['renamed', 'plates/020.tif', 'plates/002.tif'],
      ],
    );
    assert.equal(changes[0].pages[0].after?.facts.encoding, 'black-only');
    assert.deepEqual([head.folder, head.asked, head.pictures], [true, null, 5]);
    assert.ok(read.includes(picture('black-only', 1)));
    assert.deepEqual(state(), before);
  });
});
