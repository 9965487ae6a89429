import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { commit, git, repositoryOf } from '../../book/revisions/support/repository';
import { temporaryFolder } from '../../book/support/folder';
import { pictures } from '../support/book';
import { evengrey } from '../support/run';

const held = () =>
  repositoryOf({
    'evengrey.json': '{ "process": "offset-coated" }',
    '01.tif': pictures.neutral(1),
    '02.tif': pictures.neutral(2),
    '03.tif': pictures.neutral(3),
    'ends.tif': pictures.neutral(4).subarray(0, 900),
  });

const link = (top: string, name: string, target: string) => {
  fs.rmSync(path.join(top, name), { force: true });
  fs.symlinkSync(target, path.join(top, name));
};

async function told(top: string, ...args: string[]) {
  const { stdout, stderr, code } = await evengrey([...args, '--format', 'json'], { cwd: top });
  assert.equal(stderr, '');
  return { code, report: JSON.parse(stdout) };
}

interface Told {
  path: string;
  findings: { rule: string }[];
}

/** What a check says of its pictures: path and rule. */
async function found(top: string, ...args: string[]) {
  const { code, report } = await told(top, 'check', ...args);
  const rules = (report.pictures as Told[]).flatMap(({ path, findings }) =>
    findings.map(({ rule }) => `${path} ${rule}`),
  );
  const paths = [...new Set((report.pictures as Told[]).map(({ path }) => path))];
  const gone = report.notices.filter((notice: string) => notice.startsWith('Taken out'));
  return { code, rules, paths, gone };
}

describe('a picture that is replaced by a link', () => {
  for (const [where, target] of [
    ['to a picture that cannot be read', 'ends.tif'],
    ['into nothing', 'nowhere.tif'],
    ['to itself', '01.tif'],
    ['out of the book', path.join(temporaryFolder({ 'a.tif': pictures.neutral(1) }), 'a.tif')],
  ])
    it(`${where} is judged, whatever is asked`, async () => {
      const top = held();
      link(top, '01.tif', target);
      const whole = await found(top);
      assert.deepEqual([whole.code, whole.rules], [1, ['01.tif unreadable', 'ends.tif unreadable']]);
      const judged = { code: 1, rules: ['01.tif unreadable'], paths: ['01.tif'], gone: [] };
      assert.deepEqual(await found(top, '--since', 'HEAD'), judged);
      git(top, 'add', '--all');
      assert.deepEqual(await found(top, '--staged'), judged);
      commit(top);
      assert.deepEqual(await found(top, '--since', 'HEAD~1'), judged);
      const { code, report } = await told(top, 'compare', 'HEAD~1');
      const fresh = report.changes.flatMap(({ path, pages }: { path: string; pages: Compared[] }) =>
        pages.flatMap(({ findings }) => findings.new.map(({ rule }) => `${path} ${rule}`)),
      );
      assert.deepEqual([code, fresh], [1, judged.rules]);
      const { rules } = await found(top, '--since', 'HEAD');
      assert.deepEqual(rules, [], 'it is as before');
    });

  it('is not taken out of the book, also in a clone', async () => {
    const top = held();
    link(top, '01.tif', '02.tif');
    fs.mkdirSync(path.join(top, 'plates'));
    fs.renameSync(path.join(top, '03.tif'), path.join(top, 'plates/03.tif'));
    // git has no picture by the name short/03.tif: it is found behind the link, as last.tif is
    link(top, 'short', 'plates');
    link(top, 'last.tif', 'short/03.tif');
    commit(top);
    const clone = path.join(temporaryFolder(), 'clone');
    git(top, 'clone', '--quiet', top, clone);
    for (const folder of [top, clone]) {
      assert.deepEqual(await found(folder, '--since', 'HEAD'), { code: 0, rules: [], paths: [], gone: [] });
      assert.deepEqual(await found(folder, '--staged'), { code: 0, rules: [], paths: [], gone: [] });
      const { report } = await told(folder, 'compare', 'HEAD~1');
      const kinds = report.changes.map(({ kind, path }: Told & { kind: string }) => `${kind} ${path}`);
      assert.deepEqual(kinds, [
        'changed 01.tif',
        'added last.tif',
        'renamed plates/03.tif',
        'added short/03.tif',
      ]);
      assert.deepEqual(report.summary.new, { errors: 0, warnings: 0, notes: 0 });
    }
  });

  it('is judged anew where what it leads to changes, and where another folder is linked', async () => {
    const top = held();
    link(top, '01.tif', '02.tif');
    fs.mkdirSync(path.join(top, 'a'));
    fs.mkdirSync(path.join(top, 'b'));
    fs.writeFileSync(path.join(top, 'a/1.tif'), pictures.neutral(5));
    fs.writeFileSync(path.join(top, 'b/1.tif'), pictures.neutral(6));
    link(top, 'short', 'a');
    commit(top);
    fs.writeFileSync(path.join(top, '02.tif'), pictures.neutral(7));
    link(top, 'short', 'b');
    link(top, 'also', 'a');
    const { paths } = await found(top, '--since', 'HEAD');
    assert.deepEqual(paths, ['01.tif', '02.tif', 'also/1.tif', 'short/1.tif']);
    git(top, 'add', '--all');
    assert.deepEqual((await found(top, '--staged')).paths, paths);
    commit(top);
    git(top, 'rm', '--quiet', '02.tif');
    const left = await found(top, '--staged');
    assert.deepEqual([left.code, left.paths], [1, ['01.tif']], 'it leads to nothing then');
  });
});

