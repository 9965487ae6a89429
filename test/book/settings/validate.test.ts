import assert from 'node:assert/strict';
import { parseAgainst } from '../../../src/book/settings/validate';

const read = (text: string) => parseAgainst('settings', text, 'evengrey.json');
/** `line:column: message` of every problem. */
const problems = (text: string) => read(text).problems.map(p => `${p.line}:${p.column}: ${p.message}`);

describe('settings text', () => {
  it('passes comments, trailing commas and a byte order mark', () => {
    const text = '\uFEFF// our book\n{ "process": "silver-halide", /* matt */ "paper": "photo-lustre", }';
    assert.deepEqual(problems(text), []);
    assert.deepEqual(
      { ...(read(text).value as object) },
      { process: 'silver-halide', paper: 'photo-lustre' },
    );
  });

  it('finds the line and column of an unknown key and the word that was meant', () => {
    const [problem] = read('{\n  "process": "inkjet",\n  "papr": "matt-coated"\n}').problems;
    assert.deepEqual([problem.line, problem.column, problem.length], [3, 3, 6]);
    assert.equal(problem.message, 'Unknown key "papr". Did you mean "paper"?');
    assert.equal(problem.suggestion, 'paper');
  });

  const slips: [string, string, string][] = [
    [
      'a process',
      '{"process": "silver-halid"}',
      '1:13: "silver-halid" is not a known process. Did you mean "silver-halide"?',
    ],
    [
      'a light by the user’s own spelling',
      '{"light": "d50"}',
      '1:11: "d50" is not a known light. Did you mean "D50"?',
    ],
    [
      'American spelling',
      '{"intent": {"gray": ["a.jpg"]}}',
      '1:13: Unknown key "gray". Did you mean "grey"?',
    ],
    [
      'a severity',
      '{"rules": {"untagged": "warn"}}',
      '1:24: "warn" is not a known severity. Did you mean "warning"?',
    ],
    [
      'a rule',
      '{"rules": {"untaged": "off"}}',
      '1:12: No rule is called "untaged". Did you mean "untagged"?',
    ],
    [
      'an encoding',
      '{"encodings": ["rgb-netural"]}',
      '1:16: "rgb-netural" is not a known encoding. Did you mean "rgb-neutral"?',
    ],
  ];
  for (const [what, text, message] of slips)
    it(`suggests ${what}`, () => assert.deepEqual(problems(text), [message]));

  it('lists what is known where nothing is near', () => {
    assert.match(
      problems('{"route": "somehow"}')[0],
      /not a known route\. Known: rgb, separated, inks, black-plate, unknown\./,
    );
  });

  it('says of which kind a value must be', () => {
    assert.deepEqual(
      problems('{"light": 50}').map(p => p.replace(/one of .*, not/, 'one of ..., not')),
      ['1:11: "light" must be one of ..., not a number.'],
    );
    assert.deepEqual(problems('{"pictures": 3}'), [
      '1:14: "pictures" must be text in quotes or a list, not a number.',
    ]);
    assert.deepEqual(problems('{"trim": {"width": "210 mm", "height": 280}}'), [
      '1:20: "trim.width" must be a number, not text in quotes.',
    ]);
    assert.deepEqual(problems('[]'), ['1:1: The file must be an object, not a list.']);
  });

  it('tells one thing of a value that may be written in two ways', () => {
    assert.deepEqual(problems('{"paper": {"lab": [95, 0]}}'), ['1:19: "paper.lab" needs 3 values.']);
    assert.deepEqual(problems('{"paper": {"lab": [95, 0, -2], "brightend": "low"}}'), [
      '1:32: Unknown key "brightend". Did you mean "brightened"?',
    ]);
  });

  it('finds limits and what is missing', () => {
    assert.deepEqual(problems('{"inkLimit": 40}'), ['1:14: "inkLimit" must be 100 or more.']);
    assert.deepEqual(problems('{"parts": {"cover": {}}}'), ['1:12: "pictures" is missing in "parts.cover".']);
    assert.deepEqual(problems('{"placements": {"a.jpg": {"width": 0}}}'), [
      '1:36: "placements.a.jpg.width" must be more than 0.',
    ]);
  });

  it('finds a key that stands twice, and one that would change the object itself', () => {
    assert.deepEqual(problems('{"light": "A",\n "light": "D50"}'), [
      '2:2: The key "light" stands here twice.',
    ]);
    assert.match(problems('{"__proto__": {}}')[0], /^1:2: Unknown key "__proto__"\./);
  });

  it('tells the first slip of a text that is no JSON, and where', () => {
    assert.deepEqual(problems('{\n  "light": "A"\n  "route": "rgb"\n}'), [
      '3:3: A comma is missing before this.',
    ]);
    assert.deepEqual(problems("{'light': 'A'}"), ["1:2: Double quotes are needed here, not '."]);
    assert.deepEqual(problems(''), ['1:1: The file is empty. Write {} at least.']);
    assert.deepEqual(problems('{"light": "A"'), ['1:14: A closing } is missing.']);
  });

  it('tells all problems in the order of the text', () => {
    assert.deepEqual(
      problems('{"b": 1, "light": "B50", "a": 1}').map(p => p.split(':')[1]),
      ['2', '19', '26'],
    );
  });

  it('checks options by the rule’s own schema', () => {
    const [problem] = problems('{"rules": {"ink-total": ["error", {"no-such": 1}]}}');
    assert.match(problem, /^1:36: Unknown key "no-such"\./);
  });
});
