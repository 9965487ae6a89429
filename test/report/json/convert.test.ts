import assert from 'node:assert/strict';
import { convertJson, undoJson } from '../../../src/report/json/convert';
import { convertReportSchema, undoReportSchema } from '../../../src/report/json/convert-schema';
import { strictErrors } from '../support';
import { fitting, relinking, report, undone } from '../text/conversions';

describe('conversions as JSON', () => {
  it('are what their schema describes, every key of it', () => {
    assert.equal(strictErrors(convertReportSchema, JSON.parse(convertJson(report, fitting))), '');
    const more = { ...report, relinking };
    assert.equal(strictErrors(convertReportSchema, JSON.parse(convertJson(more, fitting))), '');
    assert.equal(strictErrors(undoReportSchema, JSON.parse(undoJson(undone))), '');
  });

  it('give a picture a line, round, and count', () => {
    const text = convertJson(report, fitting);
    assert.equal(text.split('\n').filter(line => line.startsWith('{"path"')).length, 4);
    const { conversions, summary } = JSON.parse(text);
    assert.equal(conversions[0].proof.maxError, 0.333333);
    assert.equal(conversions[3].sha256, null);
    assert.deepEqual(summary, {
      ...{ converted: 2, copied: 0, planned: 0, skipped: 1, failed: 1 },
      otherThanAsked: 0,
    });
    const [first, ...others] = report.conversions;
    const toned = { ...first, proof: { ...first.proof!, encoding: 'rgb-toned' as const } };
    const other = { ...report, conversions: [toned, ...others] };
    assert.equal(JSON.parse(convertJson(other, fitting)).summary.otherThanAsked, 1);
    const kept = JSON.parse(convertJson({ ...other, below: 6 }, fitting));
    assert.deepEqual([kept.summary.otherThanAsked, kept.below], [0, 6]);
    const into = JSON.parse(convertJson({ ...report, folder: 'set' }, fitting));
    assert.deepEqual([into.folder, into.missing], ['set', ['c.tif', 'd.tif']]);
    const plain = JSON.parse(convertJson(report, fitting));
    assert.deepEqual([plain.missing, plain.untoned], [[], ['a.tif']]);
    const moved = { maxMove: 1 / 3, meanMove: 0.1, method: 'luma', fit: true, blackPoint: false };
    const shifted = { ...report, conversions: [{ ...first, moved }] };
    assert.deepEqual(JSON.parse(convertJson(shifted, fitting)).conversions[0].moved, {
      ...{ max: 0.333333, mean: 0.1, method: 'luma', fit: true, blackPoint: false },
    });
    assert.equal(strictErrors(convertReportSchema, JSON.parse(convertJson(shifted, fitting))), '');
    assert.deepEqual(JSON.parse(undoJson(undone)).summary, {
      restored: 1,
      planned: 0,
      skipped: 0,
      failed: 1,
      lost: 0,
    });
  });
});
