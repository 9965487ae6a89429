import assert from 'node:assert/strict';
import { defaultTarget, forecastPicture, forecastValue } from '../../../src/print';
import { bookJson, forecastsJson } from '../../../src/report/json';
import { checkReportSchema } from '../../../src/report/json/check-schema';
import { forecastReportSchema } from '../../../src/report/json/forecast-schema';
import { bookText } from '../../../src/report/text/book';
import type { BookReport, PictureReport } from '../../../src/shared/finding';
import { brokenFacts, greyFacts } from '../../book/support/facts';
import { strictErrors } from '../support';

const press = defaultTarget('offset-coated');
const target = { ...press, paper: { lab: [93, 0, 4] as [number, number, number] } };

function picture(path: string, change: Partial<PictureReport> = {}): PictureReport {
  const facts = greyFacts('a'.repeat(64));
  return {
    path,
    facts,
    intent: 'grey',
    intentStated: false,
    part: null,
    targets: [target, press],
    forecasts: [forecastPicture(facts, target)!, forecastPicture(facts, press)!],
    placed: { width: 180 },
    findings: [],
    ...change,
  };
}

const report: BookReport = {
  targets: [target, press],
  pictures: [
    picture('a.png', {
      findings: [
        {
          rule: 'untagged',
          severity: 'note',
          message: 'No profile.',
          data: { z: 1 / 3, a: [{ y: 1, x: 2 }] },
        },
      ],
    }),
    picture('b.png', { facts: brokenFacts('truncated'), forecasts: [], placed: null }),
  ],
  findings: [],
  notices: ['Told.'],
  summary: { pictures: 2, errors: 0, warnings: 0, notes: 1, encodings: { unreadable: 1, 'rgb-neutral': 1 } },
};

describe('report as JSON', () => {
  const text = bookJson(report);
  const value = JSON.parse(text);

  it('is what its schema describes, every key of it', () => {
    assert.equal(strictErrors(checkReportSchema, value), '');
  });

  it('says what a picture was converted from, and by which copy it is replaced', () => {
    const remedied = { from: 'a'.repeat(64), to: 'rgb-neutral' as const, toned: false, fitted: false };
    const copy = picture('a-grey.png', { facts: greyFacts('b'.repeat(64), { remedied }) });
    const original = picture('a.png', { replacedBy: 'a-grey.png', targets: [], forecasts: [] });
    const found = JSON.parse(bookJson({ ...report, pictures: [copy, original] }));
    assert.equal(strictErrors(checkReportSchema, found), '');
    const [one, other] = found.pictures;
    const { from, to, toned } = remedied;
    assert.deepEqual([one.remedied, one.replacedBy], [{ from, to, toned }, null]);
    assert.deepEqual([other.remedied, other.replacedBy, other.verdict], [null, 'a-grey.png', 'leave']);
  });

  it('says what to do with each picture, and how many want attention', () => {
    const broken = { rule: 'unreadable', severity: 'error' as const, message: 'Cut short.', data: {} };
    const [even, cut] = report.pictures;
    const faulty = { ...report, pictures: [even, { ...cut, findings: [broken] }] };
    const { pictures, summary } = JSON.parse(bookJson(faulty));
    assert.deepEqual(
      pictures.map((p: { verdict: string }) => p.verdict),
      ['send', 'mend'],
    );
    assert.match(bookText(faulty, { width: 80, colour: false }), /^1 of 2 pictures wants attention/);
    assert.equal(summary.attention, 1);
  });

  it('keeps the contract’s names and their order', () => {
    assert.deepEqual(Object.keys(value), [
      'schema',
      'book',
      'scope',
      'pictures',
      'findings',
      'notices',
      'summary',
    ]);
    assert.equal(value.book.root, '.');
    assert.deepEqual(Object.keys(value.pictures[0]).slice(0, 10), [
      'path',
      'page',
      'sha256',
      'format',
      'width',
      'height',
      'channels',
      'bits',
      'alpha',
      'palette',
    ]);
    assert.deepEqual(value.pictures[1].forecast, []);
    assert.equal(value.pictures[1].sha256, null);
  });

  it('is the same to the byte, whatever order the figures of a rule came in', () => {
    const other = structuredClone(report);
    other.pictures[0].findings[0].data = { a: [{ x: 2, y: 1 }], z: 1 / 3 };
    assert.equal(bookJson(other), text);
    assert.deepEqual(value.pictures[0].findings[0].data, { a: [{ x: 2, y: 1 }], z: 0.333333 });
  });

  it('rounds, and the parts still add up to the whole', () => {
    const six = (n: number) => Number(n.toFixed(6));
    for (const forecast of value.pictures[0].forecast) {
      const { parts, tint, absolute } = forecast;
      for (const axis of ['a', 'b'] as const) {
        assert.equal(tint[axis], six(parts.process[axis] + parts.encoding[axis] + parts.light[axis]));
        assert.equal(absolute[axis], six(tint[axis] + parts.paper[axis]));
      }
    }
    assert.ok(!/\d\.\d{7}/.test(text));
  });

  it('gives a picture a line', () => {
    assert.equal(text.split('\n').filter(line => line.startsWith('{"path"')).length, 2);
    assert.ok(text.endsWith('}\n'));
  });
});

describe('forecasts as JSON', () => {
  it('are what their schema describes', () => {
    const forecast = forecastValue({ space: 'cmyk', values: [0, 0, 0, 0.5] }, press);
    const of = { path: null, page: null, space: 'cmyk' as const, values: [0, 0, 0, 50] };
    const value = JSON.parse(forecastsJson(of, [forecast]));
    assert.equal(strictErrors(forecastReportSchema, value), '');
    assert.equal(value.forecasts[0].zones.length, 1);
  });
});
