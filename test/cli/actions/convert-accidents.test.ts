import assert from 'node:assert/strict';
import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { noSettings } from '../../../src/book/settings/settings';
import { undoConversions } from '../../../src/remedy/undo';
import { convertReportSchema } from '../../../src/report/json/convert-schema';
import { temporaryFolder, write } from '../../book/support/folder';
import { strictErrors } from '../../report/support';
import { pictures } from '../support/book';
import { contents, leftovers } from '../support/contents';
import { dist, evengrey, withConverter } from '../support/run';
import { tiff } from '../support/tiff';

const IN_PLACE = ['--to', 'rgb-neutral', '--in-place'];

/** Twenty pictures, all to be converted. */
const twenty = (): Record<string, Buffer> =>
  Object.fromEntries(
    Array.from({ length: 20 }, (_, i) => [`plates/${String(i).padStart(2, '0')}.tif`, pictures.grey(i + 1)]),
  );

/** Every original is there, bit for bit: in its place, or in the keep while the whole result is in its place. */
function assertWhole(root: string, originals: Record<string, string>, results: Record<string, string>) {
  // there is no keep yet where it was killed before the first picture
  const keep = path.join(root, '.evengrey/originals');
  const kept = fs.existsSync(keep) ? contents(keep) : {};
  const now = contents(root);
  assert.deepEqual(Object.keys(now), Object.keys(originals), 'no file has come or gone');
  for (const [name, original] of Object.entries(originals)) {
    if (now[name] === original) continue;
    assert.equal(now[name], results[name], `${name} is neither the original nor the result`);
    assert.equal(kept[original], original, `the original of ${name} is not kept`);
  }
}

/** Numbers from 0 to 1 that are the same in every run (xorshift, Marsaglia 2003). */
function randomFrom(seed: number): () => number {
  let x = seed;
  return () => {
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    return (x >>> 0) / 2 ** 32;
  };
}

describe('evengrey convert in place, killed', () => {
  const env = { PATH: process.env.PATH, EVENGREY_CACHE_DIR: '' };

  /** A group of its own, so that it can be killed with its children or without them. */
  function start(root: string): ChildProcess {
    const args = [path.join(dist, 'cli.js'), 'convert', root, ...IN_PLACE];
    return spawn(process.execPath, args, { env, stdio: 'ignore', detached: true });
  }
  const ended = (child: ChildProcess) => new Promise<number | null>(resolve => child.once('exit', resolve));

  async function groupGone(pid: number): Promise<void> {
    for (;;) {
      try {
        process.kill(-pid, 0);
      } catch {
        return;
      }
      await pause(10);
    }
  }

  it('at 50 random moments: every original is there, bit for bit, and undoing restores all', async function () {
    this.timeout(600_000);
    // what was read of the pictures is known, so that the time goes into converting
    env.EVENGREY_CACHE_DIR = temporaryFolder();
    const files = twenty();
    const model = temporaryFolder(files);
    const originals = contents(model);
    await ended(start(model));
    await ended(start(temporaryFolder(files)));
    const results = contents(model);
    assert.ok(Object.keys(originals).every(name => results[name] !== originals[name]));

    // from a little before the first picture is replaced to a little after the last
    const timed = temporaryFolder(files);
    const journal = path.join(timed, '.evengrey/journal');
    const begun = performance.now();
    const run = start(timed);
    const whole = ended(run);
    while (!fs.existsSync(journal) && run.exitCode === null) await pause(2);
    const first = performance.now() - begun;
    await whole;
    const last = performance.now() - begun;

    const random = randomFrom(20261125);
    const root = path.join(temporaryFolder(), 'book');
    let inTheMiddle = 0;
    // a machine that is less busy now than when it was timed, or busier
    let pace = 1;
    for (let round = 0; round < 50; round++) {
      write(root, files);
      const child = start(root);
      const end = ended(child);
      await pause(pace * (0.7 * first + random() * (1.1 * last - 0.7 * first)));
      const isOver = child.exitCode !== null;
      try {
        process.kill(round % 2 ? child.pid! : -child.pid!, 'SIGKILL');
      } catch {
        // it was quicker
      }
      await end;
      await groupGone(child.pid!);
      assertWhole(root, originals, results);
      const replaced = Object.entries(contents(root)).filter(
        ([name, hash]) => hash !== originals[name],
      ).length;
      if (replaced > 0 && replaced < 20) inTheMiddle++;
      else pace *= isOver ? 0.9 : replaced === 0 ? 1.1 : 1;
      if (round % 10 === 0) {
        assert.equal(
          (await evengrey(['convert', root, ...IN_PLACE], { env: { ...env, PATH: env.PATH! } })).code,
          0,
        );
        assert.deepEqual(contents(root), results, 'begun again, it comes to its end');
        assert.deepEqual(leftovers(root), []);
      }
      const undone = await undoConversions({
        ...{ root, paths: [root], settings: noSettings, dryRun: false },
      });
      assert.deepEqual(
        undone.undone.filter(({ outcome }) => outcome === 'failed'),
        [],
      );
      assert.deepEqual(contents(root), originals);
      assert.deepEqual(leftovers(root), []);
      fs.rmSync(root, { recursive: true });
    }
    assert.ok(inTheMiddle > 0, 'no kill came while pictures were being replaced');
  });

  it('two at once: one waits or is refused, and both leave everything whole', async () => {
    const files = twenty();
    const root = temporaryFolder(files);
    const originals = contents(root);
    const both = await Promise.all([1, 2].map(() => evengrey(['convert', root, ...IN_PLACE])));
    assert.ok(both.some(({ code }) => code === 0));
    for (const { code, stderr } of both)
      if (code !== 0) assert.match(stderr, /Another run of evengrey is changing pictures of this book/);
    assert.equal((await evengrey(['convert', root, '--undo'])).code, 0);
    assert.deepEqual(contents(root), originals);
  });
});

