import assert from 'node:assert/strict';
import type { Refusal } from '../../../src/shared/finding';
import type { PictureFacts } from '../../../src/shared/picture';
import { judged } from '../support/judged';
import { picture } from '../support/pictures';

const refusal = (file: string, more: Partial<Refusal> = {}): Refusal => ({
  ...{ file, line: 7, column: 3, tool: 'browsers show', outcome: 'blank', sure: true },
  ...more,
});
const tex = refusal('book.tex', { tool: 'pdfTeX takes', outcome: 'stops', sure: false });
const typst = refusal('book.typ', { tool: 'Typst takes', outcome: 'stops' });

const placed = (refusals: Refusal[] | undefined, facts: Partial<PictureFacts> = {}, path = 'a.tif') => ({
  ...picture('rgb-neutral', { path, facts: { format: 'tiff', ...facts } }),
  refusals,
});
const found = (one: ReturnType<typeof placed>) => judged([one], 'format-not-placed').pictures[0];

describe('format-not-placed', () => {
  describe('passes', () => {
    it('a picture that no line refuses', () => assert.deepEqual(found(placed(undefined)), []));
    it('one that is not there', () =>
      assert.deepEqual(found(placed([typst], { unreadable: { reason: 'missing', text: '' } })), []));
    it('further pages of a file', () => assert.deepEqual(found(placed([typst], { page: 2 })), []));
  });
  describe('fails', () => {
    it('a TIFF in a page for browsers, and in Typst, surely', () => {
      const [finding, ...more] = found(placed([refusal('book.html'), typst]));
      assert.deepEqual(more, []);
      assert.deepEqual(
        [finding.severity, finding.message],
        [
          'error',
          'The place of this picture stays blank in print: browsers show no TIFF, and book.html:7 places this one. To have it printed, convert it and have the layouts place the result, which is a PNG then.',
        ],
      );
      assert.match(
        found(placed([typst]))[0].message,
        /^The book does not compile .*: Typst takes no TIFF, and book\.typ:7/,
      );
    });
    it('in LaTeX as a note, since the engine decides, and after what is sure', () => {
      const [{ severity, message, data }] = found(placed([tex]));
      assert.equal(severity, 'note');
      assert.match(
        message,
        /^This picture may be missing .*: pdfTeX takes no TIFF.*look at a page that yours has made.*convert it by its name/,
      );
      assert.deepEqual(data, { format: 'TIFF', file: 'book.tex', line: 7 });
      assert.deepEqual(
        found(placed([tex, typst])).map(({ severity, data }) => [severity, data.file]),
        [['error', 'book.typ']],
      );
    });
    it('what no conversion to grey is for, with another way out', () => {
      const psd = placed([typst], { unreadable: { reason: 'format', text: '' } }, 'a.PSD');
      assert.match(found(psd)[0].message, /no PSD.*save it as PNG or JPEG/);
      const colour = { ...placed([typst]), intent: 'colour' as const };
      assert.match(found(colour)[0].message, /save it as PNG or JPEG/);
    });
  });
});
