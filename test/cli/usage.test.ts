import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { commit, git } from '../book/revisions/support/repository';
import { temporaryFolder } from '../book/support/folder';
import { evenBook, pictures } from './support/book';
import { golden } from './support/golden';
import { evengrey } from './support/run';

const verbs = ['check', 'merge', 'compare', 'forecast', 'convert', 'explain', 'demo'];

describe('usage', () => {
  it('is told on request, for every verb, with its formats', async () => {
    golden('usage/evengrey.txt', (await evengrey(['--help'])).stdout);
    for (const verb of verbs) {
      const ran = await evengrey([verb, '--help']);
      assert.deepEqual([ran.code, ran.stderr], [0, '']);
      assert.match(ran.stdout, /--format <format>\s+how it is written/);
      golden(`usage/${verb}.txt`, ran.stdout);
    }
    const version = await evengrey(['--version']);
    assert.match(version.stdout, /^\d+\.\d+\.\d+\n$/);
  });

  const slips: [string[], RegExp][] = [
    [['chek'], /^evengrey: Unknown command "chek"\. Did you mean "check"\?/],
    [['check', '--fromat', 'json'], /^evengrey: Unknown option "--fromat"\. Did you mean "--format"\?/],
    [
      ['check', '--format', 'jsn'],
      /^evengrey: --format: "jsn" is not a known format\. Did you mean "json"\?\n$/,
    ],
    [['check', '--format', 'svg'], /Known: text, json, /],
    [['check', '--max-warnings', 'few'], /whole number from 0 up/],
    [['check', '--jobs', '0'], /whole number from 1 up/],
    [['check', 'no-such-folder'], /^evengrey: There is no file or folder "no-such-folder"\.\n$/],
    [
      ['check', '--process', 'ofset-coated'],
      /--process: "ofset-coated" is not a known process\. Did you mean "offset-coated"\?/,
    ],
    [['explain', 'mixed'], /Did you mean "mixed-encodings" or "mixed-profiles"\?\n$/],
    [['check', '--light', 'moon'], /Known: D50, D65, A, /],
    [['check', '--paper', 'uncoatd'], /Did you mean "uncoated"\?/],
    [['check', '.', '--light', 'A'], /name a process with --process too/],
    [['forecast'], /Name one thing to forecast/],
    [
      ['forecast', '--grey', '1', '--separated-for', 'silver-halide'],
      /--separated-for: "silver-halide" is not a known process\. Known: liquid-toner, /,
    ],
    [['forecast', '--grey', '1', '--ink', '0,0,0,1'], /Name one thing to forecast/],
    [['forecast', '--grey', '0x80'], /a number from 0 to 255/],
    [['forecast', '--grey', '1e2'], /a number from 0 to 255/],
    [['forecast', '--grey', '1', '--page', '1'], /--page: stated values have no pages/],
    [['forecast', '--grey', '300'], /a number from 0 to 255/],
    [['forecast', '--ink', '0,0,50'], /4 numbers from 0 to 100/],
    [['forecast', '--grey', '1', '--route', 'sperated'], /Did you mean "separated"\?/],
    [['forecast', 'gone.tif'], /There is no file or folder "gone.tif"/],
    [['explain', 'untaged'], /^evengrey: No rule is called "untaged"\. Did you mean "untagged"\?\n$/],
  ];
  for (const [args, message] of slips)
    it(`says what is wrong with: ${args.join(' ')}`, async () => {
      const ran = await evengrey(args, { cwd: temporaryFolder() });
      assert.match(ran.stderr, message);
      assert.deepEqual([ran.code, ran.stdout], [2, '']);
    });

  it('keeps its promises: every example of every help runs', async () => {
    const root = temporaryFolder();
    fs.cpSync(evenBook(), path.join(root, 'my-book'), { recursive: true });
    fs.copyFileSync(path.join(root, 'my-book/plates/01.tif'), path.join(root, 'my-book/plate.tif'));
    git(root, 'init', '--quiet', '--initial-branch=main');
    commit(root);
    commit(root, { 'my-book/plates/05.tif': pictures.neutral(5) });
    let examples = 0;
    for (const verb of verbs) {
      const { stdout } = await evengrey([verb, '--help']);
      for (const [, line] of stdout.matchAll(/^ {2}evengrey (.*)$/gm)) {
        const ran = await evengrey(line.split(' '), { cwd: root });
        assert.deepEqual([ran.code, ran.stderr], [0, ''], line);
        examples++;
      }
    }
    assert.ok(examples >= 6);
    assert.match(fs.readFileSync(path.join(root, 'grey.svg'), 'utf8'), /^<svg /);
  });

  it('checks one book at a time', async () => {
    const ran = await evengrey(['check', evenBook(), evenBook()]);
    assert.equal(ran.code, 2);
    assert.match(ran.stderr, /belong to different books/);
  });

  it('takes a book from where its path leads', async () => {
    const root = evenBook();
    const ran = await evengrey(['check', path.join('..', path.basename(root))], { cwd: root });
    assert.equal(ran.code, 0);
  });
});
