import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { checkReportSchema } from '../../../src/report/json/check-schema';
import { commit, git, repositoryOf } from '../../book/revisions/support/repository';
import { temporaryFolder, write } from '../../book/support/folder';
import { strictErrors } from '../../report/support';
import { pictures } from '../support/book';
import { golden } from '../support/golden';
import { evengrey } from '../support/run';
import { tiff } from '../support/tiff';

const settings = { 'evengrey.json': '{ "process": "offset-coated" }' };
const plates = (count: number) =>
  Object.fromEntries(Array.from({ length: count }, (_, i) => [`plates/0${i + 1}.tif`, pictures.neutral(i)]));

async function checked(cwd: string, args: string[], env: Record<string, string> = {}) {
  const ran = await evengrey(['check', ...args, '--format', 'json'], { cwd, env });
  assert.equal(ran.stderr, '');
  const report = JSON.parse(ran.stdout);
  assert.equal(strictErrors(checkReportSchema, report), '');
  return {
    ...{ report, code: ran.code },
    paths: report.pictures.map((picture: { path: string }) => picture.path),
    rules: report.pictures.flatMap((picture: { findings: { rule: string }[] }) =>
      picture.findings.map(f => f.rule),
    ),
  };
}
const plain = (text: string) => text.replace(/\b[0-9a-f]{10}\b/g, 'COMMIT');

