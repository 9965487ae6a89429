import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { encodings as encodingWords } from '../../src/report/sheet/encoding';

const cli = path.resolve('dist/cli.js');

describe('evengrey demo', () => {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evengrey-demo-'));
  const book = path.join(folder, 'my-book');
  const env = { ...process.env, EVENGREY_CACHE_DIR: path.join(folder, 'cache'), NO_COLOR: '1' };
  const run = (...args: string[]) => spawnSync(process.execPath, [cli, ...args], { encoding: 'utf8', env });
  let first: ReturnType<typeof run>;

  before(() => {
    first = run('demo', book);
  });
  after(() => fs.rmSync(folder, { recursive: true }));

  it('makes a book, prints its report and says where the page is', () => {
    assert.equal(first.status, 0, first.stderr);
    assert.equal(first.stderr, '');
    assert.match(first.stdout, /pictures want attention/);
    assert.match(first.stdout, /Preview page, for a browser: .*preview\.html/);
    assert.match(fs.readFileSync(path.join(book, 'preview.html'), 'utf8'), /Winter on Halm/);
  });

  it('shows every encoding, each in the picture that is named for it', () => {
    const report = JSON.parse(run('check', book, '--format', 'json').stdout);
    const encodings = new Map<string, string>(
      report.pictures.map((p: { path: string; encoding: string }) => [p.path, p.encoding]),
    );
    for (const [file, encoding] of Object.entries({
      'pictures/01-standing-stones.jpg': 'rgb-neutral',
      'encodings/keeper-rgb-neutral.jpg': 'rgb-neutral',
      'encodings/keeper-single-channel.tif': 'single-channel',
      'encodings/keeper-lab-neutral.tif': 'lab-neutral',
      'encodings/keeper-black-only.tif': 'black-only',
      'encodings/keeper-four-channel.tif': 'four-channel',
      'encodings/keeper-three-ink.tif': 'three-ink',
      'faults/green-corner.jpg': 'rgb-residual',
      'faults/red-mark.png': 'rgb-residual',
      'faults/cast-that-turns.jpg': 'rgb-toned',
      'faults/too-much-ink.jpg': 'four-channel',
      'faults/see-through.png': 'rgb-neutral',
      'faults/cut-short.jpg': 'unreadable',
      'faults/not-fetched.jpg': 'unreadable',
      'extras/toned-cloth.jpg': 'rgb-toned',
      'extras/harbour-in-colour.jpg': 'colour',
      'extras/cutting-line.tif': 'bilevel',
    }))
      assert.equal(encodings.get(file), encoding, file);
    assert.deepEqual([...new Set(encodings.values())].sort(), Object.keys(encodingWords).sort());
  });

  it('shows the faults by their rules, and finds nothing wrong with the pages', () => {
    const report = JSON.parse(run('check', book, '--format', 'json').stdout);
    const rules = (file: string, severity = /./): string[] =>
      report.pictures
        .find((p: { path: string }) => p.path === file)
        .findings.filter((f: { severity: string }) => severity.test(f.severity))
        .map((f: { rule: string }) => f.rule);
    for (const [file, rule] of Object.entries({
      'faults/green-corner.jpg': 'residual-chroma',
      'faults/red-mark.png': 'residual-chroma',
      'faults/cast-that-turns.jpg': 'uneven-cast',
      'faults/too-much-ink.jpg': 'ink-total',
      'faults/shadows-lost.jpg': 'clipped',
      'faults/no-profile.tif': 'untagged',
      'faults/really-a-png.jpg': 'wrong-extension',
      'faults/cut-short.jpg': 'unreadable',
      'faults/not-fetched.jpg': 'not-fetched',
      'encodings/keeper-three-ink.tif': 'unbalanced-grey',
    }))
      assert.ok(rules(file).includes(rule), `${file}: ${rules(file)}`);
    assert.deepEqual(rules('faults/see-through.png'), []);
    for (const { path: file } of report.pictures)
      if (file.startsWith('pictures/')) assert.deepEqual(rules(file, /error|warning/), [], file);
  });

  it('makes a page that is light enough to pass on', () => {
    const { size } = fs.statSync(path.join(book, 'preview.html'));
    assert.ok(size < 4e6, `${size} bytes`);
  });

  it('places only pictures that are there', () => {
    const placed = [...fs.readFileSync(path.join(book, 'book.md'), 'utf8').matchAll(/\]\((.+?)\)/g)];
    assert.ok(placed.length > 0);
    for (const [, file] of placed) assert.ok(fs.existsSync(path.join(book, file)), file);
  });

  it('overwrites nothing', () => {
    const { status, stderr } = run('demo', book);
    assert.equal(status, 2);
    assert.match(stderr, /not empty, and the demo overwrites nothing/);
  });
});
