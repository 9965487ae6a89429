import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { temporaryFolder } from '../../book/support/folder';
import { readCommand } from '../../report/github/support';
import { sarifErrors } from '../../report/sarif/support';
import { evenBook, faultyBook, pictures } from '../support/book';
import { golden } from '../support/golden';
import { evengrey } from '../support/run';

/** A repository with a book inside, with a name that every format has to escape. */
const NAME = 'a\nb: 50%, {ü} <&>.tif';
const repository = () =>
  temporaryFolder({
    '.git/HEAD': '',
    'books/two, three/evengrey.json': '{"process": "offset-coated"}',
    [`books/two, three/${NAME}`]: '',
    'books/two, three/b.tif': pictures.neutral(1),
  });

const check = async (root: string, format: string, ...more: string[]) =>
  (await evengrey(['check', root, '--format', format, ...more])).stdout;

describe('formats of evengrey check', () => {
  const formats = { github: 'txt', junit: 'xml', markdown: 'md' };
  for (const [format, extension] of Object.entries(formats))
    it(`writes ${format}`, async () => {
      golden(`check/${format}.${extension}`, await check(faultyBook(), format));
    });

  it('writes SARIF', async () => {
    const log = JSON.parse(await check(faultyBook(), 'sarif'));
    assert.equal(sarifErrors(log), '');
    const [{ tool, ...run }] = log.runs;
    // rules have their pages in it, which are kept elsewhere
    const rules = tool.driver.rules.map(({ id }: { id: string }) => id);
    golden('check/sarif.json', `${JSON.stringify({ rules, ...run }, null, 2)}\n`);
  });

  it('writes a page, with every picture that can be shown', async () => {
    const page = await check(faultyBook(), 'html');
    // the sheets below are the same as in an editor, and read elsewhere
    const [head, ...sheets] = page.split('<article class="sheet"');
    const words = head
      .replace(/<(style|svg)[\s\S]*?<\/\1>/g, '')
      .replace(/<img .*?>/g, '[picture]')
      .replace(/<[^>]*>/g, '\n')
      .replace(/\s*\n\s*/g, '\n');
    golden('check/html.txt', words.trimStart());
    assert.equal(sheets.length, 13);
    assert.equal(page.match(/src="data:image\/jpeg;base64,/g)!.length, 2 * 7);
  });

  it('writes the same to the byte from anywhere, with no path of this machine and no time', async () => {
    const root = faultyBook();
    for (const format of ['github', 'junit', 'markdown', 'sarif', 'html']) {
      const once = await check(root, format);
      const { stdout } = await evengrey(['check', '--format', format, '--jobs', '1'], { cwd: root });
      assert.equal(stdout, once, format);
      assert.ok(!once.includes(root) && !once.includes(path.basename(root)), format);
      assert.doesNotMatch(once, /\d:\d\d:\d\d/, format);
    }
  });

  it('gives paths from the root of the repository, whatever is in them', async () => {
    const root = path.join(repository(), 'books/two, three');
    const [first] = (await check(root, 'github')).split('\n');
    assert.equal(readCommand(first).properties.file, `books/two, three/${NAME}`);
    const [run] = JSON.parse(await check(root, 'sarif')).runs;
    const { artifactLocation } = run.results[0].locations[0].physicalLocation;
    assert.equal(decodeURIComponent(artifactLocation.uri), `books/two, three/${NAME}`);
    assert.equal(run.automationDetails.id, 'evengrey/books/two, three/');
  });

  it('says with JUnit and the exit code the same of warnings', async () => {
    const root = evenBook();
    fs.writeFileSync(path.join(root, 'plates/05.tif'), pictures.blackOnly(5));
    const failures = async (...more: string[]) =>
      / failures="(\d+)"/.exec(await check(root, 'junit', ...more))![1];
    assert.equal(await failures(), '0');
    assert.equal(await failures('--max-warnings', '1'), '0');
    assert.equal(await failures('--max-warnings', '0'), '1');
  });

  it('writes each where it is told to', async () => {
    const root = evenBook();
    for (const name of ['report.sarif', 'report.xml', 'report.md', 'report.html']) {
      const format = { '.sarif': 'sarif', '.xml': 'junit', '.md': 'markdown', '.html': 'html' }[
        path.extname(name)
      ]!;
      const { code, stdout } = await evengrey(['check', '--format', format, '--output', name], { cwd: root });
      assert.deepEqual([code, stdout], [0, ''], name);
      assert.ok(fs.readFileSync(path.join(root, name), 'utf8').length > 100, name);
    }
  });

  it('shows no other picture on a page than the one that was checked', async () => {
    const root = evenBook();
    const git = (...args: string[]) => execFileSync('git', ['-C', root, ...args]);
    git('init', '-q');
    git('add', '.');
    fs.writeFileSync(path.join(root, 'plates/02.tif'), pictures.neutral(9));
    const page = await check(root, 'html', '--staged');
    assert.equal(page.match(/The file in the folder is not the one that was checked/g)!.length, 2);
    assert.equal(page.match(/src="data:image\/jpeg;base64,/g)!.length, 2 * 3);
  });
});
