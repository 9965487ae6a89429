import assert from 'node:assert/strict';
import { CgatsError, column, parseCgats } from '../../src/colour/cgats';

const text = `CGATS.17
ORIGINATOR "a press, somewhere"	# said so
NUMBER_OF_FIELDS 3
BEGIN_DATA_FORMAT
SAMPLE_ID
	LAB_L LAB_A
END_DATA_FORMAT
NUMBER_OF_SETS 2
BEGIN_DATA
"A 1"\t95,00\t-0,5
2 50.5 1e-1
END_DATA
`;

describe('CGATS text', () => {
  it('is read with tabs, wrapped field names, quotes, comments and decimal commas', () => {
    const table = parseCgats(text);
    assert.equal(table.identifier, 'CGATS.17');
    assert.equal(table.keywords.ORIGINATOR, 'a press, somewhere');
    assert.deepEqual(table.fields, ['SAMPLE_ID', 'LAB_L', 'LAB_A']);
    assert.equal(table.rows[0][0], 'A 1');
    assert.deepEqual([...column(table, 'LAB_L')], [95, 50.5]);
    assert.deepEqual([...column(table, 'LAB_A')], [-0.5, 0.1]);
  });
  it('reads all three ends of line', () => {
    for (const end of ['\r', '\r\n', '\n'])
      assert.equal(parseCgats(text.replaceAll('\n', end)).rows.length, 2);
  });
  it('names the line of a short row', () =>
    assert.throws(() => parseCgats(text.replace(' 1e-1', '')), /line 11 has 2 values, but 3 fields/));
  it('says when the file is cut short', () =>
    assert.throws(() => parseCgats(text.replace('END_DATA\n', '')), /cut short/));
  it('says when it is no such text at all', () => assert.throws(() => parseCgats('hello'), CgatsError));
  it('says which field is missing, and which value is no number', () => {
    assert.throws(() => column(parseCgats(text), 'LAB_B'), /no field LAB_B.*SAMPLE_ID, LAB_L, LAB_A/);
    assert.throws(
      () => column(parseCgats(text.replace('50.5', 'n.a.')), 'LAB_L'),
      /sample 2: LAB_L is "n.a."/,
    );
  });
});
