import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { ChildFailure } from '../../src/book/child';
import { noSettings } from '../../src/book/settings/settings';
import { plainProfile } from '../../src/colour/icc/write';
import type { Converters } from '../../src/remedy/converters';
import { lock } from '../../src/remedy/keep/lock';
import { RemedyError } from '../../src/remedy/remedy-error';
import { allGrey, book, contents, factsOf, fakeConverters, outcomes, run, sha } from './book-support';
import { wishFor } from './support';

const made = (source: string, to = 'rgb-neutral') => `${to} of ${sha(source)}`;
const inPlace = { place: { kind: 'in-place' } as const };

describe('batch, beside the pictures', () => {
  it('writes what is needed, says what it is, and leaves the pictures alone', async () => {
    const root = book({ 'a.jpg': 'colour 1', 'x/b.png': 'colour 2', 'c.tif': 'rgb-neutral 3', 'd.txt': 'x' });
    const report = await run(root);
    assert.deepEqual(outcomes(report.conversions), {
      'a.jpg': 'converted',
      'c.tif': 'skipped',
      'x/b.png': 'converted',
    });
    assert.deepEqual(contents(root), {
      'a.jpg': 'colour 1',
      'a.rgb-neutral.jpg': made('colour 1'),
      'c.tif': 'rgb-neutral 3',
      'd.txt': 'x',
      'x/b.png': 'colour 2',
      'x/b.rgb-neutral.png': made('colour 2'),
    });
    const [first] = report.conversions;
    assert.deepEqual(
      [first.output, first.sha256, first.proof?.sha256],
      ['a.rgb-neutral.jpg', sha('colour 1'), sha(made('colour 1'))],
    );
  });

  it('does nothing the second time, and takes its results for no pictures', async () => {
    const root = book({ 'a.jpg': 'colour 1', 'b.jpg': 'colour 2' });
    await run(root);
    const before = contents(root);
    const converters = fakeConverters();
    const report = await run(root, { converters });
    assert.deepEqual(outcomes(report.conversions), { 'a.jpg': 'skipped', 'b.jpg': 'skipped' });
    assert.deepEqual([converters.tasks, contents(root)], [[], before]);
    assert.equal(report.conversions[0].output, 'a.rgb-neutral.jpg');
    assert.match(report.notices.join(), /2 pictures were left out: results of earlier conversions/);
  });

  it('does nothing the second time where nothing is remembered, either', async () => {
    const root = book({ 'a.jpg': 'colour 1' });
    await run(root);
    const converters = fakeConverters();
    await run(root, { converters, memory: path.join(root, '.other') });
    assert.deepEqual(converters.tasks, []);
  });

  it('replaces its own result of a picture that was changed since, but not one that was worked on', async () => {
    const root = book({ 'a.jpg': 'colour 1', 'b.jpg': 'colour 2' });
    await run(root);
    fs.writeFileSync(path.join(root, 'a.jpg'), 'colour 11');
    fs.writeFileSync(path.join(root, 'b.jpg'), 'colour 22');
    fs.writeFileSync(path.join(root, 'b.rgb-neutral.jpg'), `${made('colour 2')} retouched`);
    const { conversions } = await run(root);
    assert.deepEqual(outcomes(conversions), { 'a.jpg': 'converted', 'b.jpg': 'failed' });
    assert.match(conversions[0].told.join(), /Replaces the earlier result/);
    assert.equal(contents(root)['a.rgb-neutral.jpg'], made('colour 11'));
    assert.equal(contents(root)['b.rgb-neutral.jpg'], `${made('colour 2')} retouched`);
  });

  it('never writes over a file of somebody’s own, a link or a folder', async () => {
    const root = book({
      'a.jpg': 'colour 1',
      'a.rgb-neutral.jpg': 'colour mine',
      'b.jpg': 'colour 2',
      'c.jpg': 'colour 3',
      'c.rgb-neutral.jpg/x.txt': '',
    });
    fs.symlinkSync('nowhere', path.join(root, 'b.rgb-neutral.jpg'));
    const before = contents(root);
    const { conversions } = await run(root, { paths: ['a', 'b', 'c'].map(n => path.join(root, `${n}.jpg`)) });
    assert.deepEqual(outcomes(conversions), { 'a.jpg': 'failed', 'b.jpg': 'failed', 'c.jpg': 'failed' });
    assert.deepEqual(contents(root), before);
  });

  it('never writes over what comes into being meanwhile', async () => {
    const root = book({ 'a.jpg': 'colour 1' });
    const converters = fakeConverters(() => fs.writeFileSync(path.join(root, 'a.rgb-neutral.jpg'), 'new'));
    const { conversions } = await run(root, { converters });
    assert.match(conversions[0].reason!, /came into being meanwhile/);
    assert.equal(contents(root)['a.rgb-neutral.jpg'], 'new');
  });

  it('converts a file once, however often and by whichever link it is named', async () => {
    const root = book({ 'x/a.jpg': 'colour 1' });
    fs.symlinkSync('x/a.jpg', path.join(root, 'link.jpg'));
    fs.symlinkSync('x', path.join(root, 'y'));
    const at = (name: string) => path.join(root, name);
    const { conversions } = await run(root, {
      paths: [at('link.jpg'), at('x/a.jpg'), at('y/a.jpg'), at('x'), at('x/a.jpg')],
    });
    assert.deepEqual(outcomes(conversions), { 'x/a.jpg': 'converted' });
    const byLink = await run(root, {
      paths: [at('link.jpg')],
      wish: wishFor({ to: 'black-only', quality: 90 }),
    });
    assert.equal(byLink.conversions[0].output, 'x/a.black-only.jpg');
    assert.match(byLink.conversions[0].told.join(), /"link.jpg" is a link to it/);
  });

  it('makes no picture grey that is in colour and that nobody said is to be grey, unless it is named itself', async () => {
    const root = book({ 'a.jpg': 'colour 1', 'b.jpg': 'rgb-residual 2' });
    for (const how of [inPlace, {}]) {
      const { conversions } = await run(root, { settings: noSettings, ...how, dryRun: true });
      assert.deepEqual(outcomes(conversions), { 'a.jpg': 'skipped', 'b.jpg': 'planned' });
      assert.match(conversions[0].reason!, /in colour, and nobody said .* "intent"/);
    }
    const paths = [path.join(root, 'a.jpg')];
    const named = await run(root, { settings: noSettings, paths });
    assert.deepEqual(outcomes(named.conversions), { 'a.jpg': 'converted' });
  });

  it('plans no JPEG by a grey profile whose shadows would fall apart in one, but a TIFF', async () => {
    const root = book({ 'a.jpg': 'rgb-residual 1' });
    const greyProfile = plainProfile({ description: 'Linear', decode: v => v, primaries: null });
    const planned = async (format: 'jpeg' | 'tiff') => {
      const wish = wishFor({ to: 'single-channel', greyProfile, format });
      return (await run(root, { wish, dryRun: true })).conversions[0];
    };
    const { outcome, reason } = await planned('jpeg');
    assert.equal(outcome, 'failed');
    assert.match(reason!, /^Its shadows would print as steps: /);
    const tiff = await planned('tiff');
    assert.deepEqual([tiff.outcome, tiff.bits], ['planned', 16]);
  });

  it('takes in a folder what a check takes for the book, and says what no layout places', async () => {
    const root = book({ 'a.jpg': 'colour 1', 'x/b.jpg': 'colour 2', 'book.md': '![](a.jpg)\n' });
    const { conversions, notices } = await run(root);
    assert.deepEqual(outcomes(conversions), { 'a.jpg': 'converted' });
    assert.match(notices.join(), /1 picture was left out, since no layout places it: x\/b\.jpg\./);
    const named = await run(root, { paths: [path.join(root, 'x/b.jpg')] });
    assert.deepEqual(outcomes(named.conversions), { 'x/b.jpg': 'converted' });
  });

  it('tells a link that leads to a picture of the folder, and other names only where these are not meant too', async () => {
    const root = book({ 'a.jpg': 'colour 1', 'b.jpg': 'colour 2' });
    const at = (name: string) => path.join(root, name);
    fs.symlinkSync('a.jpg', at('link.jpg'));
    fs.linkSync(at('b.jpg'), at('c.jpg'));
    const told = async (...paths: string[]) => {
      const { conversions } = await run(root, { paths, place: { kind: 'in-place' }, dryRun: true });
      return Object.fromEntries(conversions.map(each => [each.path, each.told.join(' ')]));
    };
    const { 'a.jpg': link, ...names } = await told(root);
    assert.equal(link, '"link.jpg" is a link to it.');
    assert.deepEqual(Object.keys(names), ['b.jpg', 'c.jpg']);
    for (const text of Object.values(names))
      assert.match(
        text,
        /^Other pictures here are names of the same file \(hard links\): each becomes one of its own/,
      );
    assert.match((await told(at('b.jpg')))['b.jpg'], /other names too \(hard links\)/);
  });

  it('copies into a folder for the results what is right already, so that the folder is whole, and once', async () => {
    const root = book({ 'x/a.jpg': 'colour 1', 'x/right.jpg': 'rgb-neutral 2' });
    const folder = path.join(root, 'out');
    const place = { kind: 'folder', folder, shown: 'out' } as const;
    const planned = await run(root, { place, dryRun: true });
    assert.deepEqual(outcomes(planned.conversions), { 'x/a.jpg': 'planned', 'x/right.jpg': 'copied' });
    assert.ok(!fs.existsSync(folder));
    const { conversions } = await run(root, { place });
    assert.deepEqual(outcomes(conversions), { 'x/a.jpg': 'converted', 'x/right.jpg': 'copied' });
    assert.equal(conversions[1].output, 'out/x/right.jpg');
    assert.deepEqual(contents(folder), {
      'x/a.jpg': `rgb-neutral of ${sha('colour 1')}`,
      'x/right.jpg': 'rgb-neutral 2',
    });
    const again = await run(root, { place });
    assert.deepEqual(outcomes(again.conversions), { 'x/a.jpg': 'skipped', 'x/right.jpg': 'skipped' });
    const forgotten = await run(root, { place, memory: path.join(root, '.none') });
    assert.equal(forgotten.conversions[1].reason, 'It was copied before.');
    fs.writeFileSync(path.join(folder, 'x/right.jpg'), 'somebody’s own');
    const other = await run(root, { place });
    assert.deepEqual(outcomes(other.conversions), { 'x/a.jpg': 'skipped', 'x/right.jpg': 'failed' });
    assert.equal(contents(folder)['x/right.jpg'], 'somebody’s own');
  });

  it('says in a dry run that a folder cannot be written, as the run would', async () => {
    const root = book({ 'a.jpg': 'colour 1', file: '' });
    const folder = path.join(root, 'file', 'results');
    const place = { kind: 'folder', folder, shown: 'file/results' } as const;
    const [planned, ran] = [await run(root, { place, dryRun: true }), await run(root, { place })];
    assert.equal(planned.conversions[0].outcome, 'failed');
    assert.match(planned.conversions[0].reason!, /A file stands where the folder of the result should be/);
    assert.deepEqual(planned.conversions, ran.conversions);
  });

  it('says which pictures lose a strong tone', async () => {
    const root = book({ 'a.jpg': 'rgb-toned 1', 'b.jpg': 'colour 2' });
    const pool = {
      facts: async (file: string) => {
        const [facts] = factsOf(file);
        return [{ ...facts, chroma: { ...facts.chroma!, mean: 40 } }];
      },
    };
    const left = await run(root, { pool, settings: noSettings });
    assert.deepEqual(outcomes(left.conversions), { 'a.jpg': 'skipped', 'b.jpg': 'skipped' });
    const losing = [
      { path: 'a.jpg', loses: 'tone' },
      { path: 'b.jpg', loses: 'colour' },
    ];
    assert.deepEqual(left.spared, losing);
    const paths = ['a.jpg', 'b.jpg'].map(name => path.join(root, name));
    const unmeant = await run(root, { pool, settings: noSettings, paths, meant: 'none' });
    assert.deepEqual(unmeant.spared, losing, 'named by something else than a person');
    const named = await run(root, { pool, settings: noSettings, paths, dryRun: true });
    assert.deepEqual(named.spared, []);
    const { untoned, notices } = await run(root, { pool, settings: noSettings, meant: 'all' });
    assert.deepEqual(untoned, ['a.jpg']);
    assert.match(notices.join(), /1 picture carries a strong tone.*is gone from the result: a\.jpg/);
    assert.deepEqual((await run(root, { settings: noSettings, meant: 'all' })).untoned, []);
    const faint = await run(root, { settings: noSettings, paths, meant: 'none', dryRun: true });
    assert.deepEqual([faint.faint, faint.untoned], [['a.jpg'], []]);
  });

  it('says so where a quality counted for nothing', async () => {
    const root = book({ 'a.tif': 'colour 1', 'b.jpg': 'colour 2' });
    const noticesOf = async (name: string) =>
      (await run(root, { paths: [path.join(root, name)], wish: wishFor({ quality: 90 }), dryRun: true }))
        .notices;
    assert.deepEqual(await noticesOf('b.jpg'), []);
    assert.match((await noticesOf('a.tif')).join(), /No result is a JPEG/);
  });

  it('leaves a link that leads out of the book alone', async () => {
    const elsewhere = book({ 'a.jpg': 'colour 1' });
    const root = book({ 'b.jpg': 'colour 2' });
    fs.symlinkSync(path.join(elsewhere, 'a.jpg'), path.join(root, 'a.jpg'));
    const { conversions } = await run(root, inPlace);
    assert.deepEqual(outcomes(conversions), { 'a.jpg': 'failed', 'b.jpg': 'converted' });
    assert.deepEqual(contents(elsewhere), { 'a.jpg': 'colour 1' });
  });

  it('tells of a picture that is changed under its hands, and leaves no result of the old one', async () => {
    const root = book({ 'a.jpg': 'colour 1', 'b.jpg': 'colour 2' });
    const converters = fakeConverters(({ file }) => {
      if (file.endsWith('b.jpg')) fs.writeFileSync(file, 'colour 22');
    });
    const { conversions } = await run(root, { converters });
    assert.deepEqual(outcomes(conversions), { 'a.jpg': 'converted', 'b.jpg': 'failed' });
    assert.match(conversions[1].reason!, /was changed while it was converted/);
    assert.deepEqual(Object.keys(contents(root)), ['a.jpg', 'a.rgb-neutral.jpg', 'b.jpg']);
  });

  it('says all of it in a dry run and writes nothing', async () => {
    const root = book({ 'a.jpg': 'colour 1', 'b.png': 'colour 2' });
    for (const how of [{}, inPlace]) {
      const converters = fakeConverters();
      const { conversions } = await run(root, {
        ...{ ...how, converters, dryRun: true },
        wish: wishFor({ to: 'black-only', quality: 90 }),
      });
      const place = 'place' in how;
      assert.deepEqual(outcomes(conversions), { 'a.jpg': 'planned', 'b.png': place ? 'failed' : 'planned' });
      assert.equal(conversions[0].output, place ? 'a.jpg' : 'a.black-only.jpg');
      if (!place) assert.match(conversions[1].told.join(), /cannot hold inks: the result is a TIFF/);
      assert.deepEqual(converters.tasks, []);
    }
    assert.deepEqual(fs.readdirSync(root), ['a.jpg', 'b.png']);
  });
});

