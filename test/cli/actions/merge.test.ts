import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { checkFormats } from '../../../src/report/formats';
import { commit, git, repositoryOf } from '../../book/revisions/support/repository';
import { temporaryFolder, write } from '../../book/support/folder';
import { printerRgb } from '../../print/profile/profiles';
import { evenBook, faultyBook, pictures } from '../support/book';
import { evengrey, withReader } from '../support/run';

/** Runs every shard of a book, each with an empty cache as on a machine of its own; gives the files they wrote. */
async function shards(root: string, count: number, more: string[] = []): Promise<string[]> {
  const folder = temporaryFolder();
  const files = Array.from({ length: count }, (_, i) => path.join(folder, `${i + 1}.json`));
  for (const [i, file] of files.entries()) {
    const args = ['check', root, '--shard', `${i + 1}/${count}`, '--output', file, ...more];
    const ran = await evengrey(args);
    assert.deepEqual([ran.code, ran.stderr, ran.stdout], [0, '', ''], 'fails nothing');
  }
  return files;
}

/** A book that is split between encodings, so that what is said of it hangs on all of its shards; with a profile. */
function splitBook(): string {
  const root = evenBook({
    targets: {
      edition: { process: 'offset-coated', route: 'inks' },
      dummy: { process: 'silver-halide', profile: 'house/dummy.icc' },
    },
    intent: { toned: 'plates/03.tif' },
  });
  for (const i of [5, 6, 7, 8]) fs.writeFileSync(path.join(root, `plates/0${i}.tif`), pictures.blackOnly(i));
  fs.mkdirSync(path.join(root, 'house'));
  fs.writeFileSync(path.join(root, 'house/dummy.icc'), printerRgb());
  return root;
}

/** A book whose layouts have another order than its names. */
function laidOutBook(): string {
  const root = evenBook({ process: 'offset-coated', pictures: 'plates', layouts: ['z.md', 'a.md'] }, 5);
  fs.writeFileSync(path.join(root, 'a.md'), '![](plates/01.tif)\n');
  fs.writeFileSync(path.join(root, 'z.md'), '![](plates/04.tif) ![](plates/02.tif)\n');
  return root;
}

