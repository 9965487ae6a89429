import assert from 'node:assert/strict';
import path from 'node:path';
import { temporaryFolder } from '../book/support/folder';
import { evenBook } from './support/book';
import { golden } from './support/golden';
import { evengrey } from './support/run';

describe('settings of the command line', () => {
  it('are told with file, line, column and what was meant; nothing is checked', async () => {
    const root = temporaryFolder({
      'evengrey.json': `{
  "targets": {
    "run": { "process": "offset-cotaed", "paper": "gloss-coated" },
    "dummy": { "house": "houses/north.json", "inkLimit": "280" }
  },
  "parts": { "cover": { "picture": "cover/**" }, "maps": { "pictures": "maps", "target": "dumy" } },
  "rules": { "mixed-encoding": "error", "untagged": ["warning", { "rgb": "sometimes" }] },
}
`,
      'a.tif': 'x',
    });
    const ran = await evengrey(['check'], { cwd: root });
    golden('settings/problems.txt', ran.stderr);
    assert.deepEqual([ran.code, ran.stdout], [2, '']);
  });

  it('may come from another file', async () => {
    const root = evenBook();
    const other = temporaryFolder({ 'strict.json': '{"process": "inkjet"}', 'broken.json': '{"proces": 1}' });
    const args = ['check', root, '--format', 'json', '--settings'];
    const { stdout } = await evengrey([...args, path.join(other, 'strict.json')]);
    assert.equal(JSON.parse(stdout).book.targets[0].process, 'inkjet');
    const broken = await evengrey([...args, 'broken.json'], { cwd: other });
    assert.equal(broken.code, 2);
    assert.match(broken.stderr, /^broken\.json:1:2: Unknown key "proces"\. Did you mean "process"\?$/m);
    const gone = await evengrey([...args, 'gone.json'], { cwd: other });
    assert.equal(gone.code, 2);
    assert.match(gone.stderr, /There is no file "gone\.json"/);
  });
});
