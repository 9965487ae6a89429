import assert from 'node:assert/strict';
import { defaultTarget, forecastValue } from '../../../src/print';
import { adviceOn } from '../../../src/report/sheet/advice';
import type { Severity } from '../../../src/shared/finding';
import { brokenFacts } from '../../book/support/facts';
import { finding, picture } from '../text/support';

const on = (...findings: [rule: string, severity: Severity][]) =>
  adviceOn(
    picture(
      'a.jpg',
      findings.map(([rule, severity]) => finding(rule, severity, '')),
    ),
  );

describe('what to do with a picture', () => {
  it('is to send it when nothing but notes is found', () => {
    const { kind, reason } = on(['untagged', 'note'], ['likely-tint', 'note']);
    assert.equal(kind, 'send');
    assert.match(reason, /test print/);
  });

  it('does not call a picture’s own tone a fault of the print', () => {
    const toned = adviceOn(picture('a.jpg', [], { encoding: 'rgb-toned' }));
    assert.match(toned.reason, /own tone/);
    assert.doesNotMatch(toned.reason, /orders of 10/);
  });

  it('is what has to be done first when several things are wrong', () => {
    assert.equal(on(['likely-tint', 'warning'], ['unreadable', 'error']).kind, 'mend');
    assert.match(on(['likely-tint', 'warning'], ['ink-total', 'warning']).reason, /more ink/);
  });

  it('is to convert what the print house does not take', () => {
    assert.equal(on(['encoding-not-accepted', 'error']).kind, 'convert');
  });

  it('is to mend what cannot be read, whatever the rules are set to', () => {
    const broken = picture('a.jpg', [], brokenFacts('truncated'));
    assert.equal(adviceOn(broken).kind, 'mend');
  });

  it('is to ask where it hangs on a route that nobody stated', () => {
    const unknown = forecastValue(
      { space: 'cmyk', values: [0.5, 0.5, 0.5, 0] },
      {
        ...defaultTarget('offset-coated'),
        route: 'inks',
      },
    );
    const route = (b: number, label: string) => ({
      ...{ route: 'inks' as const, label, weight: 0.5, spread: unknown.spread },
      tint: { ...unknown.tint, bands: { neutral: 1 - b, faint: 0, visible: b, obvious: 0, heavy: 0 } },
    });
    const ask = { ...unknown, routes: [route(0.1, 'Kept'), route(0.9, 'Converted')] };
    const { kind, reason } = adviceOn({ ...picture('a.tif', [], { space: 'cmyk' }), forecasts: [ask] });
    assert.equal(kind, 'ask');
    assert.match(
      reason,
      /Kept: a tint is seen in about 1 order of 10\. Converted: in about 9 orders of 10\./,
    );
  });

  it('is nothing for a picture in colour that nobody called grey', () => {
    const plain = picture('a.jpg', []);
    const colour = { ...plain, facts: { ...plain.facts, encoding: 'colour' as const } };
    assert.equal(adviceOn(colour).kind, 'leave');
  });
});