describe('batch, into a folder', () => {
  const into = (root: string, name: string) =>
    ({ place: { kind: 'folder', folder: path.join(root, name), shown: name } }) as const;

  it('mirrors the book’s folders, and takes what lies there for no pictures', async () => {
    const root = book({ 'a.jpg': 'colour 1', 'x/a.jpg': 'colour 2', 'out/z.jpg': 'colour 3' });
    const report = await run(root, into(root, 'out'));
    assert.deepEqual(
      report.conversions.map(({ output }) => output),
      ['out/a.jpg', 'out/x/a.jpg'],
    );
    assert.deepEqual(report.notices, ['1 picture was left out, in the folder for the results.']);
    assert.equal(contents(root)['out/x/a.jpg'], made('colour 2'));
    const again = await run(root, into(root, 'out'));
    assert.deepEqual(outcomes(again.conversions), { 'a.jpg': 'skipped', 'x/a.jpg': 'skipped' });
  });

  it('never follows a link out of it', async () => {
    const elsewhere = book({});
    const root = book({ 'x/a.jpg': 'colour 1', 'out/y.txt': '' });
    fs.symlinkSync(elsewhere, path.join(root, 'out/x'));
    const { conversions } = await run(root, into(root, 'out'));
    assert.match(conversions[0].reason!, /is a link that leads out of it/);
    assert.deepEqual(contents(elsewhere), {});
  });
});

