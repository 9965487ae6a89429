import assert from 'node:assert/strict';
import { contents } from '../../../src/report/compare/contents';
import { worstFirst } from '../../../src/report/compare/worst-first';
import { mark } from '../../../src/report/page/marks';
import type { ChangeKind, FindingChanges } from '../../../src/shared/comparison';
import type { Finding } from '../../../src/shared/finding';
import { finding, picture } from '../text/support';
import { change, comparison, findings, page } from './support';

const [mixed, soft, clipped] = [
  finding('mixed', 'warning', ''),
  finding('soft', 'warning', ''),
  finding('clipped', 'error', ''),
];
const other = change('changed', 'z', [page(picture('z'), picture('z'))]);

/** What the list says of a picture, behind its name. */
function line(
  { waived = [], ...told }: Partial<FindingChanges> & { waived?: Finding[] },
  kind: ChangeKind = 'changed',
  off: string[] = [],
): string {
  const one = change(kind, 'a', [page(picture('a'), picture('a'), { waived, findings: findings(told) })]);
  const all = comparison([one, other], { settings: { changes: [], forecasts: [], off } });
  const { text } = contents(worstFirst(all.changes), all);
  return text.match(/>a<\/a>: ([^<]*)/)![1];
}

describe('the list of what changed', () => {
  it('names the rules that it counts', () => {
    assert.equal(line({ new: [mixed] }), 'worse than before: 1 new finding (warning mixed)');
    assert.equal(line({ ended: [mixed] }), 'better than before: 1 finding ended (warning mixed)');
    assert.equal(line({ unchanged: [soft] }), 'as before: 1 finding stays (warning soft)');
  });

  it('begins with what is new of pictures that did not change', () => {
    const others = [[soft], [clipped, soft]].map((told, i) => ({
      path: `o${i}`,
      page: 1,
      findings: findings({ new: told }),
    }));
    const list = (changes: (typeof other)[]) => {
      const all = comparison(changes, { others });
      return contents(worstFirst(all.changes), all).text;
    };
    for (const changes of [[], [other]])
      assert.ok(
        list(changes).includes(
          `<ul><li>${mark('error').text} <a href="#others">2 pictures that did not change</a>: new is error clipped, warning soft</li>`,
        ),
      );
  });

  it('says which ended and which stays, where there are both', () => {
    assert.equal(
      line({ ended: [mixed], unchanged: [soft] }),
      'better than before: 1 finding ended (ended: warning mixed; as before: warning soft)',
    );
    assert.equal(
      line({ new: [clipped], ended: [mixed] }),
      'otherwise than before: 1 new finding, 1 ended (new: error clipped; ended: warning mixed)',
    );
  });

  it('says of what is waived that it is, by rule', () => {
    assert.equal(line({ waived: [mixed] }), 'nothing stands against it but 1 waived finding (warning mixed)');
    assert.equal(
      line({ waived: [mixed] }, 'added'),
      'new, with nothing against it but 1 waived finding (warning mixed)',
    );
    assert.equal(
      line({ new: [clipped], waived: [mixed] }, 'added'),
      'new, with 1 finding against it (new: error clipped; waived: warning mixed)',
    );
    assert.equal(line({ waived: [{ ...mixed, severity: 'note' }] }), 'as before: no error or warning');
  });

  it('names no rule as ended that is off, or of a picture that is gone', () => {
    assert.equal(line({ ended: [mixed] }, 'changed', ['mixed']), 'as before: no error or warning');
    assert.equal(line({ ended: [mixed] }, 'deleted'), 'gone from the book');
  });
});