describe('evengrey merge', () => {
  for (const [what, book, count] of [
    ['a faulty book', faultyBook, 4],
    ['an even book, with more shards than pictures', evenBook, 6],
    ['a book that is laid out', laidOutBook, 2],
    ['a book that hangs together, on targets with a profile', splitBook, 3],
  ] as const)
    it(`gives the report of one run to the byte, in every format: ${what}`, async () => {
      const root = book();
      const files = await shards(root, count);
      for (const format of checkFormats) {
        const one = await evengrey(['check', root, '--format', format]);
        const more = format === 'html' ? ['--book', root] : [];
        const merged = await evengrey(['merge', ...files.toReversed(), '--format', format, ...more]);
        assert.equal(merged.stdout, one.stdout, format);
        assert.equal(merged.code, one.code, format);
      }
    });

  it('keeps the place of each picture in the layouts', async () => {
    const merged = await evengrey(['merge', ...(await shards(laidOutBook(), 2)), '--format', 'json']);
    const { pictures } = JSON.parse(merged.stdout) as {
      pictures: { path: string; position: number | null }[];
    };
    assert.deepEqual(
      pictures.map(({ path, position }) => [path, position]),
      [
        ['plates/01.tif', 3],
        ['plates/02.tif', 2],
        ['plates/03.tif', null],
        ['plates/04.tif', 1],
        ['plates/05.tif', null],
      ],
    );
  });

  it('keeps conditions, named paths and what they did not hold, and has the gate', async () => {
    const root = splitBook();
    const args = ['plates/05.tif', 'house', '--process', 'inkjet', '--light', 'A'].map(arg =>
      arg.includes('/') || arg === 'house' ? path.join(root, arg) : arg,
    );
    const folder = temporaryFolder();
    const files = [1, 2].map(i => path.join(folder, `${i}.json`));
    for (const [i, file] of files.entries())
      assert.equal((await evengrey(['check', ...args, '--shard', `${i + 1}/2`, '--output', file])).code, 0);
    const one = await evengrey(['check', ...args, '--format', 'json']);
    const merged = await evengrey(['merge', ...files, '--format', 'json']);
    assert.deepEqual([merged.stdout, merged.code], [one.stdout, 2]);
    assert.match(merged.stderr, /"house" holds no picture of the book/);
    const all = await shards(root, 2);
    const strict = await evengrey(['merge', ...all, '--max-warnings', '0']);
    assert.deepEqual([strict.code, strict.stderr.includes('--max-warnings 0 allows')], [1, true]);
  });

  it('shows on a page the pictures that were read, and no others', async () => {
    const root = evenBook();
    const files = await shards(root, 2);
    const page = async (...more: string[]) => evengrey(['merge', ...files, ...more]);
    const without = await page('--format', 'html');
    assert.deepEqual([without.code, without.stdout], [2, '']);
    assert.match(without.stderr, /Name the folder that they lie in: --book FOLDER/);
    const text = await page('--book', root);
    assert.deepEqual([text.code, text.stdout], [2, '']);
    assert.match(text.stderr, /no other format shows pictures/);

    const counted = (html: string, what: RegExp) => html.match(what)?.length ?? 0;
    const drawn = /src="data:image/g;
    const all = (await page('--format', 'html', '--book', root)).stdout;
    fs.writeFileSync(path.join(root, 'plates/01.tif'), pictures.neutral(77));
    fs.rmSync(path.join(root, 'plates/02.tif'));
    const some = (await page('--format', 'html', '--book', root)).stdout;
    // each of the two stands among the others and on its sheet
    assert.equal(counted(some, /is not the one that was checked/g), 2);
    assert.match(some, /<li>Not shown, for the reason .*: plates\/01\.tif and plates\/02\.tif\.<\/li>/);
    assert.equal(counted(some, drawn), counted(all, drawn) - 4);
    const other = await page('--format', 'html', '--book', evenBook());
    assert.deepEqual([other.code, other.stdout], [0, all], 'the same pictures elsewhere');
    const foreign = await page('--format', 'html', '--book', temporaryFolder());
    assert.deepEqual([foreign.code, foreign.stdout], [2, '']);
    assert.match(foreign.stderr, /holds none of the pictures that the shards read/);
  });

  it('tells a shard that is missing, doubled, cut short, changed or of another check', async () => {
    const root = evenBook();
    const [one, two, three] = await shards(root, 3);
    const told = async (...files: string[]) => {
      const ran = await evengrey(['merge', ...files]);
      assert.deepEqual([ran.code, ran.stdout], [2, ''], files.join(' '));
      return ran.stderr;
    };
    assert.match(
      await told(one, three),
      /^evengrey: Shard 2 of 3 is missing: stopped or killed.* --shard 2\/3"/,
    );
    assert.match(await told(two), /^evengrey: Shards 1 and 3 of 3 are missing/);
    assert.match(await told(one, two, three, two), /are both shard 2 of 3\. Name each once\.\n$/);
    assert.match(
      await told(one, two, `${three}-gone`),
      /There is no file .*: that shard was stopped or killed/,
    );

    const folder = temporaryFolder();
    const copy = (name: string, text: string) => {
      const file = path.join(folder, name);
      fs.writeFileSync(file, text);
      return file;
    };
    const text = fs.readFileSync(three, 'utf8');
    assert.match(
      await told(one, two, copy('cut.json', text.slice(0, 900))),
      /cut short.*was killed leaves such a file/,
    );
    assert.match(
      await told(one, two, copy('changed.json', text.replace('offset-coated', 'offset-uncoated'))),
      /was changed after/,
    );
    assert.match(await told(one, two, copy('other.json', '{"schema":2}')), /is no report of a shard/);
    assert.match(
      await told(one, two, copy('old.json', text.replace('"schema":2', '"schema":1'))),
      /another version of Evengrey/,
    );

    const [other] = await shards(evenBook({ process: 'inkjet' }), 3);
    assert.match(await told(other, two, three), /is of another check than .*: with other settings\. Merge/);
    const [fourth] = await shards(evenBook({ process: 'offset-coated' }, 5), 3);
    assert.match(await told(fourth, two, three), /: of other pictures\. Merge/);
    write(root, { 'book.md': ['01', '02', '03', '04'].map(n => `\n![](plates/${n}.tif)\n`).join('') });
    const [laidOut] = await shards(root, 3);
    fs.rmSync(path.join(root, 'book.md'));
    assert.match(await told(laidOut, two, three), /: of another state of the book: other layouts, ignore/);
    const waivers = [{ rule: 'untagged', content: [], value: {} }];
    write(root, { '.evengrey-waivers.json': JSON.stringify({ waivers }) });
    const [waiving] = await shards(root, 3);
    fs.rmSync(path.join(root, '.evengrey-waivers.json'));
    assert.match(await told(waiving, two, three), /: with other waivers, or other reasons for them\. Merge/);
    const [half] = await shards(root, 2);
    assert.match(await told(one, two, half), /: one of 2 shards, not of 3\. Merge/);
  });

  /** A book in a repository, and a clone of it as on another runner. */
  function onTwoRunners(): [root: string, clone: string] {
    const book = evenBook();
    const names = ['evengrey.json', ...[1, 2, 3, 4].map(i => `plates/0${i}.tif`)];
    const root = repositoryOf(
      Object.fromEntries(names.map(name => [name, fs.readFileSync(path.join(book, name))])),
    );
    const clone = path.join(temporaryFolder(), 'elsewhere');
    git(root, 'clone', '--quiet', root, clone);
    return [root, clone];
  }

  it('joins shards of one revision from other folders, whatever results lie there, also where git is not asked', async () => {
    const [root, clone] = onTwoRunners();
    write(clone, { 'report.json': '{}', 'evengrey.sarif': '{}' });
    const copy = path.join(temporaryFolder(), 'copy');
    fs.cpSync(root, copy, { recursive: true });
    fs.rmSync(path.join(copy, '.git'), { recursive: true });
    const one = await evengrey(['check', root, '--format', 'json']);
    const [first] = await shards(root, 2);
    for (const other of [clone, copy]) {
      const [, second] = await shards(other, 2);
      const merged = await evengrey(['merge', first, second, '--format', 'json']);
      assert.deepEqual([merged.stdout, merged.stderr], [one.stdout, '']);
    }
  });

  it('joins no shards of two revisions, though names and settings are the same', async () => {
    const [root, clone] = onTwoRunners();
    const [first] = await shards(clone, 2);
    const refused = async (other: string) => {
      const [, second] = await shards(other, 2);
      const ran = await evengrey(['merge', first, second]);
      assert.deepEqual([ran.code, ran.stdout], [2, '']);
      return ran.stderr;
    };
    // as large as it was
    commit(root, { 'plates/03.tif': pictures.neutral(7) });
    assert.match(
      await refused(root),
      /is of another state of the book than .*: "plates\/03\.tif" has the same size in both, and by git another content\. Read all shards of one revision/,
    );
    const { size } = fs.statSync(path.join(root, 'plates/01.tif'));
    const copy = evenBook();
    write(copy, { 'plates/01.tif': pictures.grey(1) });
    const grey = fs.statSync(path.join(copy, 'plates/01.tif')).size;
    assert.match(
      await refused(copy),
      new RegExp(`: "plates/01\\.tif" is ${size} bytes in one and ${grey} bytes in the other\\.`),
    );
  });

  it('says in a result of which book it is that could not be joined', async () => {
    const [root] = onTwoRunners();
    fs.mkdirSync(path.join(root, 'a'));
    git(root, 'mv', 'evengrey.json', 'plates', 'a');
    commit(root);
    const [first] = await shards(path.join(root, 'a'), 2);
    const ran = await evengrey(['merge', first, '--format', 'junit']);
    assert.equal(ran.code, 2);
    assert.match(ran.stdout, /<testsuite name="a: Book" [\s\S]*Shard 2 of 2 is missing/);
  });

  it('leaves nothing behind of a shard that is killed', async () => {
    const root = evenBook();
    const file = path.join(temporaryFolder(), '1.json');
    const program = withReader('setInterval(() => {}, 1000);');
    const ran = await evengrey(['check', root, '--shard', '1/2', '--output', file], {
      program,
      during: child => setTimeout(() => child.kill('SIGKILL'), 400),
    });
    assert.equal(ran.code, null);
    assert.deepEqual(fs.readdirSync(path.dirname(file)), []);
  });

  it('takes no verdict from a shard', async () => {
    const root = evenBook();
    for (const [args, message] of [
      [['--shard', '3/2'], /a part and the number of parts, such as 2\/4/],
      [['--shard', '0/2'], /such as 2\/4/],
      [['--shard', '1/2', '--format', 'sarif'], /writes JSON for "evengrey merge"/],
      [['--shard', '1/2', '--max-warnings', '0'], /cannot be used with/],
      [['--shard', '1/2', '--since', 'HEAD'], /cannot be used with/],
    ] as const) {
      const ran = await evengrey(['check', root, ...args]);
      assert.deepEqual([ran.code, ran.stdout], [2, '']);
      assert.match(ran.stderr, message);
    }
  });
});
