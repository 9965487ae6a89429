import assert from 'node:assert/strict';
import { type LayoutKind, type Reference, references } from '../../src/layout';
import { mutated, seeded } from '../picture/mutate';

const kinds: LayoutKind[] = ['markdown', 'html', 'css', 'latex', 'typst', 'asciidoc'];
const many = (text: string, times: number) => text.repeat(times);
const MANY = 10_000;

/** Each with a path, and a place in the text that follows the one before. */
function soundReferences(text: string, kind: LayoutKind): Reference[] {
  const found = references(text, kind, { textWidth: 100 });
  let last = 0;
  for (const { start, end, line, column, path } of found) {
    assert.ok(last <= start && start < end && end <= text.length, kind);
    assert.ok(line > 0 && column > 0 && path, kind);
    last = start;
  }
  return found;
}

describe('hostile layouts', () => {
  /** Each makes one or another parser go over the text again for each of its signs: minutes, not moments. */
  const towers = [
    ...[
      '[',
      ']',
      '![',
      '[a](',
      '![a](b(',
      '*a_ ',
      '`a``',
      'a <!--',
      'a <![CDATA[',
      '> ',
      '- ',
      '<a b="',
      '[a](b "',
    ],
    ...[
      '<img src="',
      '<script>',
      '<td>',
      'url(',
      '"',
      '\\',
      '/*',
      'a{b:',
      '{',
      '}',
      '\\a[',
      '\\begin{minipage}{3cm}',
    ],
    ...[
      '\\includegraphics[',
      '\\includegraphics{',
      '%',
      '\\verb|',
      '\\iffalse',
      '\\newcommand{\\a}[9]{',
      '\\parbox{1cm}{',
    ],
    ...[
      '#',
      '#a(',
      '#[',
      '#{',
      '#"',
      'a```',
      '#set image(width: 3mm)\n',
      'image:a[',
      'image:',
      ':a: {a}{a}\n',
    ],
  ];

  it('are read to their end', () => {
    for (const tower of towers) for (const kind of kinds) soundReferences(many(tower, MANY), kind);
  }).timeout(120_000);

  it('give places in the text, whatever is changed in it', () => {
    const texts: Record<LayoutKind, string> = {
      markdown:
        '---\ncover: a.jpg\n---\n> ![a](b.jpg){width=5%} <img src="c&amp;d.jpg"> ![r]\n\n[r]: <e f.jpg>\n',
      html: `<img srcset="a.jpg 2x, b.jpg"><style>p{background:url(c.jpg)}</style><p style="background:url('d.jpg')">`,
      css: '@media print { a { background: url("a\\66 b.jpg") 0/3cm, url(c.jpg) } } /* x */',
      latex: String.raw`\newcommand{\p}[1]{\includegraphics[width=.5\linewidth]{#1}} \p{a} % \includegraphics{{b.c}.jpg}`,
      typst: '#set page(width: 10cm)\n#figure(image("a.jpg", width: 50%), caption: [x #image("b.jpg")])',
      asciidoc: ':imagesdir: x\nimage::a b.jpg[Alt, 300, pdfwidth="50%"]\ntext image:c.jpg[]',
    };
    let found = 0;
    for (const kind of kinds)
      for (let seed = 0; seed < 400; seed++) {
        const text = mutated(Buffer.from(texts[kind]), seeded(seed)).toString('utf8');
        found += soundReferences(text, kind).length;
      }
    assert.ok(found > 2000, `${found} pictures`);
  });
});
