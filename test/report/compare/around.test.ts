import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { bookOf, pageCommand } from '../../../src/report/compare/around';
import { comparison } from './support';

const around = (folder: string, conditions: string[] = []) => ({
  place: { folder, settings: null },
  conditions,
});

describe('what is around a comparison', () => {
  it('calls the book by its folder in the repository, and the repository itself by nothing', () => {
    assert.equal(bookOf(around('books/hafen/')), 'books/hafen');
    assert.equal(bookOf(around('')), '');
  });

  it('is told by a command that makes the page of the very same comparison', () => {
    assert.equal(
      pageCommand(comparison([]), around('hafen/', ['--process', 'offset-coated'])),
      'npx --no-install evengrey compare aaaaaaaaaa bbbbbbbbbb --no-merge-base --book hafen --whole --process offset-coated --format html --output review.html',
    );
    const some = pageCommand(comparison([], { scope: 'changes', unread: 3 }), around(''));
    assert.ok(!/--whole|--book/.test(some), some);
    const { head } = comparison([]);
    assert.equal(pageCommand(comparison([], { head: { ...head, folder: true } }), around('')), '');
  });

  it('names the branch where no other clone has what was compared, and leaves out what the other side had', () => {
    const command = pageCommand(comparison([]), { ...around(''), branch: 'c'.repeat(40) });
    assert.match(command, / compare aaaaaaaaaa cccccccccc --whole /);
  });

  it('is one word for a shell, whatever the folder is called', () => {
    for (const name of ['two words', `it's "so" $HOME \\ \`x\``, 'grün/buch', 'a!b', "it's"]) {
      const command = pageCommand(comparison([]), around(`${name}/`));
      const words = execFileSync('sh', ['-c', command.replace(/^npx/, 'printf "%s\\n"')])
        .toString()
        .split('\n');
      assert.equal(words[words.indexOf('--book') + 1], name, command);
    }
  });
});
