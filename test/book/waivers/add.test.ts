import assert from 'node:assert/strict';
import { parseAgainst } from '../../../src/book/settings/validate';
import { changesAdding, waiversFor } from '../../../src/book/waivers/add';
import { applyWaivers } from '../../../src/book/waivers/apply';
import type { Waiver } from '../../../src/book/waivers/key';
import { finding, picture, report } from '../../report/text/support';

const stain = finding('residual-chroma', 'warning', 'A stain.');
const sha256 = 'a'.repeat(64);
const book = report([
  picture('a.tif', [stain, finding('untagged', 'note', 'No profile.')], { sha256 }),
  picture('a.tif', [stain], { sha256, page: 2 }),
  picture('b.tif', [stain], { sha256: '' }),
]);

/** What a file of waivers says after more were added, checked against its schema. */
function added(text: string | null, waivers: readonly Waiver[]): { text: string; waivers: Waiver[] } {
  let result = text ?? '';
  for (const { offset, length, content } of changesAdding(text, waivers))
    result = result.slice(0, offset) + content + result.slice(offset + length);
  const { value, problems } = parseAgainst('waivers', result, 'w.json');
  assert.deepEqual(problems, []);
  return { text: result, waivers: (value as { waivers: Waiver[] }).waivers };
}

describe('waiving one finding', () => {
  const made = waiversFor('residual-chroma', 'a.tif', 'It is a stamp.', book);

  it('waives it on every page, with the reason, and nothing else', () => {
    const { report: waived } = applyWaivers(book, added(null, made).waivers);
    assert.deepEqual(
      waived.pictures.map(({ findings }) => findings.map(({ rule }) => rule)),
      [['untagged'], [], ['residual-chroma']],
    );
    assert.deepEqual(
      made.map(({ reason }) => reason),
      ['It is a stamp.', 'It is a stamp.'],
    );
  });

  it('leaves what is in the file as it is, comments too', () => {
    const before =
      '// ours\r\n{\r\n  "waivers": [\r\n    // why\r\n    { "rule": "x", "content": [], "value": {} }\r\n  ],\r\n}\r\n';
    const { text, waivers } = added(before, made);
    assert.match(text, /^\/\/ ours\r\n\{\s+"waivers": \[\s+\/\/ why\s+\{\s+"rule": "x"/);
    assert.deepEqual(
      waivers.map(({ rule }) => rule),
      ['x', 'residual-chroma', 'residual-chroma'],
    );
    assert.ok(!/[^\r]\n/.test(text));
  });

  it('begins a list that is empty', () => assert.equal(added('{ "waivers": [] }', made).waivers.length, 2));

  it('says where there is nothing to waive, or where it cannot be', () => {
    assert.throws(
      () => waiversFor('untagged', 'a.tif', '', book),
      /nothing to waive: .*"untagged" stands on a\.tif/,
    );
    assert.throws(() => waiversFor('residual-chroma', 'c.tif', '', book), /nothing to waive/);
    assert.throws(
      () => waiversFor('residual-chroma', 'b.tif', '', book),
      /not read cannot be waived: b\.tif/,
    );
  });
});