describe('batch, with the layouts relinked', () => {
  const layout = '# Plates\n\n![one](x/a.jpg)\n![two](<b c.png>)\n![there](c.tif)\n';
  const files = { 'x/a.jpg': 'colour 1', 'b c.png': 'colour 2', 'c.tif': 'colour 3', 'book.md': layout };
  const wish = wishFor();

  it('has them place the results, told line by line, and nothing the second time', async () => {
    const root = book({ ...files, 'c.tif': 'rgb-neutral 3' });
    const planned = await run(root, { wish, relink: true, dryRun: true });
    const { relinking, conversions } = await run(root, { wish, relink: true });
    assert.deepEqual(
      relinking?.changes.map(({ file, line, to }) => [file, line, to]),
      [
        ['book.md', 3, 'x/a.jpg.rgb-neutral.png'],
        ['book.md', 4, 'b c.rgb-neutral.png'],
      ],
    );
    assert.deepEqual(planned.relinking, relinking);
    for (const all of [planned.conversions, conversions])
      assert.match(
        all.find(({ path }) => path === 'x/a.jpg')!.told.join(),
        /The result is a PNG.*book\.md:3/,
      );
    assert.equal(
      contents(root)['book.md'],
      '# Plates\n\n![one](x/a.jpg.rgb-neutral.png)\n![two](<b c.rgb-neutral.png>)\n![there](c.tif)\n',
    );
    const after = contents(root);
    for (const relink of [true, false]) {
      const again = await run(root, { wish, relink });
      assert.ok(again.conversions.every(({ outcome }) => outcome === 'skipped'));
      assert.deepEqual(
        again.relinking,
        relink ? { changes: [], settings: [], problems: [], placedBefore: 2 } : null,
      );
      assert.deepEqual(contents(root), after);
    }
  });

  it('leaves a line as it is that cannot place what was asked for, says why, and does not with a dry run either', async () => {
    const inks = wishFor({ to: 'black-only' });
    const tex = '\\includegraphics{x/a.jpg}';
    const root = book({ ...files, 'plates.tex': tex, 'plates.typ': '#image("x/a.jpg")' });
    const planned = await run(root, { wish: inks, relink: true, dryRun: true });
    const { relinking } = await run(root, { wish: inks, relink: true });
    assert.deepEqual(planned.relinking, relinking);
    assert.deepEqual(
      relinking!.problems.map(({ file, line, why }) => [
        file,
        line,
        /^"(.+)" stays on the page/.exec(why)?.[1],
      ]),
      [
        ['book.md', 3, 'x/a.jpg'],
        ['book.md', 4, 'b c.png'],
        ['plates.tex', 1, 'x/a.jpg'],
        ['plates.typ', 1, 'x/a.jpg'],
      ],
    );
    // it places a TIFF already
    assert.deepEqual(
      relinking!.changes.map(({ line, to }) => [line, to]),
      [[5, 'c.black-only.tif']],
    );
    assert.equal(contents(root)['plates.tex'], tex);
    const asJpeg = await run(root, { wish: { ...inks, format: 'jpeg' }, relink: true });
    assert.deepEqual(
      asJpeg.relinking!.changes.map(({ file, to }) => [file, to]),
      [
        ['plates.tex', '{x/a.black-only}.jpg'],
        ['plates.typ', 'x/a.black-only.jpg'],
      ],
    );
  });

  it('makes a TIFF as ever where no line is to place it', async () => {
    const root = book({ ...files, 'book.md': '![there](c.tif)\n' });
    const { conversions } = await run(root, { wish, relink: true, paths: [path.join(root, 'x/a.jpg')] });
    assert.equal(conversions[0].output, 'x/a.jpg.rgb-neutral.tif');
  });

  it('has them place results of before', async () => {
    const root = book(files);
    const quality = wishFor({ quality: 90 });
    await run(root, { wish: quality });
    const { conversions, relinking } = await run(root, { wish: quality, relink: true });
    assert.equal(conversions[0].outcome, 'skipped');
    assert.equal(relinking?.changes.length, 3);
  });

  it('tells an editor the lines of the texts that it has open, and writes none', async () => {
    const root = book({ ...files, 'book.md': '' });
    const open = new Map([['book.md', `Not saved.\n${layout}`]]);
    const { relinking } = await run(root, { wish, relink: true, open });
    assert.deepEqual(
      relinking?.changes.map(({ line, to }) => [line, to]),
      [
        [4, 'x/a.jpg.rgb-neutral.png'],
        [5, 'b c.rgb-neutral.png'],
        [6, 'c.tif.rgb-neutral.png'],
      ],
    );
    assert.equal(contents(root)['book.md'], '');
  });

  it('has them place no result that failed, and writes nothing in a dry run', async () => {
    const root = book(files);
    const plan = await run(root, { wish, relink: true, dryRun: true });
    assert.equal(plan.relinking?.changes.length, 3);
    assert.equal(contents(root)['book.md'], layout);
    const converters = fakeConverters(({ file }) => {
      if (file.endsWith('a.jpg')) throw new RemedyError('It will not do.');
    });
    const { relinking } = await run(root, { wish, relink: true, converters });
    assert.deepEqual(
      relinking?.changes.map(({ line }) => line),
      [4, 5],
    );
  });

  it('has them place results in a folder of the book', async () => {
    const root = book(files);
    const place = { kind: 'folder', folder: path.join(root, 'out'), shown: '../as/named/out' } as const;
    const { relinking } = await run(root, { wish, relink: true, place });
    assert.equal(relinking?.changes[0].to, 'out/x/a.jpg.png');
  });
});