describe('evengrey convert, stopped', () => {
  for (const [signal, code] of [
    ['SIGINT', 130],
    ['SIGTERM', 143],
  ] as const)
    it(`by ${signal}: what is done stands, nothing is half, nobody is left behind`, async () => {
      const hanging = path.join(temporaryFolder(), 'hanging');
      const program = withConverter(`
        const fs = require('node:fs');
        const on = process.on;
        process.on = function (event, listener) {
          if (event !== 'message') return on.call(this, event, listener);
          return on.call(this, event, request => {
            if (request.kind !== 'convert' || !request.file.endsWith('05.tif')) return listener(request);
            fs.writeFileSync(request.temporary, 'half');
            fs.writeFileSync(${JSON.stringify(`${hanging}.part`)}, String(process.pid));
            fs.renameSync(${JSON.stringify(`${hanging}.part`)}, ${JSON.stringify(hanging)});
          });
        };
        require(real);`);
      const root = temporaryFolder(twenty());
      const originals = contents(root);
      const ran = await evengrey(['convert', root, ...IN_PLACE, '--jobs', '1', '--format', 'json'], {
        program,
        during: child => {
          const watch = setInterval(() => {
            if (!fs.existsSync(hanging)) return;
            clearInterval(watch);
            child.kill(signal);
          }, 10);
          watch.unref();
        },
      });
      assert.equal(ran.code, code);
      assert.match(ran.stderr, /^Stopped\. Every picture is whole/);
      const report = JSON.parse(ran.stdout);
      assert.equal(strictErrors(convertReportSchema, report), '');
      assert.match(report.stopped, /^Stopped\./);
      assert.deepEqual([report.summary.converted, report.summary.failed], [5, 15]);
      assert.throws(() => process.kill(Number(fs.readFileSync(hanging, 'utf8')), 0), { code: 'ESRCH' });
      assert.deepEqual(leftovers(root), []);
      const changed = Object.entries(contents(root)).filter(([name, hash]) => hash !== originals[name]);
      assert.equal(changed.length, 5, 'the five before it');
      assert.equal((await evengrey(['convert', root, '--undo'])).code, 0);
      assert.deepEqual(contents(root), originals);
    });
});

