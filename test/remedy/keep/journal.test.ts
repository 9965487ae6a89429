import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { type Entry, journal } from '../../../src/remedy/keep/journal';
import { temporaryFolder } from '../../book/support/folder';

const entry = (name: string): Entry => ({
  event: 'replacing',
  path: name,
  from: 'a'.repeat(64),
  to: 'b'.repeat(64),
  bytes: 10,
  mode: 0o644,
  wish: 'w',
  at: '2026-11-25T12:00:00.000Z',
});
const names = async (file: string) => (await journal(file).read()).map(({ path }) => path);

describe('journal', () => {
  const file = () => path.join(temporaryFolder(), 'journal');

  it('is empty before anything was done', async () => assert.deepEqual(await names(file()), []));

  it('gives back what was written, in its order, whoever wrote it', async () => {
    const at = file();
    const one = journal(at);
    await Promise.all([one.add(entry('a')), one.add(entry('b'))]);
    await journal(at).add(entry('c\nd "ä"'));
    assert.deepEqual(await names(at), ['a', 'b', 'c\nd "ä"']);
    assert.deepEqual((await journal(at).read())[0], entry('a'));
  });

  it('loses only the line that a kill tore, at whatever byte, and none that follows it', async () => {
    const at = file();
    await journal(at).add(entry('a'));
    const first = fs.statSync(at).size;
    await journal(at).add(entry('b'));
    const whole = fs.readFileSync(at);
    for (let length = first; length < whole.length - 1; length += 7) {
      fs.writeFileSync(at, whole.subarray(0, length));
      await journal(at).add(entry('c'));
      assert.deepEqual(await names(at), ['a', 'c'], `torn at ${length}`);
    }
  });

  it('takes nothing for a line that is none of ours', async () => {
    const at = file();
    await journal(at).add({ ...entry('x'), from: '../../etc/passwd' });
    await journal(at).add({ ...entry('y'), event: 'exploded' as Entry['event'] });
    fs.appendFileSync(at, '{"event":"replacing"}\nrubbish\n\n');
    await journal(at).add(entry('z'));
    assert.deepEqual(await names(at), ['z']);
  });
});
