import assert from 'node:assert/strict';
import MarkdownIt from 'markdown-it';
import { code, codeInText, words } from '../../../src/report/markdown/escape';
import { AWKWARD } from '../awkward';

/** A reader that is not ours: CommonMark and tables, HTML as it stands. */
const markdown = new MarkdownIt({ html: true, linkify: true });

/** What is seen of a cell, by kind of what it is made of. */
const cell = (text: string) =>
  markdown
    .parse(`| a |\n| --- |\n| ${text} |`, {})
    .filter(token => token.type === 'inline')[1]
    .children!.filter(({ type, content }) => type !== 'html_inline' && content)
    .map(({ type, content }) => [type, content]);

const seen = AWKWARD.replace('\r\n', '\\u{d}\\u{a}');

describe('Markdown', () => {
  it('shows words as they are, whatever they hold', () => {
    const parts = cell(words(AWKWARD));
    assert.equal(parts.map(([, content]) => content).join(''), seen);
    assert.deepEqual([...new Set(parts.map(([type]) => type))], ['text']);
  });

  it('shows a name as code, whatever it holds', () => {
    for (const name of [AWKWARD, '`', '``a', 'b ', '|'])
      assert.deepEqual(cell(code(name)), [['code_inline', name === AWKWARD ? seen : name]]);
  });

  it('shows it so outside of a table too, where a bar is no mark', () => {
    for (const name of [AWKWARD, '`', 'b ', 'a | b']) {
      const [{ children }] = markdown.parse(codeInText(name), {}).filter(({ type }) => type === 'inline');
      assert.deepEqual(
        children!.map(({ type, content }) => [type, content]),
        [['code_inline', name === AWKWARD ? seen : name]],
      );
    }
  });

  it('calls nobody and links to nothing', () => {
    assert.equal(words('@name #1 a@b'), '@<!-- -->name #<!-- -->1 a@b');
  });
});
