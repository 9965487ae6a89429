import assert from 'node:assert/strict';
import { markdownText } from '../../../src/report/text/markdown';

describe('a page for the terminal', () => {
  it('is the words of the Markdown, wrapped', () => {
    const page = `# untagged

A picture **without** a \`profile\`
where [that](../x.md) matters: \`"odd"\`. See [the standard](https://example.org/1).

\`\`\`
{

  "a": 1
}
\`\`\`

- one item that is longer than a line of it
- two
`;
    assert.equal(
      markdownText(page, { width: 30, colour: false }),
      `untagged

A picture without a \`profile\`
where that matters: "odd". See
the standard
(https://example.org/1).

  {

    "a": 1
  }

- one item that is longer than
  a line of it
- two
`,
    );
  });
});
