import assert from 'node:assert/strict';
import { doubtNotices } from '../../../src/book/doubts';
import { conditions, forecasts, remarks } from '../../../src/report/compare/conditions';
import { finding, picture, target } from '../text/support';
import { change, clause, comparison, findings, GROUND, page } from './support';

const changed = () => comparison([change('changed', 'a', [page(picture('a'), picture('a'))])]);

describe('the conditions of a comparison', () => {
  it('stand once where both revisions have the same, with what the forecasts rest on', () => {
    const lines = conditions(changed());
    assert.equal(lines.length, 1);
    assert.match(lines[0], new RegExp(`^[A-Z].*; .*; .*\\. Forecasts: ${GROUND}\\.$`));
    assert.deepEqual(conditions(comparison([])), [], 'nothing is forecast where nothing changed');
    assert.ok(forecasts(changed()) && !forecasts(comparison([])));
  });

  it('stand where no picture changed and some are judged otherwise, with what that rests on', () => {
    const settings = comparison([], { settings: { changes: [clause('paper: b, before a')], forecasts: [] } });
    const others = comparison([], {
      others: [{ path: 'a', page: 1, findings: findings({ new: [finding('odd', 'warning', 'Odd.')] }) }],
    });
    for (const each of [settings, others]) {
      assert.match(conditions(each)[0], new RegExp(`Forecasts: ${GROUND}\\.$`));
      assert.ok(forecasts(each));
    }
  });

  it('tell both grounds where they differ though the target does not', () => {
    const both = changed();
    both.head.grounds = { [target.name]: [GROUND, 'by another'] };
    assert.match(conditions(both)[0], new RegExp(`Forecasts: ${GROUND}; or by another\\.$`));
  });

  it('stand twice where the settings changed them', () => {
    const other = changed();
    other.base.targets = [];
    const [before, after] = conditions(other);
    assert.match(before, /^Before: Nobody said where it will be printed/);
    assert.match(after, /^After: .* Forecasts: /);
    other.base.pictures = 0;
    assert.deepEqual(conditions(other), [after.replace('After: ', '')], 'before, there was no book');
  });

  it('tell doubts about a target, which are then no remarks', () => {
    const doubted = { ...target, process: 'silver-halide' as const, route: 'black-plate' as const };
    const [doubt] = doubtNotices(doubted);
    assert.ok(doubt);
    const compared = { ...changed(), notices: [doubt, 'Another.'] };
    compared.head.targets = [doubted];
    compared.base.targets = [doubted];
    assert.deepEqual(remarks(compared), ['Another.']);
    assert.ok(
      conditions(compared)[0].toLowerCase().includes(doubt.split('": ')[1].slice(0, -1).toLowerCase()),
    );
  });
});