describe('evengrey check --since', () => {
  it('checks what changed, is renamed, new, or not yet committed, and nothing else', async () => {
    const top = repositoryOf({ ...settings, ...plates(5) });
    git(top, 'checkout', '--quiet', '-b', 'work');
    commit(top, { 'plates/01.tif': pictures.neutral(11) });
    fs.renameSync(path.join(top, 'plates/02.tif'), path.join(top, 'plates/new.tif'));
    write(top, { 'plates/03.tif': pictures.neutral(33), 'plates/untracked.tif': pictures.neutral(8) });
    // touched, not changed; and changed back
    fs.utimesSync(path.join(top, 'plates/04.tif'), new Date(), new Date());
    write(top, { 'plates/05.tif': pictures.neutral(4) });
    git(top, 'checkout', '--quiet', 'main', '--', 'evengrey.json');
    const { paths, report } = await checked(top, ['--since', 'main']);
    assert.deepEqual(paths, ['plates/01.tif', 'plates/03.tif', 'plates/new.tif', 'plates/untracked.tif']);
    assert.equal(report.scope.unread, 2);
    assert.match(report.scope.which, /^changed since main \([0-9a-f]{10}\)$/);
  });

  it('compares with the others where a check of them is remembered, or where it is told to read them', async () => {
    const top = repositoryOf({ ...settings, ...plates(4) });
    write(top, { 'plates/05.tif': pictures.blackOnly(5) });
    const alone = await checked(top, ['--since', 'HEAD']);
    assert.deepEqual([alone.rules.includes('mixed-encodings'), alone.report.scope.unread], [false, 4]);
    const whole = await checked(top, ['--since', 'HEAD', '--whole']);
    assert.deepEqual([whole.rules.includes('mixed-encodings'), whole.report.scope.unread], [true, 0]);

    const past = new Date(Date.now() - 60_000);
    for (const name of Object.keys(plates(4))) fs.utimesSync(path.join(top, name), past, past);
    git(top, 'update-index', '--refresh');
    await new Promise(resolve => setTimeout(resolve, 150));
    const env = { EVENGREY_CACHE_DIR: temporaryFolder() };
    await evengrey(['check'], { cwd: top, env });
    const remembered = await checked(top, ['--since', 'HEAD'], env);
    assert.deepEqual(remembered.report, whole.report);
  });

  it('knows the picture of a large-file pointer', async () => {
    const content = pictures.neutral(1);
    const { createHash } = await import('node:crypto');
    const oid = createHash('sha256').update(content).digest('hex');
    const pointer = `version https://git-lfs.github.com/spec/v1\noid sha256:${oid}\nsize ${content.length}\n`;
    const top = repositoryOf({ ...settings, 'a.tif': pointer, 'b.tif': pointer });
    write(top, { 'a.tif': content, 'b.tif': pictures.neutral(2) });
    assert.deepEqual((await checked(top, ['--since', 'HEAD'])).paths, ['b.tif']);
  });

  it('says so in words, and passes where nothing changed', async () => {
    const top = repositoryOf({ ...settings, ...plates(3) });
    const none = await evengrey(['check', '--since', 'HEAD'], { cwd: top });
    golden('since/nothing.txt', plain(none.stdout));
    assert.deepEqual([none.code, none.stderr], [0, '']);
    write(top, { 'plates/04.tif': pictures.blackOnly(4) });
    const one = await evengrey(['check', '--since', 'HEAD'], { cwd: top });
    golden('since/one.txt', plain(one.stdout));
  });

  it('leaves open what to save a picture as, in every format, where the others were not looked at', async () => {
    const toned = tiff(96, 64, (x, y) =>
      [10, 0, -24].map(more => Math.min(255, 40 + x * 2 + (y % 7) + more)),
    );
    const top = repositoryOf({ ...settings, ...plates(3) });
    write(top, { 'plates/new.tif': toned });
    const save = /[Ss]ave it as ([^.,"]*)/g;
    for (const format of ['text', 'github', 'markdown', 'json', 'sarif', 'junit', 'html']) {
      const told = async (...more: string[]) => {
        const args = ['check', '--since', 'HEAD', '--format', format, ...more];
        const { stdout } = await evengrey(args, { cwd: top });
        return [...stdout.replace(/\s+/g, ' ').matchAll(save)].map(([, as]) => as);
      };
      const [part, whole] = [await told(), await told('--whole')];
      assert.deepEqual([...new Set(part)], ['what a check of the whole book recommends'], format);
      assert.ok(whole.length && whole.every(as => !as.includes('check')), format);
    }
  });

  it('ends with code 2 where there is no picture at all, changed or not', async () => {
    const top = repositoryOf({ ...settings, ...plates(1), 'texts/a.txt': 'no picture' });
    for (const option of [['--since', 'HEAD'], ['--staged']]) {
      const nowhere = await evengrey(['check', 'texts', ...option, '--max-warnings', '0'], { cwd: top });
      assert.equal(nowhere.code, 2);
      assert.match(nowhere.stderr, /^evengrey: "texts" holds no picture of the book, so nothing was checked/);
      assert.equal((await evengrey(['check', 'plates', ...option], { cwd: top })).code, 0);
    }
  });

  it('takes no other way out', async () => {
    const top = repositoryOf({ ...settings, ...plates(1) });
    const told = async (...args: string[]) => {
      const ran = await evengrey(['check', ...args], { cwd: top });
      assert.deepEqual([ran.code, ran.stdout], [2, '']);
      return ran.stderr;
    };
    assert.match(await told('--since', 'nowhere'), /There is no revision "nowhere" here/);
    assert.match(await told('--whole'), /--whole goes with --since, --staged or named pictures/);
    assert.match(await told('--since', 'HEAD', '--staged'), /cannot be used with/);
  });
});

describe('evengrey check --staged', () => {
  it('checks what a commit would change, as it is staged, by the settings that are staged', async () => {
    const top = repositoryOf({ ...settings, ...plates(3) });
    write(top, { 'plates/01.tif': pictures.grey(1), 'evengrey.json': '{ "process": "silver-halide" }' });
    git(top, 'add', '--all');
    write(top, {
      'plates/01.tif': 'changed again, not staged',
      'plates/02.tif': 'not staged',
      'evengrey.json': '{ "process": "inkjet" }',
    });
    const { paths, report } = await checked(top, ['--staged']);
    assert.deepEqual(paths, Object.keys(plates(3)), 'other settings judge every picture');
    assert.deepEqual(
      [report.pictures[0].encoding, report.book.targets[0].process, report.scope.which],
      ['single-channel', 'silver-halide', 'staged'],
    );
    const inkjet = await checked(top, ['--staged', '--process', 'inkjet']);
    assert.equal(inkjet.report.book.targets[0].process, 'inkjet');
    assert.deepEqual(
      (await checked(top, ['plates/02.tif', '--staged'])).paths,
      ['plates/02.tif'],
      'a named path is all that is asked for',
    );
  });

  it('checks a first commit whole, and what a hook’s own index holds', async () => {
    const top = temporaryFolder({ ...settings, ...plates(2) });
    git(top, 'init', '--quiet');
    git(top, 'add', '--all');
    const first = await checked(top, ['--staged']);
    assert.deepEqual(first.paths, ['plates/01.tif', 'plates/02.tif']);
    assert.match(first.report.notices[0], /^Only what is staged was checked: 2 pictures/);
    const index = path.join(top, '.git/next-index-7.lock');
    fs.copyFileSync(path.join(top, '.git/index'), index);
    write(top, { 'plates/03.tif': pictures.neutral(3) });
    git(top, 'add', 'plates/03.tif');
    assert.equal((await checked(top, ['--staged'], { GIT_INDEX_FILE: index })).paths.length, 2);
  });

  it('passes over what is only announced, also under a name that the commit takes away', async () => {
    const top = repositoryOf({ ...settings, ...plates(3) });
    write(top, { 'plates/04.tif': pictures.grey(4) });
    git(top, 'add', '-N', 'plates/04.tif');
    const none = await evengrey(['check', '--staged'], { cwd: top });
    assert.deepEqual([none.code, none.stdout.split('\n')[0]], [0, 'No picture of this book is staged.']);
    git(top, 'rm', '--quiet', '--cached', 'plates/01.tif');
    git(top, 'add', '-N', 'plates/01.tif');
    git(top, 'mv', 'plates/02.tif', 'plates/05.tif');
    const { paths, code } = await checked(top, ['--staged']);
    assert.deepEqual([paths, code], [['plates/05.tif'], 0]);
  });

  it('tells of a picture that a layout places and this commit takes away', async () => {
    const layout = '![one](plates/01.tif)\n\n![two](plates/02.tif)\n';
    const top = repositoryOf({ ...settings, ...plates(3), 'book.md': layout });
    fs.rmSync(path.join(top, 'plates/02.tif'));
    write(top, { 'plates/03.tif': pictures.neutral(33) });
    git(top, 'add', '--all');
    const { paths, code } = await checked(top, ['--staged']);
    assert.deepEqual([paths, code], [['plates/02.tif'], 1], 'and nothing of one that is not in the book');
  });

  it('tells of a picture that a layout places and this commit renames, as of one that it takes away', async () => {
    const layout = (...names: string[]) => names.map(name => `![](plates/${name}.tif)\n\n`).join('');
    const top = repositoryOf({ ...settings, ...plates(3), 'book.md': layout('01', '02', '03') });
    git(top, 'mv', 'plates/02.tif', 'plates/new.tif');
    for (const option of [['--staged'], ['--staged', '--whole'], ['--since', 'HEAD']]) {
      const { paths, code, rules } = await checked(top, option);
      assert.deepEqual([paths, code, rules], [['plates/02.tif'], 1, ['unreadable']], String(option));
    }
    write(top, { 'book.md': layout('01', 'new', '03') });
    git(top, 'add', '--all');
    const followed = await checked(top, ['--staged']);
    assert.deepEqual([followed.paths, followed.code], [['plates/new.tif'], 0], 'where its line goes along');
    write(top, { 'book.md': layout('01', '03') });
    git(top, 'add', '--all');
    const left = await evengrey(['check', '--staged'], { cwd: top });
    assert.match(left.stdout, /Taken out of the book: plates\/02\.tif\./, 'where its line goes too');
    assert.equal(left.code, 0);
  });

  it('tells of a picture that no layout places, staged or not', async () => {
    const top = repositoryOf({
      ...settings,
      ...plates(2),
      'book.md': '![](plates/01.tif)\n\n![](plates/02.tif)\n',
    });
    write(top, { 'plates/new.tif': pictures.neutral(7) });
    git(top, 'add', '--all');
    git(top, 'mv', 'plates/02.tif', 'plates/other.tif');
    for (const option of [['--staged'], ['--since', 'HEAD']]) {
      const { report } = await checked(top, option);
      const told = /^2 pictures are placed by no layout \(book\.md\): plates\/new\.tif, plates\/other\.tif\./;
      assert.ok(
        report.notices.some((notice: string) => told.test(notice)),
        String(option),
      );
      const part = await checked(top, [...option, 'plates']);
      assert.ok(!part.report.notices.some((notice: string) => told.test(notice)), 'not all was looked at');
    }
  });

  it('does not take a name in the settings that follows its picture for other settings', async () => {
    const named = (name: string) =>
      `{ "process": "offset-coated", "spreads": [["plates/01.tif", "plates/${name}.tif"]] }`;
    const top = repositoryOf({ 'evengrey.json': named('02'), ...plates(4) });
    git(top, 'mv', 'plates/02.tif', 'plates/new.tif');
    write(top, { 'evengrey.json': named('new') });
    git(top, 'add', '--all');
    for (const option of [['--staged'], ['--since', 'HEAD']])
      assert.deepEqual((await checked(top, option)).paths, ['plates/new.tif'], option[0]);
    write(top, { 'evengrey.json': named('03') });
    git(top, 'add', '--all');
    for (const option of [['--staged'], ['--since', 'HEAD']])
      assert.equal((await checked(top, option)).paths.length, 4, option[0]);
  });

  it('names the picture that was written over with another one, not the one that stayed', async () => {
    const top = repositoryOf({
      ...settings,
      ...plates(3),
      'book.md': '![](plates/01.tif)\n\n![](plates/02.tif)\n',
    });
    commit(top, { 'plates/01.tif': pictures.neutral(1) });
    git(top, 'add', '--all');
    for (const option of [['--staged'], ['--since', 'HEAD~1']]) {
      if (option[0] === '--staged') git(top, 'reset', '--quiet', '--soft', 'HEAD~1');
      else commit(top);
      const { report } = await checked(top, [...option, '--whole']);
      const [{ path, findings }] = report.pictures;
      assert.equal(path, 'plates/01.tif');
      assert.ok(
        findings.some((finding: { rule: string }) => finding.rule === 'same-picture'),
        option[0],
      );
    }
    const { stdout } = await evengrey(['compare', 'HEAD~1', '--whole', '--format', 'github'], { cwd: top });
    assert.match(stdout, /^::notice file=plates\/01\.tif,line=1,title=same-picture::/m);
    const text = (await evengrey(['compare', 'HEAD~1', '--whole'], { cwd: top })).stdout.replace(/\s+/g, ' ');
    assert.match(
      text,
      /plates\/01\.tif matches the rest of the book, and something else is new against it: same-picture\./,
    );
  });

  it('judges every picture by settings that are staged, and says so', async () => {
    const top = repositoryOf({ ...settings, ...plates(3) });
    const strict =
      '{ "process": "offset-coated", "rules": { "low-resolution": "error" }, "placements": { "plates/02.tif": { "width": 200 } } }';
    write(top, { 'evengrey.json': strict });
    assert.deepEqual((await checked(top, ['--staged'])).paths, [], 'not staged yet');
    const inTree = await checked(top, ['--since', 'HEAD']);
    assert.deepEqual([inTree.code, inTree.paths.length, inTree.rules], [1, 3, ['low-resolution']]);
    git(top, 'add', '--all');
    const staged = await checked(top, ['--staged']);
    assert.deepEqual([staged.code, staged.paths.length, staged.rules], [1, 3, ['low-resolution']]);
    assert.match(staged.report.notices[0], /^The settings are not what they were, so all pictures/);
    const named = await checked(top, ['--staged', '--settings', path.join(top, 'evengrey.json')]);
    assert.deepEqual(named.paths, [], 'settings that are named are no change');
  });

  it('is not alarmed by a comment in the settings, or a line that moves in a layout', async () => {
    const top = repositoryOf({ ...settings, ...plates(2), 'book.md': '![](plates/01.tif)\n' });
    write(top, {
      'evengrey.json': '// offset\n{ "process":"offset-coated" }',
      'book.md': '# Title\n\n![](plates/01.tif)\n',
    });
    git(top, 'add', '--all');
    assert.deepEqual((await checked(top, ['--staged'])).paths, []);
    assert.deepEqual((await checked(top, ['--since', 'HEAD'])).paths, []);
  });

  it('judges the pictures that a layout lets in, places larger, or places in vain', async () => {
    const page = (width: number) => `<img src="plates/01.tif" style="width: ${width}mm">`;
    const top = repositoryOf({ ...settings, ...plates(3), 'book.html': page(10) });
    write(top, { 'book.html': `${page(900)}<img src="plates/02.tif"><img src="plates/none.tif">` });
    git(top, 'add', '--all');
    for (const option of [['--staged'], ['--since', 'HEAD']]) {
      const { paths, rules, report } = await checked(top, option);
      assert.deepEqual(paths, ['plates/01.tif', 'plates/02.tif', 'plates/none.tif']);
      assert.ok(rules.includes('low-resolution') && rules.includes('unreadable'), String(rules));
      assert.match(
        report.notices[0],
        /with plates\/01\.tif and plates\/02\.tif, which are let in or placed otherwise/,
      );
    }
  });

  it('judges a picture whose waiver is taken out, and all pictures where that was one of the book', async () => {
    const strict =
      '{ "process": "offset-coated", "rules": { "low-resolution": "error" }, "placements": { "plates/02.tif": { "width": 200 } } }';
    const split = { 'plates/03.tif': pictures.blackOnly(3), 'plates/04.tif': pictures.blackOnly(4) };
    const cases = [
      {
        book: plates(3),
        paths: ['plates/02.tif'],
        rule: 'low-resolution',
        why: /1 picture, with plates\/02\.tif, of which something is not waived any more\./,
      },
      {
        book: { ...plates(2), ...split },
        paths: Object.keys(plates(4)),
        rule: 'mixed-encodings',
        why: /^What is said of the book is not waived any more, so all pictures were checked, .*: 4 pictures\.$/,
      },
    ];
    for (const { book, paths, rule, why } of cases) {
      const top = repositoryOf({ 'evengrey.json': strict, ...book });
      assert.equal((await evengrey(['check', '--waive'], { cwd: top })).code, 0);
      git(top, 'add', '--all');
      git(top, 'commit', '--quiet', '--message', 'Waive');
      const file = path.join(top, '.evengrey-waivers.json');
      const { waivers } = JSON.parse(fs.readFileSync(file, 'utf8'));
      const kept = waivers.filter((waiver: { rule: string }) => waiver.rule !== rule);
      assert.equal(kept.length, waivers.length - 1);
      fs.writeFileSync(file, JSON.stringify({ waivers: kept }));
      git(top, 'add', '--all');
      for (const option of [['--staged'], ['--since', 'HEAD']]) {
        const { report, ...found } = await checked(top, option);
        const all = [...found.rules, ...report.findings.map((of: { rule: string }) => of.rule)];
        assert.deepEqual([found.paths, all.includes(rule)], [paths, true]);
        assert.match(report.notices[0], why);
      }
    }
  });

  it('judges pictures that did not change where others have something new said of them', async () => {
    const strict = {
      'evengrey.json': '{ "process": "offset-coated", "rules": { "mixed-encodings": "error" } }',
    };
    const odd = { 'plates/08.tif': pictures.grey(8), 'plates/09.tif': pictures.grey(9) };
    const all = { ...plates(3), ...odd };
    const cases = [
      // others come, or go: what was the most is not any more
      { book: { ...strict, ...odd }, made: (top: string) => write(top, plates(3)), drawn: Object.keys(odd) },
      {
        book: { ...strict, ...all },
        made: (top: string) => write(top, { '.evengreyignore': '01.tif\n02.tif\n' }),
        drawn: ['plates/03.tif'],
      },
    ];
    for (const { book, made, drawn } of cases) {
      const top = repositoryOf(book);
      made(top);
      git(top, 'add', '--all');
      for (const option of [['--staged'], ['--since', 'HEAD']]) {
        const { code, paths, report } = await checked(top, [...option, '--whole']);
        assert.deepEqual([code, drawn.filter(path => !paths.includes(path))], [1, []], option[0]);
        assert.match(report.notices[0], new RegExp(`${drawn.at(-1)}, of which something is said since`));
      }
      git(top, 'commit', '--quiet', '--message', 'Others');
      commit(top, { 'plates/03.tif': pictures.neutral(33) });
      const later = await checked(top, ['--since', 'HEAD~1', '--whole']);
      assert.deepEqual(later.paths, ['plates/03.tif'], 'nothing is new of the others then');
    }
  });

  it('goes by the waivers that are staged, unless others are named', async () => {
    const strict = '{ "process": "offset-coated", "encodings": ["rgb-neutral"] }';
    const top = repositoryOf({ 'evengrey.json': strict, ...plates(2) });
    write(top, { 'plates/01.tif': pictures.grey(1) });
    git(top, 'add', '--all');
    assert.equal((await evengrey(['check', '--waive'], { cwd: top })).code, 0);
    const file = path.join(top, '.evengrey-waivers.json');
    const gate = async (...more: string[]) =>
      (await evengrey(['check', '--staged', ...more], { cwd: top })).code;
    assert.equal(await gate(), 1, 'no commit would hold what lies there');
    assert.equal(await gate('--waivers', file), 0);
    git(top, 'add', '--all');
    fs.rmSync(file);
    assert.equal(await gate(), 0, 'nor does it matter what lies there no more');
  });

  it('says of a submodule that is staged that nobody looked at its pictures', async () => {
    const inner = repositoryOf({ 'p.tif': pictures.neutral(1) });
    const top = repositoryOf({ ...settings, ...plates(1) });
    git(top, 'submodule', '--quiet', 'add', inner, 'inner');
    const { report, code } = await checked(top, ['--staged']);
    assert.deepEqual([code, report.scope.beyond], [0, ['inner']]);
    for (const format of ['text', 'junit', 'markdown', 'github']) {
      const { stdout } = await evengrey(['check', '--staged', '--format', format], { cwd: top });
      const said = stdout.replaceAll(/\s+/g, ' ');
      assert.match(said, /What changed in inner was not looked at: a submodule belongs to/, format);
    }
  });

  it('says that a picture is taken out, and no more than that', async () => {
    const top = repositoryOf({ ...settings, ...plates(3) });
    fs.rmSync(path.join(top, 'plates/02.tif'));
    git(top, 'add', '--all');
    for (const option of [['--staged'], ['--since', 'HEAD']]) {
      const { code, stdout } = await evengrey(['check', ...option], { cwd: top });
      assert.equal(code, 0);
      assert.match(stdout, /^Nothing was judged: 1 picture is taken out of the book, and no other is/);
      assert.match(stdout, /Taken out of the book: plates\/02\.tif\./);
    }
  });

  it('passes no book that moved away, under its old name', async () => {
    const top = repositoryOf(plates(2));
    fs.mkdirSync(path.join(top, 'moved'));
    for (const name of Object.keys(plates(2)))
      fs.renameSync(path.join(top, name), path.join(top, 'moved', path.basename(name)));
    git(top, 'add', '--all');
    for (const option of [['--staged'], ['--since', 'HEAD']]) {
      const { code, stdout, stderr } = await evengrey(['check', 'plates', ...option], { cwd: top });
      assert.equal(code, 2);
      assert.match(
        stderr,
        /^evengrey: "plates" holds no picture of the book, so nothing was checked there\./,
      );
      assert.match(stdout, /^Nothing was checked\./);
      assert.equal((await evengrey(['check', 'moved', ...option], { cwd: top })).code, 0);
    }
  });

  it('tells of a name in the settings that names nothing any more, and fails where no warning is allowed', async () => {
    const named = `{
  "process": "offset-coated",
  "spreads": [["plates/01.tif", "plates/02.tif"], ["plates/old.tif", "plates/03.tif"]]
}`;
    const top = repositoryOf({ 'evengrey.json': named, ...plates(3) });
    fs.rmSync(path.join(top, 'plates/02.tif'));
    git(top, 'add', '--all');
    for (const option of [['--staged'], ['--since', 'HEAD']]) {
      const { code, stdout } = await evengrey(['check', ...option, '--format', 'github'], { cwd: top });
      assert.equal(code, 0);
      const [line, ...others] = stdout.match(/^.*A spread names.*$/gm)!;
      assert.deepEqual(others, [], 'what stood there before is not told again');
      assert.match(
        line,
        /^::warning file=evengrey\.json,line=3,title=Evengrey::A spread names "plates\/02\.tif"/,
      );
      const strict = await evengrey(['check', ...option, '--max-warnings', '0'], { cwd: top });
      assert.equal(strict.code, 1);
      assert.match(strict.stderr, /^1 line of the settings that says something in vain is more than/);
    }
    const compared = await evengrey(['compare', 'HEAD', '--book', '.', '--format', 'markdown'], { cwd: top });
    assert.doesNotMatch(compared.stdout, /A spread names/, 'nothing is committed yet');
    commit(top);
    const after = await evengrey(['compare', 'HEAD~1', '--format', 'markdown'], { cwd: top });
    assert.match(
      after.stdout,
      /evengrey\.json:3:33: A spread names "plates\/02\.tif", and nothing matches it/,
    );
    assert.doesNotMatch(after.stdout, /old\.tif/);
    const gate = ['compare', 'HEAD~1', '--format', 'github', '--max-warnings'];
    const strict = await evengrey([...gate, '0'], { cwd: top });
    assert.equal(strict.stdout.match(/A spread names/g)!.length, 1);
    assert.match(
      strict.stdout,
      /^::warning file=evengrey\.json,line=3,title=Evengrey::A spread names "plates\/02\.tif"/m,
    );
    assert.match(strict.stderr, /^1 line of the settings that says something in vain now is more than/);
    assert.deepEqual([strict.code, (await evengrey([...gate, '1'], { cwd: top })).code], [1, 0]);
  });

  it('fails on what is staged, and leaves no trace in the repository', async () => {
    const top = repositoryOf({ ...settings, ...plates(3) });
    write(top, { 'plates/02.tif': pictures.neutral(2).subarray(0, 700) });
    git(top, 'add', '--all');
    const before = fs.readFileSync(path.join(top, '.git/index'));
    const { code, rules } = await checked(top, ['--staged']);
    assert.deepEqual([code, rules], [1, ['unreadable']]);
    assert.deepEqual(fs.readFileSync(path.join(top, '.git/index')), before);
  });
});
