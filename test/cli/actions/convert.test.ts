import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { convertReportSchema, undoReportSchema } from '../../../src/report/json/convert-schema';
import { temporaryFolder } from '../../book/support/folder';
import { strictErrors } from '../../report/support';
import { faultyBook, pictures } from '../support/book';
import { contents, leftovers } from '../support/contents';
import { golden } from '../support/golden';
import { evengrey } from '../support/run';

/** A result's bytes hang on the compressor of the machine; what it holds does not. */
const withoutBytes = (json: string) =>
  json.replace(/("sha256":)"[0-9a-f]{64}","bytes":\d+/g, '$1"...","bytes":0');

function smallBook(): string {
  return temporaryFolder({
    'evengrey.json': '{ "process": "offset-coated", "intent": { "colour": "in-colour.tif" } }',
    'plates/01.tif': pictures.grey(1),
    'plates/02.tif': pictures.blackOnly(2),
    'plates/03.tif': pictures.neutral(3),
    'in-colour.tif': pictures.colour(),
  });
}

describe('evengrey convert', () => {
  it('tells of a faulty book what it makes of it, and what it cannot', async () => {
    const root = faultyBook();
    const plan = await evengrey(['convert', '.', '--to', 'single-channel', '--dry-run'], { cwd: root });
    golden('convert/faulty-dry-run.txt', plan.stdout);
    const before = contents(path.join(root, 'cover'));
    const ran = await evengrey(['convert', '.', '--to', 'single-channel'], { cwd: root });
    golden('convert/faulty.txt', ran.stdout);
    assert.deepEqual([plan.code, ran.code, ran.stderr], [1, 1, '']);
    assert.equal(contents(path.join(root, 'cover'))['front ä.tif'], before['front ä.tif']);
  });

  it('writes JSON as its schema says, the same to the byte for the same book', async () => {
    const args = ['convert', '.', '--to', 'rgb-neutral', '--format', 'json'];
    const [one, two] = [smallBook(), smallBook()];
    const ran = await evengrey(args, { cwd: one });
    golden('convert/small.json', withoutBytes(ran.stdout));
    assert.equal(strictErrors(convertReportSchema, JSON.parse(ran.stdout)), '');
    assert.equal((await evengrey(args, { cwd: two })).stdout, ran.stdout);
    assert.deepEqual(contents(two), contents(one));
    const again = await evengrey(args, { cwd: one });
    golden('convert/small-again.json', again.stdout);
    assert.deepEqual([ran.code, again.code], [0, 0]);
    assert.deepEqual(contents(two), contents(one));
  });

  it('makes of every encoding what a check then finds', async () => {
    const all = [
      ['rgb-neutral', 'png'],
      ['single-channel', 'jpeg'],
      ['black-only', 'jpeg'],
      ['black-only', 'tiff'],
    ];
    for (const [to, as] of all) {
      const root = smallBook();
      const args = ['convert', 'in-colour.tif', 'plates', '--to', to, '--as', as, '--out', 'out'];
      assert.equal((await evengrey(args, { cwd: root })).code, 0);
      const { stdout } = await evengrey(['check', 'out', '--format', 'json'], { cwd: root });
      const { pictures: found } = JSON.parse(stdout) as {
        pictures: { path: string; encoding: string; format: string }[];
      };
      assert.ok(found.length >= 3);
      for (const picture of found)
        assert.deepEqual([picture.encoding, picture.format], [to, as], picture.path);
    }
  });

  it('leaves in a folder what nobody said is to be grey, unless it is named or all are asked for', async () => {
    const root = smallBook();
    const colourOf = async (...args: string[]) => {
      const to = ['--to', 'rgb-neutral', '--dry-run', '--format', 'json'];
      const { stdout } = await evengrey(['convert', ...args, ...to], { cwd: root });
      const { conversions } = JSON.parse(stdout) as { conversions: { path: string; outcome: string }[] };
      return conversions.find(({ path: at }) => at === 'in-colour.tif')!.outcome;
    };
    assert.equal(await colourOf('in-colour.tif'), 'planned');
    assert.equal(await colourOf('in-colour.tif', 'plates'), 'planned');
    assert.equal(await colourOf('.'), 'skipped');
    assert.equal(await colourOf('.', '--all'), 'planned');
  });

  it('takes weights, a mix by its name, a tone, a depth and a profile', async () => {
    const root = smallBook();
    const made = async (...options: string[]) => {
      const out = temporaryFolder();
      const args = ['convert', 'in-colour.tif', '--out', out, ...options];
      const ran = await evengrey(args, { cwd: root });
      // a colour picture's mean is no tone to speak of
      const other = /not what\s+was\s+asked/.test(ran.stdout);
      assert.deepEqual([ran.code, ran.stderr], [other ? 1 : 0, ''], options.join(' '));
      return contents(out);
    };
    const neutral = ['--to', 'rgb-neutral'];
    const all = [
      await made(...neutral),
      await made(...neutral, '--method', 'luma'),
      await made(...neutral, '--method', 'darker-sky'),
      await made(...neutral, '--method', '-0.2,1.4,-0.2'),
      await made(...neutral, '--bits', '16'),
      await made(...neutral, '--below', '5'),
      await made('--to', 'rgb-toned', '--tone', '-1.5,6'),
      await made('--to', 'rgb-toned', '--tone', 'even'),
      await made('--to', 'rgb-toned', '--tone', 'own'),
    ];
    assert.equal(new Set(all.map(files => files['in-colour.tif'])).size, all.length);
    const toned = await evengrey(['convert', 'in-colour.tif', '--to', 'rgb-toned', '--tone', 'even'], {
      cwd: root,
    });
    assert.match(toned.stdout, /colour to rgb-toned/);
  });

  it('takes the profile that a neighbour carries', async () => {
    const root = smallBook();
    const to = ['--to', 'single-channel'];
    await evengrey(['convert', 'plates/03.tif', ...to], { cwd: root });
    const neighbour = 'plates/03.single-channel.tif';
    const ran = await evengrey(['convert', 'plates/01.tif', ...to, '--profile', neighbour], { cwd: root });
    assert.equal(ran.code, 0, ran.stdout);
    const { pictures: found } = JSON.parse(
      (await evengrey(['check', '--format', 'json'], { cwd: root })).stdout,
    ) as { pictures: { path: string; profile: unknown }[] };
    const profileOf = (name: string) => found.find(({ path }) => path === name)!.profile;
    assert.equal(profileOf('plates/01.tif'), null);
    assert.deepEqual(profileOf('plates/01.single-channel.tif'), profileOf(neighbour));
    assert.ok(profileOf(neighbour));
  });

  it('ends with code 1 where a result is not what was asked, and not where colour was to stay', async () => {
    const root = smallBook();
    const run = (...options: string[]) => evengrey(['convert', 'in-colour.tif', ...options], { cwd: root });
    const faint = await run('--to', 'rgb-toned', '--tone', '0.1,0.1');
    assert.match(faint.stdout, /1 of them is not what was asked: rgb-neutral\s+instead of rgb-toned/);
    const kept = await run('--to', 'rgb-neutral', '--below', '6');
    assert.match(kept.stdout, /are what was asked for; in 1 of them colour is\s+left/);
    assert.deepEqual([faint.code, kept.code], [1, 0]);
  });

  it('fits tones to a target, shows the curve, and does so once', async () => {
    const root = smallBook();
    const args = [
      'convert',
      'plates',
      '--to',
      'rgb-neutral',
      '--fit',
      'offset-uncoated',
      '--strength',
      '0.5',
    ];
    const ran = await evengrey([...args, '--in-place'], { cwd: root });
    golden('convert/fit.txt', ran.stdout);
    const again = await evengrey([...args, '--in-place'], { cwd: root });
    assert.match(again.stdout, /^0 pictures converted, 3 skipped\./);
    const json = await evengrey([...args, '--out', 'out', '--format', 'json', '--dry-run'], { cwd: root });
    const report = JSON.parse(json.stdout);
    assert.equal(strictErrors(convertReportSchema, report), '');
    assert.ok(report.fit.tones[0].to > 0, 'black is lifted');
    assert.equal(report.fit.tones.at(-1).to, 100);
  });

  it('answers the tint of a house’s prints by its record, and says what that rests on', async () => {
    const root = smallBook();
    const reading = {
      ...{ encoding: 'rgb-neutral', orders: 3, greys: [{ L: 50, a: 0, b: 4 }] },
      ...{ order: { a: 0.5, b: 0.6 }, page: null, black: null },
    };
    const record = {
      ...{ record: 1, process: 'silver-halide', paper: [93, 0.4, 3], date: '2026-03-01' },
      readings: [reading],
    };
    fs.writeFileSync(path.join(root, 'house.json'), JSON.stringify(record));
    const settings = { targets: { album: { process: 'silver-halide', record: 'house.json' } } };
    fs.writeFileSync(path.join(root, 'evengrey.json'), JSON.stringify(settings));
    const args = ['convert', 'plates', '--to', 'rgb-toned', '--counter-tint', 'album', '--format', 'json'];
    const tintOf = async (...more: string[]) => {
      const { stdout, stderr } = await evengrey([...args, '--dry-run', ...more], { cwd: root });
      assert.equal(stderr, '');
      const report = JSON.parse(stdout);
      assert.equal(strictErrors(convertReportSchema, report), '');
      return report.counterTint;
    };
    const whole = await tintOf();
    assert.ok(whole.b < -1, 'a warm print is answered by a cool file');
    assert.match(whole.told.join(), /3 orders.*test print/s);
    const half = await tintOf('--strength', '0.5');
    assert.ok(half.b > whole.b && half.b < 0);
    assert.ok((await tintOf('--against', 'paper')).b < whole.b, 'a warm paper is answered too');
    const ran = await evengrey(args, { cwd: root });
    assert.equal(ran.code, 0);
    const { pictures: found } = JSON.parse(
      (await evengrey(['check', '--format', 'json'], { cwd: root })).stdout,
    );
    const toned = found.filter(({ path: at }: { path: string }) => at.includes('rgb-toned'));
    assert.equal(toned.length, 3);
    for (const picture of toned) assert.equal(picture.encoding, 'rgb-toned');
  });

  it('keeps originals in place and brings them back, in a repository too', async () => {
    const root = smallBook();
    execFileSync('git', ['init', '-q'], { cwd: root });
    const before = contents(root);
    const ran = await evengrey(['convert', '.', '--to', 'rgb-neutral', '--in-place'], { cwd: root });
    golden('convert/in-place.txt', ran.stdout);
    const after = contents(root);
    assert.notEqual(after['plates/01.tif'], before['plates/01.tif']);
    assert.equal(after['in-colour.tif'], before['in-colour.tif'], 'meant to be in colour');
    assert.equal(fs.readdirSync(path.join(root, '.git/evengrey/originals')).length, 2);
    assert.ok(!fs.existsSync(path.join(root, '.evengrey')));
    const again = await evengrey(['convert', '.', '--to', 'rgb-neutral', '--in-place'], { cwd: root });
    assert.match(again.stdout, /^0 pictures converted, 4 skipped\./);
    const plan = await evengrey(['convert', '.', '--undo', '--dry-run'], { cwd: root });
    assert.match(plan.stdout, /^2 originals would be brought back\./);
    assert.deepEqual(contents(root), after);
    const undone = await evengrey(['convert', 'plates', '--undo', '--format', 'json'], { cwd: root });
    golden('convert/undone.json', undone.stdout);
    assert.equal(strictErrors(undoReportSchema, JSON.parse(undone.stdout)), '');
    assert.deepEqual(contents(root), before);
    assert.deepEqual([ran.code, again.code, plan.code, undone.code], [0, 0, 0, 0]);
    assert.deepEqual(leftovers(root), []);
  });

  it('has layouts place the results, and says which lines', async () => {
    const root = smallBook();
    const text = '# Plates\n\n![One](plates/01.tif)\n\n![Three](plates/03.tif)\n';
    fs.writeFileSync(path.join(root, 'book.md'), text);
    const args = ['convert', 'plates', '--to', 'rgb-neutral', '--as', 'png', '--relink'];
    const plan = await evengrey([...args, '--dry-run'], { cwd: root });
    golden('convert/relink-dry-run.txt', plan.stdout);
    assert.equal(fs.readFileSync(path.join(root, 'book.md'), 'utf8'), text);
    const ran = await evengrey([...args, '--format', 'json'], { cwd: root });
    const { relinking } = JSON.parse(ran.stdout);
    assert.deepEqual(
      relinking.changes.map((change: { line: number; to: string }) => [change.line, change.to]),
      [
        [3, 'plates/01.tif.rgb-neutral.png'],
        [5, 'plates/03.tif.rgb-neutral.png'],
      ],
    );
    assert.equal(
      fs.readFileSync(path.join(root, 'book.md'), 'utf8'),
      text.replace(/(0[13])\.tif/g, '$1.tif.rgb-neutral.png'),
    );
    assert.deepEqual([plan.code, ran.code], [0, 0]);
  });

  it('converts no folder of several books by settings of none', async () => {
    const book = { 'plates/01.tif': pictures.grey(1), 'evengrey.json': '{}' };
    const of = (name: string) =>
      Object.fromEntries(Object.entries(book).map(([file, content]) => [`${name}/${file}`, content]));
    const shelf = temporaryFolder({ ...of('one'), ...of('two') });
    const before = contents(shelf);
    const both = await evengrey(['convert', '.', '--to', 'rgb-neutral', '--in-place'], { cwd: shelf });
    assert.equal(both.code, 2);
    assert.match(
      both.stderr,
      /2 different books lie below it \(settings in "one" and "two"\)\. Nothing was converted, since they would be converted as one, by settings of none\. Convert one book at a time: name its folder, as "one"\./,
    );
    assert.deepEqual(contents(shelf), before);
    assert.equal((await evengrey(['convert', 'one', '--to', 'rgb-neutral'], { cwd: shelf })).code, 0);
  });

  it('writes its report to a file', async () => {
    const root = smallBook();
    const ran = await evengrey(
      ['convert', 'plates/01.tif', '--to', 'rgb-neutral', '--format', 'json', '--output', 'report.json'],
      { cwd: root },
    );
    assert.deepEqual(
      [ran.code, ran.stdout, ran.stderr],
      [0, '', '1 picture converted. The report is in "report.json".\n'],
    );
    assert.equal(JSON.parse(fs.readFileSync(path.join(root, 'report.json'), 'utf8')).summary.converted, 1);
  });

  const refusals: [string, string[], RegExp][] = [
    ['no encoding', ['plates'], /--to: name what the pictures are to become: rgb-neutral, /],
    ['a slip in it', ['plates', '--to', 'rgb-nuetral'], /--to: "rgb-nuetral".*Did you mean "rgb-neutral"\?/],
    [
      'a slip in the format',
      ['plates', '--to', 'rgb-neutral', '--as', 'tif'],
      /--as: "tif".*Did you mean "tiff"\?/,
    ],
    [
      'a slip in a mix',
      ['plates', '--to', 'rgb-neutral', '--method', 'darker-skye'],
      /Did you mean "darker-sky"\?/,
    ],
    ['weights without white', ['plates', '--to', 'rgb-neutral', '--method', '1,-1,0'], /add up to 0/],
    [
      'an odd depth',
      ['plates', '--to', 'rgb-neutral', '--bits', '12'],
      /--bits: "12" is not a known depth\. Known: 8, 16\./,
    ],
    ['a tone too far', ['plates', '--to', 'rgb-toned', '--tone', '1,99'], /--tone: "1,99" is neither/],
    [
      'a tone of grey',
      ['plates', '--to', 'rgb-neutral', '--tone', 'even'],
      /--tone goes with --to rgb-toned only/,
    ],
    ['inks in a PNG', ['plates', '--to', 'black-only', '--as', 'png'], /A PNG cannot hold inks/],
    [
      '16 bits in a JPEG',
      ['plates', '--to', 'rgb-neutral', '--as', 'jpeg', '--bits', '16'],
      /A JPEG has 8 bits/,
    ],
    ['two places', ['plates', '--to', 'rgb-neutral', '--in-place', '--out', 'x'], /contradict each other/],
    [
      'a folder that holds the pictures',
      ['plates', '--to', 'rgb-neutral', '--out', '.'],
      /holds "plates" itself/,
    ],
    [
      'a folder for the report',
      ['plates', '--to', 'rgb-neutral', '--output', 'for-the-press'],
      /Did you mean --out, the folder/,
    ],
    ['a file for a folder', ['plates', '--to', 'rgb-neutral', '--out', 'evengrey.json'], /is no folder/],
    [
      'relinking of names that stay',
      ['plates', '--to', 'rgb-neutral', '--in-place', '--relink'],
      /nothing to relink/,
    ],
    [
      'relinking out of the book',
      ['plates', '--to', 'rgb-neutral', '--out', '..', '--relink'],
      /holds "plates" itself/,
    ],
    [
      'relinking to elsewhere',
      ['plates', '--to', 'rgb-neutral', '--out', '/tmp/nowhere/x', '--relink'],
      /lies outside the book/,
    ],
    ['undo with more', ['plates', '--undo', '--to', 'rgb-neutral'], /--undo goes with no other option/],
    [
      'an unknown target',
      ['plates', '--to', 'rgb-neutral', '--fit', 'offset'],
      /--fit: "offset" is neither a target of the book nor a process/,
    ],
    [
      'a strength of nothing',
      ['plates', '--to', 'rgb-neutral', '--strength', '1'],
      /--strength goes with --fit or/,
    ],
    [
      'a counter-tint of grey',
      ['plates', '--to', 'rgb-neutral', '--counter-tint', 'book'],
      /goes with --to rgb-toned only/,
    ],
    [
      'a counter-tint without a record',
      ['plates', '--to', 'rgb-toned', '--counter-tint', 'silver-halide'],
      /there is no record of it/,
    ],
    ['quality', ['plates', '--to', 'rgb-neutral', '--quality', '101'], /whole number from 1 to 100/],
    ['no quality', ['plates', '--to', 'rgb-neutral', '--quality', '0'], /whole number from 1 to 100/],
    [
      'a quality of no JPEG',
      ['plates', '--to', 'rgb-neutral', '--quality', '90', '--as', 'tiff'],
      /--quality is that of a JPEG, and --as tiff asks for none/,
    ],
    [
      'a profile that is none',
      ['plates', '--to', 'single-channel', '--profile', 'gone.icc'],
      /"gone\.icc" cannot be read: there is no such file\./,
    ],
    [
      'a profile that is something else',
      ['plates', '--to', 'single-channel', '--profile', 'evengrey.json'],
      /The grey profile cannot be used: it is damaged/,
    ],
    [
      'a picture for its profile that carries none',
      ['plates', '--to', 'single-channel', '--profile', 'plates/01.tif'],
      /the picture "plates\/01\.tif" carries no profile\. Name one that does/,
    ],
    ['no pictures', [], /Missing required argument "pictures"/],
    [
      'a folder without pictures',
      ['empty', '--to', 'rgb-neutral'],
      /"empty" holds no picture of the book to convert/,
    ],
  ];
  for (const [what, args, message] of refusals)
    it(`refuses ${what}, and touches nothing`, async () => {
      const root = smallBook();
      fs.mkdirSync(path.join(root, 'empty'));
      const before = contents(root);
      const ran = await evengrey(['convert', ...args], { cwd: root });
      assert.equal(ran.code, 2);
      assert.match(ran.stderr, message);
      assert.deepEqual(contents(root), before);
    });
});
