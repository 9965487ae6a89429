import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { checkReportSchema } from '../../../src/report/json/check-schema';
import { repositoryOf } from '../../book/revisions/support/repository';
import { temporaryFolder, write } from '../../book/support/folder';
import { strictErrors } from '../../report/support';
import { evenBook, pictures } from '../support/book';
import { evengrey } from '../support/run';

const POINTER = `version https://git-lfs.github.com/spec/v1\noid sha256:${'1'.repeat(64)}\nsize 12345\n`;

/** Four pictures alike, one stored unlike them, and one that is not fetched. */
function mixedBook(): string {
  const root = evenBook();
  write(root, { 'plates/05.tif': pictures.blackOnly(5), 'plates/06.tif': POINTER });
  return root;
}

/** So old that their times prove what they hold. */
async function aged(root: string): Promise<void> {
  const past = new Date(Date.now() - 60_000);
  for (const name of fs.readdirSync(path.join(root, 'plates')))
    fs.utimesSync(path.join(root, 'plates', name), past, past);
  await new Promise(resolve => setTimeout(resolve, 150));
}

async function checked(cwd: string, args: string[], env: Record<string, string> = {}) {
  const ran = await evengrey(['check', ...args, '--format', 'json'], { cwd, env });
  assert.equal(ran.stderr, '');
  const report = JSON.parse(ran.stdout);
  assert.equal(strictErrors(checkReportSchema, report), '');
  const said = [...report.findings, ...report.pictures.flatMap((p: { findings: object[] }) => p.findings)];
  return { report, rules: said.map(({ rule }: { rule: string }) => rule) };
}

describe('evengrey check PICTURE', () => {
  it('says that the others of the book were not compared as long as they are not known', async () => {
    const root = mixedBook();
    const { report, rules } = await checked(root, ['plates/05.tif']);
    assert.deepEqual(report.scope, { which: 'named', unread: 5, beyond: [] });
    assert.ok(!rules.includes('mixed-encodings'));
    assert.equal(report.notices.length, 1);
    assert.match(report.notices[0], /^Only what is named was checked: 1 picture\. The 5 others were not/);
    const { stdout } = await evengrey(['check', '05.tif'], { cwd: path.join(root, 'plates') });
    assert.match(stdout, /^Nothing in this file stands .* by itself; 5 other\spictures of the book were not/);
  });

  it('says of it what what a check of the whole book recommends, once that remembers the others or where it is told to read them', async () => {
    const root = mixedBook();
    await aged(root);
    const env = { EVENGREY_CACHE_DIR: temporaryFolder() };
    const book = await checked(root, ['.'], env);
    assert.equal(book.report.scope, null);
    const remembered = await checked(root, ['plates/05.tif'], env);
    const read = await checked(root, ['plates/05.tif', '--whole']);
    assert.deepEqual(remembered.report, read.report);
    assert.ok(remembered.rules.includes('mixed-encodings'));
    const of = (report: { pictures: { path: string }[] }) =>
      report.pictures.filter(({ path }) => path === 'plates/05.tif');
    assert.deepEqual(of(remembered.report), of(book.report));
    assert.deepEqual(remembered.report.scope, { which: 'named', unread: 0, beyond: [] });
    // one picture that is new makes the set unknown again
    write(root, { 'plates/07.tif': pictures.neutral(7) });
    assert.equal((await checked(root, ['plates/05.tif'], env)).report.scope.unread, 6);
  });

  it('takes nothing for a book that no settings call one', async () => {
    const root = temporaryFolder({ 'a.tif': pictures.neutral(1), 'b.tif': pictures.blackOnly(2) });
    const { report } = await checked(root, ['a.tif']);
    assert.equal(report.scope, null);
    assert.match(report.notices[0], /no evengrey\.json says which book it belongs to/);
    const [sizes, ...others] = (await checked(root, ['.'])).report.notices;
    assert.match(sizes, /few pixels/);
    assert.deepEqual(others, []);
  });

  it('compares what changed in a named folder with the whole book too', async () => {
    const top = repositoryOf({
      'evengrey.json': '{ "process": "offset-coated" }',
      ...Object.fromEntries([1, 2, 3, 4].map(i => [`plates/0${i}.tif`, pictures.neutral(i)])),
    });
    write(top, { 'more/05.tif': pictures.blackOnly(5) });
    const { report, rules } = await checked(top, ['more', '--since', 'HEAD', '--whole']);
    assert.deepEqual([report.scope.unread, rules.includes('mixed-encodings')], [0, true]);
    assert.equal((await checked(top, ['more', '--since', 'HEAD'])).report.scope.unread, 4);
  });

  it('takes an empty path, as of a variable that is not set, for no folder', async () => {
    const cwd = evenBook();
    const before = fs.readdirSync(cwd, { recursive: true }).sort();
    for (const args of [
      ['check', ''],
      ['check', 'plates', ''],
      ['check', '--settings', ''],
      ['check', '--output', ''],
      ['convert', '', '--to', 'single-channel', '--in-place'],
      ['convert', '--undo', ''],
      ['compare', 'HEAD', '--book', ''],
      ['demo', ''],
      ['forecast', ''],
    ]) {
      const ran = await evengrey(args, { cwd });
      assert.deepEqual([ran.code, ran.stdout], [2, ''], args.join(' '));
      assert.match(ran.stderr, /^evengrey: An empty path was named\. /, args.join(' '));
    }
    assert.deepEqual(fs.readdirSync(cwd, { recursive: true }).sort(), before);
  });

  it('has no use for --whole where the whole book is named', async () => {
    const ran = await evengrey(['check', '--whole'], { cwd: evenBook() });
    assert.equal(ran.code, 2);
    assert.match(ran.stderr, /--whole goes with --since, --staged or named pictures/);
  });
});
