import assert from 'node:assert/strict';
import path from 'node:path';
import { lights, processes } from '../../../src/print';
import { forecastReportSchema } from '../../../src/report/json/forecast-schema';
import { temporaryFolder } from '../../book/support/folder';
import { strictErrors } from '../../report/support';
import { pictures } from '../support/book';
import { evengrey } from '../support/run';

/** A print house that has delivered three orders, all pinkish. */
const RECORD = {
  record: 1,
  process: 'silver-halide',
  date: '2026-03-01',
  readings: [
    {
      encoding: 'rgb-neutral',
      orders: 3,
      greys: [{ L: 50, a: 3, b: 0 }],
      order: { a: 0.6, b: 0.8 },
    },
  ],
};

const settings = {
  targets: {
    book: { process: 'silver-halide', paper: 'photo-gloss', record: 'house.json' },
    edition: { process: 'offset-coated', route: 'inks', light: 'A' },
  },
  parts: { pages: { pictures: 'pages', target: 'book' }, plates: { pictures: 'plates', target: 'edition' } },
};

const book = (said: object = settings) =>
  temporaryFolder({
    'evengrey.json': JSON.stringify(said),
    'house.json': JSON.stringify(RECORD),
    'other.json': '{ "process": "inkjet", "light": "D65" }',
    'pages/a.tif': pictures.neutral(1),
    'plates/k.tif': pictures.blackOnly(1),
  });

async function told(cwd: string, ...args: string[]) {
  const ran = await evengrey(['forecast', ...args, '--format', 'json'], { cwd });
  assert.deepEqual([ran.stderr, ran.code], ['', 0]);
  const report = JSON.parse(ran.stdout);
  assert.equal(strictErrors(forecastReportSchema, report), '');
  return {
    settings: report.settings,
    conditions: report.forecasts.map(({ condition: c }: { condition: Record<string, string> }) =>
      [c.process, c.paper, c.light, c.route].join(' '),
    ),
  };
}
const words = async (cwd: string, ...args: string[]) =>
  (await evengrey(['forecast', ...args], { cwd })).stdout.replace(/\s+/g, ' ');

describe('evengrey forecast of a picture of a book', () => {
  it('is made for what the book says of that picture, and says so', async () => {
    const root = book();
    assert.deepEqual(await told(root, 'plates/k.tif'), {
      settings: { file: 'evengrey.json', role: 'used', targets: ['edition'], changed: [] },
      conditions: ['offset-coated gloss-coated A inks'],
    });
    assert.match(
      await words(path.join(root, 'plates'), 'k.tif'),
      /^k\.tif By the settings in \.\.\/evengrey\.json \(target "edition"\)\. Offset, coated paper;/,
    );
  });

  it('says of a record how many orders were read, when, and how far they differ, in a check too', async () => {
    const root = book();
    const record =
      /delivered before: 3 orders of this print house read, the last on 2026-03-01; from one order to the next it scatters by 0\.6 in a\* and 0\.8 in b\*\./;
    assert.match(await words(root, 'pages/a.tif'), record);
    assert.match(
      await words(root, 'pages/a.tif', '--light', 'all'),
      /the last on 2026-03-01; from one order/,
    );
    const { stdout } = await evengrey(['check'], { cwd: root });
    assert.match(stdout.replace(/\s+/g, ' '), record);
  });

  it('changes what is asked for on the spot, and keeps the rest', async () => {
    const root = book();
    const { settings: used, conditions } = await told(root, 'plates/k.tif', '--light', 'D65');
    assert.deepEqual([used.role, used.changed, conditions.length], ['used', ['--light'], 1]);
    assert.match(conditions[0], /^offset-coated .* D65 inks$/);
    const every = await told(root, 'plates/k.tif', '--light', 'all');
    assert.equal(every.conditions.length, lights.length);
    assert.match(await words(root, 'plates/k.tif', '--light', 'D65'), /"edition"\), but --light as asked\./);
  });

  it('goes by a process that is named, and says that the book was passed over', async () => {
    const root = book();
    const named = await told(root, 'pages/a.tif', '--process', 'offset-coated', '--light', 'D50');
    assert.deepEqual(
      [named.settings.role, named.conditions],
      ['not-asked', ['offset-coated gloss-coated D50 unknown']],
    );
    assert.match(
      await words(root, 'pages/a.tif', '--process', 'inkjet', '--light', 'D50'),
      /Not by the settings in evengrey\.json, since --process was named; with "--settings evengrey\.json"/,
    );
    const broken = temporaryFolder({ 'evengrey.json': '{', 'a.tif': pictures.neutral(1) });
    assert.equal((await told(broken, 'a.tif', '--process', 'inkjet')).conditions.length, lights.length);
    const ran = await evengrey(['forecast', 'a.tif'], { cwd: broken });
    assert.equal(ran.code, 2);
    assert.match(ran.stderr, /^evengrey: The settings have a problem, so nothing was forecast\./);
  });

  it('takes other settings where they are named, of a stated value too', async () => {
    const root = book();
    assert.deepEqual(await told(root, 'pages/a.tif', '--settings', 'other.json'), {
      settings: { file: 'other.json', role: 'used', targets: [], changed: [] },
      conditions: ['inkjet matt-coated D65 unknown'],
    });
    const stated = await told(root, '--grey', '128', '--settings', 'evengrey.json');
    assert.deepEqual(stated.settings.targets, ['book', 'edition']);
    const both = await told(root, '--grey', '9', '--settings', 'evengrey.json', '--process', 'offset-coated');
    assert.deepEqual(both.settings.targets, ['edition']);
    const none = await told(root, '--grey', '9', '--settings', 'evengrey.json', '--process', 'dry-toner');
    assert.deepEqual([none.settings.role, none.conditions.length], ['no-target', lights.length]);
  });

  it('forecasts for all processes where no settings say of one', async () => {
    const silent = await told(book({ ignore: 'drafts' }), 'pages/a.tif');
    assert.deepEqual(
      [silent.settings.role, silent.conditions.length],
      ['silent', processes.length * lights.length],
    );
    const none = await told(temporaryFolder({ 'a.tif': pictures.neutral(1) }), 'a.tif');
    assert.deepEqual([none.settings, none.conditions.length], [null, processes.length * lights.length]);
    assert.equal((await told(book(), '--grey', '128')).settings, null);
  });

  it('tells each of many targets in full, and two of one process apart', async () => {
    const targets = Object.fromEntries(
      ['photo-lustre', 'photo-gloss', 'gloss-coated', 'photo-lustre', 'photo-gloss'].map((paper, i) => [
        `house ${i}`,
        { process: 'silver-halide', paper, light: i > 2 ? 'A' : 'D50' },
      ]),
    );
    const text = await words(book({ targets }), 'pages/a.tif');
    assert.equal(text.match(/What this rests on/g)?.length, 5);
  });

  it('says why nothing can be forecast', async () => {
    const root = temporaryFolder({ 'c.tif': pictures.colour() });
    assert.match(
      await words(root, 'c.tif'),
      /Nothing can be forecast: the picture is in colour, and greys alone/,
    );
  });
});
