import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { createConverters, type ReadingConverters } from '../../src/remedy/converters';
import { temporaryFolder } from '../book/support/folder';
import { pictures } from '../cli/support/book';
import { wishFor } from './support';

/** A converter that does what the file's name says. */
const SCRIPT = `
process.on('disconnect', () => process.exit(0));
process.on('message', ({ id, file, temporary, wish }) => {
  const name = require('node:path').basename(file);
  if (name === 'crash') process.kill(process.pid, 'SIGSEGV');
  if (name === 'facts') return process.send({ id, ok: true, kind: 'facts', facts: [{ page: 1 }] });
  if (name === 'refused') return process.send({ id, ok: true, refused: 'It will not do.' });
  if (name === 'full') return process.send({ id, ok: false, message: 'ENOSPC: no space left', code: 'ENOSPC' });
  if (name === 'slow') return setTimeout(() => process.send({ id, ok: true, result: { pid: process.pid } }), 200);
  process.send({ id, ok: true, result: { temporary, to: wish.to } });
});
process.send({ kind: 'ready' });
`;

describe('converters', () => {
  let converters: ReadingConverters;
  const task = (file: string, temporary = '/x') => ({
    file,
    temporary,
    wish: wishFor({ to: 'black-only' }),
    known: null,
  });
  const start = () => {
    const converterFile = path.join(temporaryFolder({ 'converter.cjs': SCRIPT }), 'converter.cjs');
    converters = createConverters({ converterFile, size: 1 });
  };
  afterEach(() => converters.close());

  it('are handed the task and give back the result', async () => {
    start();
    const result: unknown = await converters.convert(task('a', '/t'));
    assert.deepEqual(result, { temporary: '/t', to: 'black-only' });
  });

  it('tell a refusal, a full disk and a crash apart', async () => {
    start();
    await assert.rejects(converters.convert(task('refused')), {
      name: 'RemedyError',
      message: 'It will not do.',
    });
    await assert.rejects(converters.convert(task('full')), { code: 'ENOSPC' });
    await assert.rejects(converters.convert(task('crash')), { name: 'ChildFailure', kind: 'crashed' });
  });

  it('leave nobody waiting when they are stopped, and are gone when closed', async () => {
    start();
    const stop = new AbortController();
    const slow = converters.convert(task('slow'), stop.signal);
    setTimeout(() => stop.abort(), 50);
    await assert.rejects(slow, { name: 'AbortError' });
    const { pid } = (await converters.convert(task('slow'))) as unknown as { pid: number };
    await converters.close();
    assert.throws(() => process.kill(pid, 0), { code: 'ESRCH' });
  });

  it('read facts, too, and say what befell a reader as a pool does', async () => {
    start();
    assert.deepEqual((await converters.facts('facts'))[0], { page: 1 });
    const [lost] = await converters.facts('crash');
    assert.equal(lost.unreadable?.reason, 'crashed');
  });

  it('as they are built, convert a picture and prove it', async () => {
    const dist = path.resolve(process.env.EVENGREY_DIST ?? 'dist');
    converters = createConverters({ converterFile: path.join(dist, 'converter.js'), size: 1 });
    const folder = temporaryFolder({ 'a.tif': pictures.grey(1), 'b.tif': 'no picture' });
    const at = (name: string) => path.join(folder, name);
    const result = await converters.convert(task(at('a.tif'), at('a.tmp')));
    assert.deepEqual([result.format, result.proof.encoding], ['tiff', 'black-only']);
    assert.equal(fs.statSync(at('a.tmp')).size, result.proof.bytes);
    await assert.rejects(converters.convert(task(at('b.tif'), at('b.tmp'))), { name: 'RemedyError' });
    await assert.rejects(converters.convert(task(at('a.tif'), '/no/such/folder/a.tmp')), { code: 'ENOENT' });
    assert.ok(!fs.existsSync(at('b.tmp')));
  });
});
