import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { commit, git, repositoryOf } from '../book/revisions/support/repository';
import { temporaryFolder, write } from '../book/support/folder';
import { evenBook, pictures } from './support/book';
import { dist, evengrey, withReader } from './support/run';

/** Calls `then` once the file is there. */
function when(file: string, then: () => void): void {
  const watch = setInterval(() => {
    if (!fs.existsSync(file)) return;
    clearInterval(watch);
    then();
  }, 10);
}

describe('accidents', () => {
  it('a reader that is killed once costs nothing', async () => {
    const marker = path.join(temporaryFolder(), 'killed');
    const program = withReader(`
      const fs = require('node:fs');
      process.on('message', request => {
        if (!request.file.endsWith('02.tif') || fs.existsSync(${JSON.stringify(marker)})) return;
        fs.writeFileSync(${JSON.stringify(marker)}, '');
        process.kill(process.pid, 'SIGKILL');
      });
      require(real);`);
    const ran = await evengrey(['check', evenBook(), '--format', 'json'], { program });
    assert.ok(fs.existsSync(marker));
    assert.equal(ran.code, 0);
    assert.match(
      ran.stderr,
      /A process was lost on "plates\/02\.tif" \(the [a-z ]+ ended by SIGKILL\); another goes on\./,
    );
    assert.equal(JSON.parse(ran.stdout).summary.encodings['rgb-neutral'], 4);
  });

  it('a reader that a picture kills each time costs that picture, which is named', async () => {
    const program = withReader(`
      process.on('message', request => {
        if (request.file.endsWith('02.tif')) process.kill(process.pid, 'SIGKILL');
      });
      require(real);`);
    const ran = await evengrey(['check', evenBook(), '--format', 'json'], { program });
    assert.equal(ran.code, 1);
    const { summary, pictures } = JSON.parse(ran.stdout);
    assert.deepEqual(summary.encodings, { 'rgb-neutral': 3, unreadable: 1 });
    const lost = pictures.find((p: { encoding: string }) => p.encoding === 'unreadable');
    assert.deepEqual([lost.path, lost.unreadable.reason], ['plates/02.tif', 'crashed']);
  });

  it('a reader that does not start ends the check with a message, not with a report', async () => {
    const program = withReader("throw new Error('no decoder here');");
    const ran = await evengrey(['check', evenBook()], { program });
    assert.deepEqual([ran.code, ran.stdout], [2, '']);
    assert.match(ran.stderr, /could not be started/);
  });

  for (const [signal, code] of [
    ['SIGINT', 130],
    ['SIGTERM', 143],
  ] as const)
    it(`${signal} stops a check, keeps what was read and an older result, and leaves no reader behind`, async () => {
      const folder = temporaryFolder();
      const hanging = path.join(folder, 'hanging');
      const program = withReader(`
        // the fourth request hangs, whichever picture it is for: files are looked at side by side
        let seen = 0;
        const hangs = () => {
          if (++seen < 4) return false;
          // whole at once: the test stops the check as soon as the file is there
          const fs = require('node:fs');
          fs.writeFileSync(${JSON.stringify(`${hanging}.part`)}, String(process.pid));
          fs.renameSync(${JSON.stringify(`${hanging}.part`)}, ${JSON.stringify(hanging)});
          return true;
        };
        const on = process.on;
        process.on = function (event, listener) {
          if (event !== 'message') return on.call(this, event, listener);
          return on.call(this, event, request => hangs() || listener(request));
        };
        require(real);`);
      const env = { EVENGREY_CACHE_DIR: folder };
      const root = evenBook();
      const older = path.join(folder, 'older.json');
      const args = ['check', root, '--jobs', '1', '--format', 'json', '--output', older];
      assert.equal((await evengrey([...args, '--no-cache'])).code, 0);
      const before = fs.readFileSync(older, 'utf8');
      const ran = await evengrey(args, {
        program,
        env,
        during: child => when(hanging, () => child.kill(signal)),
      });
      assert.deepEqual([ran.code, ran.stdout], [code, '']);
      assert.equal(fs.readFileSync(older, 'utf8'), before);
      assert.match(ran.stderr, /^Stopped\. What was read so far is kept/);
      assert.throws(() => process.kill(Number(fs.readFileSync(hanging, 'utf8')), 0), { code: 'ESRCH' });
      const [kept] = fs.readdirSync(path.join(folder, 'books'));
      fs.rmSync(hanging);
      const forgetful = await evengrey([...args, '--no-cache'], {
        program,
        env,
        during: child => when(hanging, () => child.kill(signal)),
      });
      assert.deepEqual([forgetful.code, forgetful.stderr], [code, 'Stopped.\n']);
      assert.equal(fs.readFileSync(path.join(folder, 'books', kept), 'utf8').match(/\["facts"/g)?.length, 3);
    });

  it('a reader of the output that had enough is no accident', () => {
    const command = `"${process.execPath}" "${path.join(dist, 'cli.js')}" check --format json --no-cache | head -c 20; echo " \${PIPESTATUS[0]}"`;
    const out = execFileSync('bash', ['-c', command], { cwd: evenBook(undefined, 9), encoding: 'utf8' });
    assert.match(out, / 0\n$/);
  });

  it('temporary files that can go nowhere are told in a sentence, with the code of a failure', async () => {
    const top = repositoryOf({ 'evengrey.json': '{}', 'a.tif': pictures.neutral(1) });
    commit(top, { 'a.tif': pictures.neutral(2) });
    write(top, { 'a.tif': pictures.neutral(3) });
    git(top, 'add', '--all');
    const env = { TMPDIR: path.join(top, 'nowhere') };
    for (const args of [
      ['check', '--staged'],
      ['compare', 'HEAD~1'],
    ]) {
      const ran = await evengrey(args, { cwd: top, env });
      assert.deepEqual([ran.code, ran.stdout], [2, '']);
      assert.match(
        ran.stderr,
        /^evengrey: Nothing can be written where temporary files go \(".*nowhere": there is no such folder\).*TMPDIR\.\n$/,
      );
    }
  });

  it('a result that finds no room is told in a sentence, with the code of a failure', () => {
    const cwd = evenBook();
    const run = (args: string, to: string) => {
      const command = `"${process.execPath}" "${path.join(dist, 'cli.js')}" ${args} ${to}`;
      return spawnSync('bash', ['-c', command], { cwd, encoding: 'utf8' });
    };
    const verbs = ['check --no-cache', 'check --no-cache --format json', 'explain untagged', '--help'];
    for (const args of [...verbs, 'check --no-cache --format html']) {
      const { status, stderr } = run(args, '> /dev/full');
      assert.deepEqual(
        [status, stderr],
        [
          2,
          'evengrey: The result cannot be written: there is no room left where it goes. What came of it is not whole.\n',
        ],
        args,
      );
    }
    assert.equal(run('check --no-cache', '> /dev/full 2>&1').status, 2);
    assert.equal(run('check nowhere', '2> /dev/full').status, 2);
    assert.equal(run('check --no-cache --max-warnings 0', '2> /dev/full').status, 0);
  });

  it('a cache that was destroyed is built again', async () => {
    const env = { EVENGREY_CACHE_DIR: temporaryFolder() };
    const args = ['check', evenBook(), '--format', 'json'];
    const first = await evengrey(args, { env });
    const books = path.join(env.EVENGREY_CACHE_DIR, 'books');
    for (const name of fs.readdirSync(books))
      fs.writeFileSync(path.join(books, name), 'rubbish\n'.repeat(1000));
    const second = await evengrey(args, { env });
    assert.deepEqual([second.code, second.stderr, second.stdout], [0, '', first.stdout]);
  });

  it('two checks of one book at the same time do not disturb each other', async () => {
    const env = { EVENGREY_CACHE_DIR: temporaryFolder() };
    const args = ['check', evenBook(undefined, 9), '--format', 'json'];
    const [one, two] = await Promise.all([evengrey(args, { env }), evengrey(args, { env })]);
    assert.equal(one.stdout, two.stdout);
    assert.equal((await evengrey(args, { env })).stdout, one.stdout);
  });
});
