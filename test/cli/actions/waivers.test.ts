import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { checkReportSchema } from '../../../src/report/json/check-schema';
import { commit, git, repositoryOf } from '../../book/revisions/support/repository';
import { temporaryFolder, write } from '../../book/support/folder';
import { strictErrors } from '../../report/support';
import { evenBook, pictures } from '../support/book';
import { golden } from '../support/golden';
import { evengrey } from '../support/run';
import { tiff } from '../support/tiff';

const FILE = '.evengrey-waivers.json';

/** A grey with so much more red, green and blue. */
const cast = (...more: number[]) =>
  tiff(96, 64, (x, y) => more.map(one => Math.min(255, 40 + x * 2 + (y % 7) + one)));

/** A book of four alike and an odd one. */
function oddBook(): string {
  const root = evenBook();
  fs.writeFileSync(path.join(root, 'plates/05.tif'), pictures.blackOnly(5));
  return root;
}
const strict = (cwd: string, ...more: string[]) =>
  evengrey(['check', '--max-warnings', '0', ...more], { cwd });
const read = (root: string) => JSON.parse(fs.readFileSync(path.join(root, FILE), 'utf8'));

describe('evengrey check --waive', () => {
  it('writes what stands, which then fails no more, and is told on demand', async () => {
    const root = oddBook();
    assert.equal((await strict(root)).code, 1);
    const waived = await strict(root, '--waive');
    assert.deepEqual(
      [waived.code, waived.stderr],
      [0, `${FILE}: 1 finding waived. Say there why, and commit the file.\n`],
    );
    golden(
      'waivers/file.json',
      fs.readFileSync(path.join(root, FILE), 'utf8').replace(/[0-9a-f]{64}/g, 'SHA-256'),
    );
    const file = read(root);
    file.waivers[0].reason = 'The house prints it on black ink, by agreement.';
    fs.writeFileSync(path.join(root, FILE), JSON.stringify(file));
    const after = await strict(root);
    assert.deepEqual([after.code, after.stderr], [0, '']);
    golden('waivers/hidden.txt', after.stdout);
    golden('waivers/shown.txt', (await strict(root, '--show-waived')).stdout);
  });

  it('marks waived findings in JSON, and counts them apart', async () => {
    const root = oddBook();
    await strict(root, '--waive');
    const report = JSON.parse((await strict(root, '--format', 'json')).stdout);
    assert.equal(strictErrors(checkReportSchema, report), '');
    assert.deepEqual([report.summary.warnings, report.summary.waived, report.summary.attention], [0, 1, 0]);
    const [finding] = report.pictures[4].findings.filter((f: { waived: unknown }) => f.waived);
    assert.deepEqual([finding.rule, finding.waived], ['mixed-encodings', { reason: '' }]);
    assert.equal(report.pictures[4].verdict, 'send');
  });

  it('stands where so many others come to have the same that they are told at once: of the others alone', async () => {
    const root = evenBook(undefined, 12);
    const toned = (seed: number) =>
      tiff(96, 64, (x, y) => [10, 0, -24].map(more => Math.min(255, 40 + x * 2 + ((y + seed) % 7) + more)));
    const add = (...seeds: number[]) =>
      write(root, Object.fromEntries(seeds.map(seed => [`plates/toned ${seed}.tif`, toned(seed)])));
    const told = async () => {
      const { pictures, findings } = JSON.parse((await strict(root, '--format', 'json')).stdout);
      const of = (
        some: { rule: string; severity: string; waived?: object; data: { pictures?: string[] } }[],
      ) => some.filter(({ rule, severity }) => rule === 'likely-tint' && severity !== 'note');
      const own = pictures.flatMap((picture: { findings: [] }) => of(picture.findings));
      const [together] = of(findings).filter(({ data }) => data.pictures);
      return {
        waived: own.filter(({ waived }: { waived?: object }) => waived).length,
        own: own.filter(({ waived }: { waived?: object }) => !waived).length,
        together: together?.data.pictures ?? null,
      };
    };
    add(1, 2, 3);
    await strict(root, '--waive');
    assert.deepEqual(await told(), { waived: 3, own: 0, together: null });
    add(4);
    assert.deepEqual(await told(), { waived: 3, own: 1, together: null });
    add(5, 6, 7);
    const others = [4, 5, 6, 7].map(seed => `plates/toned ${seed}.tif`);
    assert.deepEqual(await told(), { waived: 3, own: 0, together: others });
  });

  it('stands when the picture moves or another joins; falls when it is exported again, and is then stale and pruned', async () => {
    const root = oddBook();
    await strict(root, '--waive');
    fs.renameSync(path.join(root, 'plates/05.tif'), path.join(root, 'plates/99.tif'));
    fs.writeFileSync(path.join(root, 'plates/06.tif'), pictures.neutral(6));
    assert.equal((await strict(root)).code, 0);

    fs.writeFileSync(path.join(root, 'plates/99.tif'), pictures.blackOnly(7));
    const again = await strict(root);
    assert.equal(again.code, 1);
    assert.match(
      again.stdout.replace(/\s+/g, ' '),
      /has 1 waiver of no finding: mixed-encodings on plates\/05\.tif/,
    );
    const pruned = await strict(root, '--waive');
    assert.match(pruned.stderr, /1 finding waived, 1 stale waiver taken out\./);
    const before = fs.readFileSync(path.join(root, FILE), 'utf8');
    assert.match((await strict(root, '--waive')).stderr, /: 0 findings waived\.\n$/);
    assert.equal(fs.readFileSync(path.join(root, FILE), 'utf8'), before, 'the same to the byte');
  });

  it('of some pictures keeps the waivers of the others', async () => {
    const root = oddBook();
    await strict(root, '--waive');
    const some = await strict(root, 'plates/01.tif', '--waive');
    assert.deepEqual([some.code, read(root).waivers.length], [0, 1]);
    assert.doesNotMatch(some.stdout, /no finding any more/);
  });

  it('takes another file, and says what is wrong with one', async () => {
    const root = oddBook();
    const other = path.join(temporaryFolder(), 'team.json');
    assert.match(
      (await strict(root, '--waivers', other)).stderr,
      /there is no file .*team\.json"\. "--waive" writes one/,
    );
    assert.equal((await strict(root, '--waivers', other, '--waive')).code, 0);
    assert.ok(!fs.existsSync(path.join(root, FILE)));
    assert.equal((await strict(root, '--waivers', other)).code, 0);
    fs.writeFileSync(path.join(root, FILE), '{\n  "waivers": 1\n}');
    const wrong = await strict(root);
    assert.deepEqual([wrong.code, wrong.stdout], [2, '']);
    assert.match(wrong.stderr, /nothing was checked\.\n\.evengrey-waivers\.json:2:14: /);
    assert.match((await strict(root, '--waive')).stderr, /\n--waive keeps .* Put that place right by hand, /);
    assert.equal(fs.readFileSync(path.join(root, FILE), 'utf8'), '{\n  "waivers": 1\n}');
  });

  it('cannot waive what was not read', async () => {
    const root = evenBook();
    fs.symlinkSync('/nowhere/a.tif', path.join(root, 'plates/06.tif'));
    const ran = await strict(root, '--waive');
    assert.equal(ran.code, 1);
    assert.match(ran.stderr, /0 findings waived\. What was not read cannot be waived: plates\/06\.tif\.\n$/);
    fs.rmSync(path.join(root, 'plates/06.tif'));
    const pointer = `version https://git-lfs.github.com/spec/v1\noid sha256:${'1'.repeat(64)}\nsize 12345\n`;
    write(root, { 'plates/07.tif': pointer, 'plates/08.tif': pictures.neutral(8).subarray(0, 900) });
    const again = await strict(root, '--waive');
    assert.equal(again.code, 1, 'a clone without its large files is not made green for ever');
    assert.match(
      again.stderr,
      /0 findings waived\. What was not read cannot be waived: plates\/07\.tif and plates\/08\.tif\./,
    );
    for (let i = 10; i < 15; i++) write(root, { [`plates/${i}.tif`]: pointer });
    const many = await strict(root, '--waive');
    assert.match(many.stderr, /0 findings waived\. What was not read cannot be waived: [^\n]*not-fetched/);
  });

  it('names no option where nobody can type one', async () => {
    const root = oddBook();
    await strict(root, '--waive');
    const told = async (format: string) => (await evengrey(['check', root, '--format', format])).stdout;
    assert.match(await told('text'), /--show-waived\s+tells\s+them/);
    for (const format of ['github', 'markdown', 'sarif', 'junit', 'html'])
      assert.doesNotMatch(await told(format), /--show-waived/, format);
  });

  it('holds for a merge of shards as for one run, and for a comparison by what each revision holds', async () => {
    const root = oddBook();
    await strict(root, '--waive');
    const files = [1, 2].map(i => path.join(temporaryFolder(), `${i}.json`));
    for (const [i, file] of files.entries())
      await evengrey(['check', root, '--shard', `${i + 1}/2`, '--output', file]);
    const merged = await evengrey([
      'merge',
      ...files,
      '--show-waived',
      '--format',
      'json',
      '--max-warnings',
      '0',
    ]);
    const one = await strict(root, '--show-waived', '--format', 'json');
    assert.deepEqual([merged.stdout, merged.code], [one.stdout, 0]);

    const plates = Object.fromEntries([1, 2, 3].map(i => [`0${i}.tif`, pictures.neutral(i)]));
    const top = repositoryOf({ 'evengrey.json': '{ "process": "offset-coated" }', ...plates });
    fs.writeFileSync(path.join(top, '05.tif'), pictures.blackOnly(5));
    await strict(top, '--waive');
    commit(top);
    const args = ['compare', 'HEAD~1', '--whole', '--max-warnings', '0'];
    const compared = await evengrey(args, { cwd: top });
    assert.equal(compared.code, 0);
    assert.match(
      compared.stdout.replace(/\s+/g, ' '),
      /1 finding is waived by \.evengrey-waivers\.json and does not count\./,
    );
    fs.rmSync(path.join(top, FILE));
    commit(top);
    const fallen = await evengrey(args, { cwd: top });
    assert.equal(fallen.code, 1, 'without its waiver an old finding is new');
  });

  it('of two pictures holds whichever of them has the finding, under whatever names, in every gate', async () => {
    const layout = (...names: string[]) => names.map(name => `![](${name})\n\n`).join('');
    const top = repositoryOf({
      'evengrey.json': '{ "process": "offset-coated", "rules": { "same-picture": "error" } }',
      'book.md': layout('p0.tif', 'p1.tif', 'p2.tif'),
      ...Object.fromEntries([0, 1, 2].map(i => [`p${i}.tif`, pictures.neutral(i)])),
    });
    git(top, 'branch', 'base');
    const gates = async () => {
      const codes = [];
      for (const args of [['check'], ['check', '--since', 'base', '--whole'], ['compare', 'base', '--whole']])
        codes.push((await evengrey(args, { cwd: top })).code);
      return codes;
    };
    // a check tells it of the later in the book, a gate of the one that changed
    commit(top, { 'p1.tif': pictures.neutral(2) });
    assert.deepEqual(await gates(), [1, 1, 1]);
    await evengrey(['check', '--waive'], { cwd: top });
    assert.deepEqual(
      read(top).waivers.map(({ picture, other }: Record<string, string>) => [picture, other]),
      [['p2.tif', 'p1.tif']],
    );
    commit(top);
    assert.deepEqual(await gates(), [0, 0, 0]);
    git(top, 'branch', '--force', 'base');
    git(top, 'mv', 'p1.tif', 'renamed.tif');
    commit(top, { 'book.md': layout('p0.tif', 'p2.tif', 'renamed.tif') });
    assert.deepEqual(await gates(), [0, 0, 0], 'renamed, and placed the other way round');
    fs.rmSync(path.join(top, FILE));
    commit(top);
    assert.deepEqual(await gates(), [1, 1, 1], 'not waived any more');
  });

  it('of two copies is none of a third, and of a pair none of another pair on the spread', async () => {
    const top = temporaryFolder({
      'evengrey.json': JSON.stringify({
        process: 'offset-coated',
        spreads: [['p0.tif', 'warm.tif', 'cold.tif']],
        rules: { 'same-picture': 'error', 'facing-difference': 'error' },
      }),
      'book.md': ['p0.tif', 'p1.tif', 'p2.tif', 'warm.tif'].map(name => `![](${name})\n\n`).join(''),
      ...Object.fromEntries([0, 1, 2].map(i => [`p${i}.tif`, pictures.neutral(i)])),
      'warm.tif': cast(12, 0, -12),
    });
    write(top, { 'p1.tif': pictures.neutral(2) });
    const named = async (...more: string[]) => {
      const { stdout, code } = await evengrey(['check', '--format', 'json', ...more], { cwd: top });
      const standing = (findings: { rule: string; waived: unknown }[]) =>
        findings.flatMap(({ rule, waived }) => (/same|facing/.test(rule) && !waived ? rule : []));
      const found = JSON.parse(stdout).pictures.flatMap(({ findings }: { findings: [] }) =>
        standing(findings),
      );
      return [code, ...found.sort()];
    };
    assert.deepEqual(await named(), [1, 'facing-difference', 'same-picture']);
    assert.deepEqual(await named('--waive'), [0]);
    assert.deepEqual(await named(), [0]);
    // written over a picture of its own
    write(top, { 'p0.tif': pictures.neutral(2) });
    assert.deepEqual(await named(), [1, 'facing-difference', 'same-picture', 'same-picture']);
    write(top, { 'p0.tif': pictures.neutral(0), 'cold.tif': cast(-14, 0, 14) });
    fs.appendFileSync(path.join(top, 'book.md'), '![](cold.tif)\n');
    const [code, ...found] = await named();
    assert.deepEqual([code, [...new Set(found)]], [1, ['facing-difference']]);
    assert.deepEqual(await named('--waive'), [0], 'one after the other');
    assert.deepEqual(await named(), [0]);
  });

  it('stays where a line of a layout moves', async () => {
    const top = temporaryFolder({
      'evengrey.json': '{ "process": "offset-coated", "rules": { "format-not-placed": "error" } }',
      'book.html': '<img src="p0.tif">\n',
      'p0.tif': pictures.neutral(0),
    });
    const code = async (...more: string[]) => (await evengrey(['check', ...more], { cwd: top })).code;
    assert.deepEqual([await code(), await code('--waive'), await code()], [1, 0, 0]);
    write(top, { 'book.html': '<!-- a line more -->\n<img src="p0.tif">\n' });
    assert.equal(await code(), 0);
  });

  it('of a set that shrinks is missed by the gates as by a check', async () => {
    const top = repositoryOf({
      'evengrey.json': '{ "process": "offset-coated", "rules": { "untagged": "error" } }',
      ...Object.fromEntries([1, 2, 3, 4, 5].map(i => [`g${i}.tif`, pictures.grey(i)])),
    });
    await evengrey(['check', '--waive'], { cwd: top });
    commit(top);
    git(top, 'branch', 'base');
    git(top, 'rm', '-q', 'g5.tif');
    const codes = [];
    for (const more of [[], ['--since', 'base', '--whole'], ['--staged', '--whole']])
      codes.push((await evengrey(['check', ...more], { cwd: top })).code);
    assert.deepEqual(codes, [1, 1, 1]);
  });

  it('of the book holds at a gate that tells of some of its pictures only', async () => {
    const top = repositoryOf({
      'evengrey.json': '{ "process": "offset-coated" }',
      ...Object.fromEntries([1, 2].map(i => [`grey ${i}.tif`, pictures.grey(i)])),
      ...Object.fromEntries([3, 4].map(i => [`neutral ${i}.tif`, pictures.neutral(i)])),
    });
    await strict(top, '--waive');
    assert.deepEqual(
      read(top).waivers.map(({ picture, content }: { picture: null; content: string[] }) => [
        picture,
        content.length,
      ]),
      [[null, 4]],
    );
    commit(top);
    git(top, 'branch', 'base');
    git(top, 'mv', 'grey 1.tif', 'grey one.tif');
    commit(top);
    assert.deepEqual((await strict(top)).code, 0);
    assert.deepEqual((await strict(top, '--since', 'base', '--whole')).code, 0);
  });
});