describe('evengrey convert, on a disk', () => {
  let disk: string;

  /** A disk of its own of so many KB, which takes root's rights to have. */
  function mounted(kilobytes: number): string {
    assert.equal(process.getuid?.(), 0, 'a disk of its own is mounted by root only: run the tests as root');
    disk = path.join(temporaryFolder(), 'disk');
    fs.mkdirSync(disk);
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${kilobytes}k`, 'tmpfs', disk]);
    return disk;
  }
  afterEach(() => {
    if (disk) execFileSync('umount', ['-l', disk]);
    disk = '';
  });

  /** Results of noise are about as large as the pictures: 64 KB each. */
  const noisy = () => {
    const random = randomFrom(7);
    return Object.fromEntries(
      Array.from({ length: 8 }, (_, i) => [
        `plates/0${i}.tif`,
        tiff(256, 256, () => [Math.floor(random() * 256)]),
      ]),
    );
  };

  it('that is full: a clear sentence, code 2, every original whole; with room it goes on, and undoes', async () => {
    const results = temporaryFolder(noisy());
    assert.equal((await evengrey(['convert', results, ...IN_PLACE])).code, 0);
    const root = mounted(4096);
    write(root, noisy());
    const originals = contents(root);
    const free = fs.statfsSync(root);
    const ballast = path.join(root, 'ballast');
    fs.writeFileSync(ballast, Buffer.alloc(free.bavail * free.bsize - 500 * 1024));
    const all = { ...originals, ballast: contents(root).ballast };
    const expected = { ...contents(results), ballast: all.ballast };

    const ran = await evengrey(['convert', root, ...IN_PLACE]);
    assert.equal(ran.code, 2);
    assert.match(
      ran.stderr,
      /^evengrey: The disk is full, so the conversion was stopped\. Every picture is whole/,
    );
    assert.match(ran.stdout, /[1-7] pictures? converted, [1-7] failed\./);
    assertWhole(root, sorted(all), expected);
    assert.deepEqual(leftovers(root), []);

    fs.rmSync(ballast);
    assert.equal((await evengrey(['convert', root, ...IN_PLACE])).code, 0);
    assert.deepEqual(contents(root), contents(results));
    const left = fs.statfsSync(root);
    fs.writeFileSync(ballast, Buffer.alloc(left.bavail * left.bsize));
    const full = await evengrey(['convert', root, '--undo']);
    assert.equal(full.code, 2);
    assert.match(full.stderr, /nothing was undone|no more was brought back/);
    assert.doesNotMatch(full.stderr, /beside the pictures|conver/);
    assert.deepEqual(leftovers(root), []);
    fs.rmSync(ballast);
    assert.equal((await evengrey(['convert', root, '--undo'])).code, 0);
    assert.deepEqual(contents(root), originals);
  });

  it('that is full, beside the pictures: no half file has the name of a result', async () => {
    const root = mounted(1024);
    write(root, noisy());
    const { bavail, bsize } = fs.statfsSync(root);
    fs.writeFileSync(path.join(root, 'ballast'), Buffer.alloc(bavail * bsize - 150 * 1024));
    const before = contents(root);
    const ran = await evengrey(['convert', root, '--to', 'rgb-neutral']);
    assert.equal(ran.code, 2);
    assert.match(ran.stderr, /The disk is full/);
    const after = contents(root);
    for (const name of Object.keys(before)) assert.equal(after[name], before[name]);
    assert.deepEqual(leftovers(root), []);
    const { pictures: found } = JSON.parse((await evengrey(['check', root, '--format', 'json'])).stdout);
    for (const picture of found) assert.notEqual(picture.encoding, 'unreadable', picture.path);
  });

  it('that is read-only: says so, and writes elsewhere when asked', async () => {
    const root = mounted(2048);
    write(root, twenty());
    const before = contents(root);
    execFileSync('mount', ['-o', 'remount,ro', root]);
    const beside = await evengrey(['convert', root, '--to', 'rgb-neutral']);
    assert.equal(beside.code, 1);
    assert.match(beside.stdout, /0 pictures converted, 20 failed\.[\s\S]*read-only/);
    const inPlace = await evengrey(['convert', root, ...IN_PLACE]);
    assert.equal(inPlace.code, 2);
    assert.match(inPlace.stderr, /Originals cannot be kept in .*EROFS/);
    assert.deepEqual(contents(root), before);
    const out = temporaryFolder();
    assert.equal((await evengrey(['convert', root, '--to', 'rgb-neutral', '--out', out])).code, 0);
    assert.equal(Object.keys(contents(out)).length, 20);
  });
});

const sorted = <T>(record: Record<string, T>): Record<string, T> =>
  Object.fromEntries(Object.entries(record).sort(([x], [y]) => (x < y ? -1 : 1)));