describe('batch, in place', () => {
  it('says where the originals are, and would be, and else nothing of the kind', async () => {
    const root = book({ 'a.jpg': 'colour 1' });
    const planned = await run(root, { ...inPlace, dryRun: true });
    const { originals, folder } = await run(root, { ...inPlace, wish: wishFor({ quality: 90, below: 4 }) });
    assert.deepEqual([planned.originals, originals, folder], [originals, '.evengrey/originals', null]);
    assert.deepEqual(fs.readdirSync(path.join(root, originals!)), [sha('colour 1')]);
    const place = { kind: 'folder', folder: path.join(root, 'out'), shown: './out' } as const;
    const into = await run(book({ 'a.jpg': 'colour 1' }), { place, wish: wishFor({ below: 4 }) });
    assert.deepEqual([into.originals, into.folder, into.below], [null, './out', 4]);
  });

  it('keeps the originals, and the rights of the files', async () => {
    const root = book({ 'a.jpg': 'colour 1' });
    fs.chmodSync(path.join(root, 'a.jpg'), 0o640);
    const { conversions } = await run(root, inPlace);
    assert.deepEqual(outcomes(conversions), { 'a.jpg': 'converted' });
    assert.deepEqual(contents(root), { 'a.jpg': made('colour 1') });
    assert.equal(fs.statSync(path.join(root, 'a.jpg')).mode & 0o7777, 0o640);
    const original = path.join(root, '.evengrey/originals', sha('colour 1'));
    assert.equal(fs.readFileSync(original, 'utf8'), 'colour 1');
  });

  it('does nothing the second time, and refuses another conversion on top', async () => {
    const root = book({ 'a.jpg': 'colour 1' });
    await run(root, inPlace);
    const converters = fakeConverters();
    const second = await run(root, { ...inPlace, converters });
    assert.equal(second.conversions[0].reason, 'It was converted so before.');
    const other = await run(root, {
      ...inPlace,
      converters,
      wish: wishFor({ to: 'black-only', quality: 90 }),
    });
    assert.match(other.conversions[0].reason!, /Undo the earlier one first/);
    assert.deepEqual(converters.tasks, []);
  });

  it('leaves a picture alone that is changed between reading and renaming', async () => {
    const root = book({ 'a.jpg': 'colour 1' });
    const real = fakeConverters();
    const converters: Converters = {
      ...real,
      async convert(task) {
        const result = await real.convert(task);
        fs.writeFileSync(task.file, 'colour 11');
        return result;
      },
    };
    const { conversions } = await run(root, { ...inPlace, converters });
    assert.match(conversions[0].reason!, /was changed while it was converted/);
    assert.deepEqual(contents(root), { 'a.jpg': 'colour 11' });
  });

  it('leaves a write-protected picture alone', async () => {
    const root = book({ 'a.jpg': 'colour 1' });
    fs.chmodSync(path.join(root, 'a.jpg'), 0o444);
    const { conversions } = await run(root, inPlace);
    assert.match(conversions[0].reason!, /write-protected/);
    assert.deepEqual(contents(root), { 'a.jpg': 'colour 1' });
  });

  it('leaves the other name of a file as it was, and says so', async () => {
    const root = book({ 'a.jpg': 'colour 1' });
    fs.linkSync(path.join(root, 'a.jpg'), path.join(root, 'other.txt'));
    const { conversions } = await run(root, inPlace);
    assert.match(conversions[0].told.join(), /other names too/);
    assert.deepEqual(contents(root), { 'a.jpg': made('colour 1'), 'other.txt': 'colour 1' });
  });

  it('is refused while another run is at it', async () => {
    const root = book({ 'a.jpg': 'colour 1' });
    const keep = path.join(root, '.evengrey');
    fs.mkdirSync(keep);
    const unlock = await lock(keep);
    await assert.rejects(run(root, inPlace), /Another run of evengrey is changing pictures of this book/);
    await unlock();
    assert.deepEqual(contents(root), { 'a.jpg': 'colour 1' });
  });
});