describe('a picture that is placed through a link to a folder', () => {
  const placing = () => {
    const top = repositoryOf({
      'evengrey.json': '{ "process": "offset-coated", "rules": { "format-not-placed": "off" } }',
      'book.md': '![a](figs/a.tif)\n\n![b](figs/b.tif)\n\n![title](title.tif)\n',
      'title.tif': pictures.neutral(9),
      'pictures/a.tif': pictures.neutral(1),
      'pictures/b.tif': pictures.neutral(2),
    });
    link(top, 'figs', 'pictures/');
    commit(top);
    return top;
  };
  const fresh = async (top: string) => {
    const { code, report } = await told(top, 'compare', 'HEAD~1');
    const rules = report.changes.flatMap(({ path, pages }: { path: string; pages: Compared[] }) =>
      pages.flatMap(({ findings }) => findings.new.map(({ rule }) => `${path} ${rule}`)),
    );
    return { code, rules };
  };

  it('is shown before and after, also beside another link to the same folder, which the settings ignore', async () => {
    const top = placing();
    link(top, 'also', 'pictures');
    commit(top, { 'evengrey.json': '{ "process": "offset-coated", "ignore": ["also", "also/**"] }' });
    commit(top, { 'pictures/a.tif': pictures.neutral(5) });
    const { stdout } = await evengrey(['compare', 'HEAD~1', '--format', 'html'], { cwd: top });
    assert.match(stdout, /<h2>figs\/a\.tif<\/h2>/);
    // before, after, and among its neighbours
    assert.equal(stdout.match(/src="data:image/g)!.length, 4);
  });

  for (const [what, lose, lost] of [
    ['its file', (top: string) => fs.rmSync(path.join(top, 'pictures/a.tif')), ['figs/a.tif']],
    ['the link', (top: string) => fs.rmSync(path.join(top, 'figs')), ['figs/a.tif', 'figs/b.tif']],
    ['what the link led to', (top: string) => link(top, 'figs', 'nowhere'), ['figs/a.tif', 'figs/b.tif']],
  ] as const)
    it(`fails every gate where a commit takes away ${what}`, async () => {
      const top = placing();
      lose(top);
      const rules = lost.map(name => `${name} unreadable`);
      const judged = { code: 1, rules, paths: [...lost], gone: [] };
      assert.deepEqual((await found(top)).rules, rules);
      assert.deepEqual(await found(top, '--since', 'HEAD'), judged);
      git(top, 'add', '--all');
      assert.deepEqual(await found(top, '--staged'), judged);
      commit(top);
      assert.deepEqual(await found(top, '--since', 'HEAD~1'), judged);
      assert.deepEqual(await fresh(top), { code: 1, rules });
    });

  it('is judged by its new content, and a new one is new', async () => {
    const top = placing();
    fs.writeFileSync(path.join(top, 'pictures/a.tif'), pictures.neutral(1).subarray(0, 900));
    fs.writeFileSync(path.join(top, 'pictures/c.tif'), pictures.neutral(3).subarray(0, 900));
    fs.appendFileSync(path.join(top, 'book.md'), '\n![c](figs/c.tif)\n');
    const rules = ['figs/a.tif unreadable', 'figs/c.tif unreadable'];
    const judged = { code: 1, rules, paths: ['figs/a.tif', 'figs/c.tif'], gone: [] };
    assert.deepEqual(await found(top, '--since', 'HEAD'), judged);
    git(top, 'add', '--all');
    assert.deepEqual(await found(top, '--staged'), judged);
    commit(top);
    assert.deepEqual(await fresh(top), { code: 1, rules });
    assert.deepEqual((await found(top, '--since', 'HEAD')).paths, [], 'nothing changed since');
  });
});

interface Compared {
  findings: { new: { rule: string }[] };
}
