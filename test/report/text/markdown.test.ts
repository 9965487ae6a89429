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

  it('keeps the items of a list apart, by stroke and by number', () => {
    const page = `Chosen so:

9. Only what
   is taken, whatever else there is.
10. The \`majority\`, unless there is none of it.

* a
* 2. b`;
    assert.equal(
      markdownText(page, { width: 24, colour: false }),
      `Chosen so:

9. Only what is taken,
   whatever else there
   is.
10. The \`majority\`,
    unless there is none
    of it.

- a
- 2. b
`,
    );
  });
});
