import assert from 'node:assert/strict';
import fs from 'node:fs';
import { temporaryFolder } from '../../book/support/folder';
import { readCommand } from '../../report/github/support';
import { faultyBook } from '../support/book';
import { evengrey } from '../support/run';

const { problemMatcher } = JSON.parse(fs.readFileSync('media/problem-matcher.json', 'utf8'));

describe('the problem matcher', () => {
  const [{ pattern }] = problemMatcher;
  const [{ regexp, severity, file, line, code, message }] = pattern;

  it('reads every finding with a file as the runner does', async () => {
    const { stdout } = await evengrey(['check', faultyBook(), '--format', 'github']);
    const lines = stdout.split('\n').filter(text => text.includes(' file='));
    assert.ok(lines.length > 5);
    for (const text of lines) {
      const match = new RegExp(regexp).exec(text)!;
      const { name, properties, data } = readCommand(text);
      assert.deepEqual(
        [match[severity], match[file], match[line], match[code], match[message]],
        [name, properties.file, properties.line, properties.title, data],
      );
    }
  });

  it('lists a name of the format’s own marks as the format writes it, as the recipe says', async () => {
    const { stdout } = await evengrey([
      'check',
      temporaryFolder({ '30-a%b:c,d.jpg': '' }),
      '--format',
      'github',
    ]);
    const match = new RegExp(regexp, 'm').exec(stdout)!;
    assert.deepEqual([match[file], match[code]], ['30-a%25b%3Ac%2Cd.jpg', 'unreadable']);
    assert.match(
      fs.readFileSync('src/cli/README.md', 'utf8'),
      /A name with `%`, `:` or `,` in it stands there/,
    );
  });

  it('takes nothing else for a finding', async () => {
    const { stdout } = await evengrey(['check', faultyBook()]);
    for (const text of [...stdout.split('\n'), '::notice title=Evengrey::"x" was not searched.'])
      assert.doesNotMatch(text, new RegExp(regexp));
  });

  it('is the one that the recipes give to editors', () => {
    const page = fs.readFileSync('src/cli/README.md', 'utf8');
    assert.ok(page.includes(JSON.stringify(regexp)));
  });
});
