import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { lock } from '../../src/remedy/keep/lock';
import { book, contents, outcomes, run, sha, undo } from './book-support';

const inPlace = { place: { kind: 'in-place' } as const };

describe('undoing a conversion in place', () => {
  const converted = async (
    files: Record<string, string> = { 'a.jpg': 'colour 1', 'x/b.jpg': 'colour 2' },
  ) => {
    const root = book(files);
    fs.chmodSync(path.join(root, 'a.jpg'), 0o604);
    await run(root, inPlace);
    return { root, at: (name: string) => path.join(root, name) };
  };
  const originals = { 'a.jpg': 'colour 1', 'x/b.jpg': 'colour 2' };

  it('brings back when a picture was changed, whatever it was called since', async () => {
    const root = book({ 'a.jpg': 'colour 1' });
    const [file, moved] = ['a.jpg', 'b.jpg'].map(name => path.join(root, name));
    const then = new Date('2024-05-06T07:08:09.123Z');
    fs.utimesSync(file, then, then);
    await run(root, inPlace);
    assert.notEqual(fs.statSync(file).mtimeMs, then.getTime());
    fs.renameSync(file, moved);
    await undo(root);
    assert.equal(Math.round(fs.statSync(moved).mtimeMs), then.getTime());
  });

  it('brings back the bytes and the rights, and nothing the second time', async () => {
    const { root, at } = await converted();
    fs.chmodSync(at('a.jpg'), 0o666);
    const { undone } = await undo(root);
    assert.deepEqual(outcomes(undone), { 'a.jpg': 'restored', 'x/b.jpg': 'restored' });
    assert.deepEqual(contents(root), originals);
    assert.equal(fs.statSync(at('a.jpg')).mode & 0o7777, 0o604);
    const again = await undo(root);
    assert.deepEqual(outcomes(again.undone), { 'a.jpg': 'skipped', 'x/b.jpg': 'skipped' });
  });

  it('stops between two pictures, and says what is back', async () => {
    const { root } = await converted();
    const stop = new AbortController();
    const report = await undo(root, { signal: stop.signal, onProgress: () => stop.abort() });
    assert.match(report.stopped!, /^Stopped\. Every picture is whole, and what was brought back stays/);
    assert.deepEqual(outcomes(report.undone), { 'a.jpg': 'restored' });
    assert.deepEqual(contents(root), { ...originals, 'x/b.jpg': `rgb-neutral of ${sha('colour 2')}` });
  });

  it('does so again after the same was done again', async () => {
    const { root } = await converted();
    await undo(root);
    await run(root, inPlace);
    assert.notDeepEqual(contents(root), originals);
    await undo(root);
    assert.deepEqual(contents(root), originals);
  });

  it('leaves a result beside its picture that is what a conversion in place had made, once that is taken back', async () => {
    const { root } = await converted({ 'a.jpg': 'colour 1' });
    await undo(root);
    await run(root, {});
    const both = { 'a.jpg': 'colour 1', 'a.rgb-neutral.jpg': `rgb-neutral of ${sha('colour 1')}` };
    assert.deepEqual(contents(root), both);
    const { undone } = await undo(root);
    assert.deepEqual(outcomes(undone), { 'a.jpg': 'skipped' });
    assert.deepEqual(contents(root), both);
  });

  it('leaves the lines of layouts alone where only pictures are meant', async () => {
    const root = book({ 'a.jpg': 'colour 1', 'book.md': '![a](a.jpg)\n' });
    await run(root, { relink: true });
    const paths = [path.join(root, 'a.jpg')];
    await run(root, { ...inPlace, paths });
    const { undone, relinking } = await undo(root, { paths, lines: false });
    assert.deepEqual([outcomes(undone), relinking], [{ 'a.jpg': 'restored' }, null]);
    assert.equal(contents(root)['a.jpg'], 'colour 1');
    assert.equal(contents(root)['book.md'], '![a](a.rgb-neutral.jpg)\n');
  });

  it('brings back only what is named', async () => {
    const { root, at } = await converted();
    await undo(root, { paths: [at('x')] });
    assert.deepEqual(contents(root), { 'a.jpg': `rgb-neutral of ${sha('colour 1')}`, 'x/b.jpg': 'colour 2' });
  });

  it('never writes over what was changed since, and says where the original is', async () => {
    const { root, at } = await converted();
    fs.writeFileSync(at('a.jpg'), 'retouched');
    const { undone } = await undo(root);
    assert.deepEqual(outcomes(undone), { 'a.jpg': 'failed', 'x/b.jpg': 'restored' });
    assert.ok(undone[0].reason!.includes(`originals/${sha('colour 1')}`));
    assert.equal(contents(root)['a.jpg'], 'retouched');
  });

  it('leaves alone what was put back by hand, or was worked on after it was brought back', async () => {
    const { root, at } = await converted();
    fs.writeFileSync(at('a.jpg'), 'colour 1');
    assert.equal(outcomes((await undo(root)).undone)['a.jpg'], 'skipped');
    fs.writeFileSync(at('x/b.jpg'), 'worked on');
    assert.deepEqual(outcomes((await undo(root)).undone), { 'a.jpg': 'skipped' });
  });

  it('finds a picture that was moved, and misses one that is gone', async () => {
    const { root, at } = await converted({ ...originals, 'c.jpg': 'colour 3' });
    fs.renameSync(at('a.jpg'), at('x/moved.jpg'));
    fs.rmSync(at('c.jpg'));
    const { undone } = await undo(root);
    assert.deepEqual(outcomes(undone), {
      'c.jpg': 'failed',
      'x/b.jpg': 'restored',
      'x/moved.jpg': 'restored',
    });
    assert.match(
      undone[0].reason!,
      /not there any more\. Its original is kept as "[^"]+": copy it from there and end its name in \.jpg\./,
    );
    assert.equal(contents(root)['x/moved.jpg'], 'colour 1');
    assert.deepEqual(outcomes((await undo(root)).undone), {
      'c.jpg': 'failed',
      'x/b.jpg': 'skipped',
      'x/moved.jpg': 'skipped',
    });
  });

  it('works from any folder, and after the book was moved', async () => {
    const { root, at } = await converted();
    const moved = path.join(book({}), 'moved');
    fs.renameSync(root, moved);
    fs.mkdirSync(root);
    await undo(path.join(moved, 'x'));
    assert.equal(contents(moved)['x/b.jpg'], 'colour 2');
    assert.ok(!fs.existsSync(at('x')));
  });

  it('leaves a damaged original where it is, and the picture too', async () => {
    const { root, at } = await converted();
    const kept = at(`.evengrey/originals/${sha('colour 1')}`);
    fs.chmodSync(kept, 0o644);
    fs.writeFileSync(kept, 'rot');
    const { undone } = await undo(root);
    assert.deepEqual(outcomes(undone), { 'a.jpg': 'lost', 'x/b.jpg': 'restored' });
    assert.match(undone[0].reason!, /missing or damaged/);
    assert.deepEqual(outcomes((await undo(root, { dryRun: true })).undone), {
      'a.jpg': 'lost',
      'x/b.jpg': 'skipped',
    });
    assert.equal(contents(root)['a.jpg'], `rgb-neutral of ${sha('colour 1')}`);
  });

  it('brings back one of two that were alike, whatever became of the other', async () => {
    const alike = { 'a.jpg': 'colour 1', 'b.jpg': 'colour 1' };
    const { root, at } = await converted(alike);
    await undo(root, { paths: [at('a.jpg')] });
    assert.deepEqual(contents(root), { ...alike, 'b.jpg': `rgb-neutral of ${sha('colour 1')}` });
    await undo(root);
    assert.deepEqual(contents(root), alike);

    await run(root, inPlace);
    fs.rmSync(at('b.jpg'));
    const { undone } = await undo(root);
    assert.deepEqual(outcomes(undone), { 'a.jpg': 'restored', 'b.jpg': 'failed' });
    assert.match(undone[1].reason!, /not there any more\. Its original is kept/);
  });

  it('says so where the original of a picture that is gone or was worked on is not kept either', async () => {
    const { root, at } = await converted();
    fs.rmSync(at('a.jpg'));
    fs.writeFileSync(at('x/b.jpg'), 'worked on');
    fs.rmSync(at('.evengrey/originals'), { recursive: true });
    const { undone } = await undo(root);
    assert.deepEqual(outcomes(undone), { 'a.jpg': 'lost', 'x/b.jpg': 'lost' });
    assert.match(undone[1].reason!, /changed since it was converted.*missing or damaged/);
  });

  it('finds originals that were kept before the book became a repository', async () => {
    const { root, at } = await converted();
    fs.mkdirSync(at('.git/objects'), { recursive: true });
    fs.writeFileSync(at('.git/HEAD'), 'ref: refs/heads/main\n');
    await undo(root);
    assert.deepEqual(
      Object.fromEntries(Object.entries(contents(root)).filter(([name]) => name.endsWith('.jpg'))),
      originals,
    );
  });

  it('leaves a write-protected picture alone', async () => {
    const { root, at } = await converted();
    fs.chmodSync(at('a.jpg'), 0o444);
    assert.equal(outcomes((await undo(root)).undone)['a.jpg'], 'failed');
  });

  it('says all of it in a dry run and changes nothing', async () => {
    const { root } = await converted();
    const before = contents(root);
    assert.deepEqual(outcomes((await undo(root, { dryRun: true })).undone), {
      'a.jpg': 'planned',
      'x/b.jpg': 'planned',
    });
    assert.deepEqual(contents(root), before);
  });

  it('has nothing to say of pictures that were never converted, unless they are named', async () => {
    const root = book({ 'a.jpg': 'colour 1' });
    assert.deepEqual((await undo(root)).undone, []);
    const { undone } = await undo(root, { paths: [path.join(root, 'a.jpg')] });
    assert.equal(undone[0].reason, 'It was not converted in place.');
  });

  it('is refused while another run is at it', async () => {
    const { root, at } = await converted();
    const unlock = await lock(at('.evengrey'));
    await assert.rejects(undo(root), /Another run of evengrey/);
    await unlock();
  });
});
