import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { checkReportSchema } from '../../../src/report/json/check-schema';
import { temporaryFolder } from '../../book/support/folder';
import { strictErrors } from '../../report/support';
import { evenBook, faultyBook, pictures } from '../support/book';
import { golden } from '../support/golden';
import { evengrey } from '../support/run';

describe('evengrey check', () => {
  it('tells of a faulty book what is wrong and what to do, and fails', async () => {
    const ran = await evengrey(['check', faultyBook()]);
    golden('check/faulty.txt', ran.stdout);
    assert.deepEqual([ran.code, ran.stderr], [1, '']);
  });

  it('passes an even book, with one note for all of it', async () => {
    const ran = await evengrey(['check', '.'], { cwd: evenBook() });
    golden('check/even.txt', ran.stdout);
    assert.deepEqual([ran.code, ran.stderr], [0, '']);
  });

  it('forecasts nothing where nobody said how the book is printed', async () => {
    const ran = await evengrey(['check'], { cwd: evenBook({}) });
    golden('check/no-target.txt', ran.stdout);
    assert.equal(ran.code, 0);
  });

  it('says of a route that cannot be what is forecast instead', async () => {
    const cwd = evenBook({ process: 'silver-halide', route: 'separated' });
    const { stdout } = await evengrey(['check'], { cwd });
    golden('check/route.txt', stdout);
    const { notices } = JSON.parse((await evengrey(['check', '--format', 'json'], { cwd })).stdout);
    assert.equal(
      notices[0],
      'The target "book": the route "separated" cannot apply on silver halide: forecast there as "rgb".',
    );
  });

  it('finds the book of a picture named from anywhere, and checks that picture alone', async () => {
    const root = evenBook();
    const { stdout } = await evengrey(['check', '02.tif', '--format', 'json'], {
      cwd: path.join(root, 'plates'),
    });
    const report = JSON.parse(stdout);
    assert.deepEqual(
      report.pictures.map((p: { path: string }) => p.path),
      ['plates/02.tif'],
    );
    assert.equal(report.book.targets[0].process, 'offset-coated');
  });

  it('writes the same JSON to the byte, cold, warm, without a cache and one by one, as its schema says', async () => {
    const root = faultyBook();
    const env = { EVENGREY_CACHE_DIR: temporaryFolder() };
    const args = ['check', root, '--format', 'json'];
    const cold = await evengrey(args, { env });
    assert.equal(strictErrors(checkReportSchema, JSON.parse(cold.stdout)), '');
    assert.ok(!cold.stdout.includes(root), 'no absolute path');
    for (const more of [[], ['--no-cache'], ['--jobs', '1']])
      assert.equal((await evengrey([...args, ...more], { env })).stdout, cold.stdout, more.join(' '));
  });

  it('reads the exact values', async () => {
    const root = temporaryFolder({ 'k.tif': pictures.blackOnly(1), 'n.tif': pictures.neutral(1) });
    const { stdout } = await evengrey(['check', root, '--format', 'json']);
    const [k, n] = JSON.parse(stdout).pictures;
    assert.deepEqual([k.encoding, k.channels, k.bits, k.width, k.height], ['black-only', 4, 8, 96, 64]);
    assert.deepEqual([k.levels[0].max, k.levels[3].min, k.levels[3].max], [0, 10, 245]);
    assert.deepEqual([n.encoding, n.levels[0].min, n.levels[2].max], ['rgb-neutral', 10, 245]);
  });

  it('prints under other conditions than the settings’', async () => {
    const root = evenBook();
    const args = ['check', root, '--process', 'inkjet', '--light', 'A', '--format', 'json'];
    const { book, pictures: checked } = JSON.parse((await evengrey(args)).stdout);
    assert.deepEqual(
      book.targets.map((t: { process: string; light: string }) => [t.process, t.light]),
      [['inkjet', 'A']],
    );
    assert.equal(checked[0].forecast[0].condition.process, 'inkjet');
  });

  it('fails on more warnings than are allowed', async () => {
    const root = evenBook();
    fs.writeFileSync(path.join(root, 'plates/05.tif'), pictures.blackOnly(5));
    const cwd = { cwd: root };
    assert.equal((await evengrey(['check'], cwd)).code, 0);
    assert.equal((await evengrey(['check', '--max-warnings', '1'], cwd)).code, 0);
    const strict = await evengrey(['check', '--max-warnings', '0'], cwd);
    assert.deepEqual([strict.code, strict.stderr], [1, '1 warning is more than --max-warnings 0 allows.\n']);
  });

  it('writes the report where it is told to, never over a picture or settings', async () => {
    const root = evenBook();
    const { code, stdout } = await evengrey(['check', '--output', 'report.txt'], { cwd: root });
    assert.deepEqual([code, stdout], [0, '']);
    assert.match(
      fs.readFileSync(path.join(root, 'report.txt'), 'utf8'),
      /^Nothing in the files stands against/,
    );
    fs.renameSync(path.join(root, 'plates/01.tif'), path.join(root, 'scan'));
    const before = fs.readFileSync(path.join(root, 'scan'));
    for (const output of ['scan', 'new.png', 'evengrey.json', 'plates', 'no-folder/report.txt']) {
      const ran = await evengrey(['check', '--output', output], { cwd: root });
      assert.equal(ran.code, 2, output);
      assert.match(ran.stderr, /^evengrey: /);
    }
    assert.deepEqual(fs.readFileSync(path.join(root, 'scan')), before);
    assert.equal(fs.readFileSync(path.join(root, 'evengrey.json'), 'utf8'), '{"process":"offset-coated"}');
    assert.ok(!fs.existsSync(path.join(root, 'new.png')));
  });

  it('works without a cache folder, and says that it did', async () => {
    const blocked = path.join(temporaryFolder({ file: '' }), 'file');
    const ran = await evengrey(['check', evenBook()], { env: { EVENGREY_CACHE_DIR: blocked } });
    assert.equal(ran.code, 0);
    assert.match(ran.stderr, /^The cache could not be kept/);
  });

  it('does not pass where it looked at nothing', async () => {
    const root = evenBook();
    fs.mkdirSync(path.join(root, 'empty'));
    const none = await evengrey(['check', 'empty', '--format', 'json'], { cwd: root });
    assert.equal(none.code, 2);
    assert.match(
      none.stderr,
      /^evengrey: "empty" holds no picture of the book, so nothing was checked there\. /,
    );
    assert.deepEqual(JSON.parse(none.stdout).pictures, []);
    const some = await evengrey(['check', 'plates', 'empty'], { cwd: root });
    assert.equal(some.code, 2);
    assert.equal((await evengrey(['check'], { cwd: temporaryFolder() })).code, 2);
  });

  it('keeps nothing in the book', async () => {
    const root = evenBook();
    const list = () => fs.readdirSync(root, { recursive: true }).sort();
    const before = list();
    await evengrey(['check', root]);
    assert.deepEqual(list(), before);
  });

  it('mixes no books: a folder of several is none, and names them', async () => {
    const book = (name: string) => ({
      [`${name}/evengrey.json`]: '{ "process": "inkjet" }',
      [`${name}/1.tif`]: pictures.neutral(1),
    });
    const shelf = temporaryFolder({ ...book('two'), ...book('one'), 'loose/1.tif': pictures.neutral(2) });
    const both = await evengrey(['check', '.', '--format', 'github'], { cwd: shelf });
    assert.equal(both.code, 2);
    const words =
      '"." has no evengrey.json, and 2 different books lie below it (settings in "one" and "two"). Nothing was checked, since they would be judged as one, by settings of none. Check one book at a time: name its folder, as "one". If all of it is one book, put an evengrey.json above the others: {} is enough.';
    assert.equal(both.stderr, `evengrey: ${words}\n`);
    assert.equal(both.stdout, `::error title=Evengrey::${words}\nNothing was checked.\n`);
    assert.equal((await evengrey(['check', 'one'], { cwd: shelf })).code, 0);
    assert.equal((await evengrey(['check', 'loose'], { cwd: shelf })).code, 0);
    const named = await evengrey(['check', '.', '--settings', 'two/evengrey.json'], { cwd: shelf });
    assert.equal(named.code, 0, 'settings that are named hold for all that is named');
    fs.rmSync(path.join(shelf, 'two'), { recursive: true });
    const one = await evengrey(['check'], { cwd: shelf });
    assert.equal(one.code, 2);
    assert.match(one.stderr, /and a book lies below it \(settings in "one"\)/);
  });

  it('says of a book within a book that it was judged by the outer one, until it is left out', async () => {
    const root = evenBook();
    fs.mkdirSync(path.join(root, 'plates/inner'));
    fs.writeFileSync(path.join(root, 'plates/inner/evengrey.json'), '{}');
    fs.writeFileSync(path.join(root, 'plates/inner/1.tif'), pictures.neutral(7));
    const told = async () => {
      const { pictures, notices } = JSON.parse(
        (await evengrey(['check', '--format', 'json'], { cwd: root })).stdout,
      );
      return [
        pictures.length,
        notices.filter((notice: string) => notice.includes('evengrey.json of its own')).length,
      ];
    };
    assert.deepEqual(await told(), [5, 1]);
    fs.writeFileSync(
      path.join(root, 'evengrey.json'),
      '{ "process": "offset-coated", "ignore": ["plates/inner/**"] }',
    );
    assert.deepEqual(await told(), [4, 0]);
  });
});