describe('batch, when something goes wrong', () => {
  const failing = (name: string, error: unknown) =>
    fakeConverters(({ file, temporary }) => {
      if (!file.endsWith(name)) return;
      fs.writeFileSync(temporary, 'half');
      throw error;
    });
  const system = (code: string) => Object.assign(new Error(code), { code });
  const four = () => book(Object.fromEntries([1, 2, 3, 4].map(n => [`${n}.jpg`, `colour ${n}`])));

  const failures: [string, unknown, RegExp][] = [
    ['a refusal', new RemedyError('It will not do.'), /^It will not do\.$/],
    ['a crash', new ChildFailure('crashed', 'x'), /crashed on this picture/],
    ['a hanging converter', new ChildFailure('timeout', 'no answer within 5 seconds'), /5 seconds/],
    ['a folder without the right to write', system('EACCES'), /^The folder "\/.*" may not be written to/],
    [
      'an original that may not be read',
      Object.assign(system('EACCES'), { path: '/elsewhere/original' }),
      /^You have no right to "\/elsewhere\/original"/,
    ],
    ['a read-only disk', system('EROFS'), /read-only/],
    ['a name that is too long', system('ENAMETOOLONG'), /too long/],
    ['whatever else a file system says', system('EIO'), /\(EIO\)/],
  ];
  for (const [what, error, reason] of failures)
    it(`${what} costs one picture, and leaves nothing half`, async () => {
      const root = four();
      const { conversions, stopped } = await run(root, { ...inPlace, converters: failing('2.jpg', error) });
      assert.deepEqual(outcomes(conversions), {
        '1.jpg': 'converted',
        '2.jpg': 'failed',
        '3.jpg': 'converted',
        '4.jpg': 'converted',
      });
      assert.match(conversions[1].reason!, reason);
      assert.equal(stopped, null);
      assert.equal(contents(root)['2.jpg'], 'colour 2');
      assert.ok(!fs.readdirSync(root).some(name => name.endsWith('.tmp')));
    });

  for (const code of ['ENOSPC', 'EDQUOT'])
    it(`a full disk (${code}) ends it in good order`, async () => {
      const root = four();
      const converters = failing('2.jpg', system(code));
      const { conversions, stopped } = await run(root, { ...inPlace, converters, jobs: 1 });
      assert.match(stopped!, /The disk is full.*Every picture is whole/);
      assert.equal(outcomes(conversions)['2.jpg'], 'failed');
      assert.equal(outcomes(conversions)['4.jpg'], 'failed');
      for (const { path: at, outcome, sha256 } of conversions) {
        const now = contents(root)[at];
        assert.equal(
          outcome === 'converted' ? now : sha(now),
          outcome === 'converted' ? `rgb-neutral of ${sha256}` : sha256,
        );
      }
      assert.ok(converters.closed);
    });

  it('a fault of ours is not told as the picture’s', async () => {
    const converters = failing('2.jpg', new TypeError('x is undefined'));
    await assert.rejects(run(four(), { converters }), /x is undefined/);
    assert.ok(converters.closed);
  });

  it('a converter that cannot be started is told once', async () => {
    const error = new ChildFailure('not-started', 'The converter could not be started.');
    await assert.rejects(run(four(), { converters: failing('1.jpg', error) }), /could not be started/);
  });

  it('is stopped between two pictures, and nothing half-written stays', async () => {
    const root = four();
    const stop = new AbortController();
    let temporary = '';
    const hanging = fakeConverters(task => {
      if (!task.file.endsWith('2.jpg')) return;
      temporary = task.temporary;
      stop.abort(new Error('stopped'));
    });
    const converters: Converters = {
      async convert(task, signal) {
        const result = await hanging.convert(task, signal);
        signal?.throwIfAborted();
        return result;
      },
      async close() {
        // a child that was in the middle of it
        fs.writeFileSync(temporary, 'half');
      },
    };
    const report = await run(root, { ...inPlace, converters, jobs: 1, signal: stop.signal, relink: true });
    assert.match(report.stopped!, /^Stopped\. Every picture is whole/);
    assert.deepEqual([report.relinking, report.conversions.length], [null, 4]);
    const done = report.conversions
      .filter(({ outcome }) => outcome === 'converted')
      .map(({ path: at }) => at);
    const changed = Object.entries(contents(root)).filter(([, text]) => text.startsWith('rgb-neutral of'));
    assert.deepEqual(
      done,
      changed.map(([name]) => name),
    );
    assert.match(report.conversions[3].reason!, /Not converted: the work was stopped/);
    assert.deepEqual(fs.readdirSync(root), ['.evengrey', '1.jpg', '2.jpg', '3.jpg', '4.jpg']);
    assert.equal(contents(root)['4.jpg'], 'colour 4');
  });

  it('has all layouts place the results once all are made, though it is stopped then', async () => {
    const root = book({ '1.jpg': 'colour 1', 'a.md': '![a](1.jpg)', 'b.md': '![b](1.jpg)' });
    const stop = new AbortController();
    // told once it is read, and once it is made
    let told = 0;
    const onProgress = () => ++told === 2 && stop.abort(new Error('stopped'));
    const { relinking, stopped } = await run(root, { signal: stop.signal, onProgress, relink: true });
    assert.equal(stopped, null);
    assert.deepEqual(
      relinking!.changes.map(({ file }) => file),
      ['a.md', 'b.md'],
    );
  });

  it('sweeps what a killed run left, in the folders it writes to', async () => {
    const { pid } = spawnSync('true');
    const root = book({ 'x/a.jpg': 'colour 1', [`x/.a.jpg.evengrey-${pid}.tmp`]: 'half' });
    await run(root);
    assert.deepEqual(fs.readdirSync(path.join(root, 'x')), ['a.jpg', 'a.rgb-neutral.jpg']);
  });
});

describe('batch of pictures that are meant to be coloured', () => {
  it('leaves them alone', async () => {
    const root = book({ 'a.jpg': 'colour 1', 'b.jpg': 'colour 2' });
    const settings = {
      ...allGrey,
      intents: [{ intent: 'colour' as const, pictures: ['a.jpg'], reference: null }, ...allGrey.intents],
    };
    const { conversions } = await run(root, { settings });
    assert.deepEqual(outcomes(conversions), { 'a.jpg': 'skipped', 'b.jpg': 'converted' });
  });
});
