import assert from 'node:assert/strict';
import path from 'node:path';
import { lights, processes } from '../../../src/print';
import { forecastReportSchema } from '../../../src/report/json/schema';
import { temporaryFolder } from '../../book/support/folder';
import { strictErrors } from '../../report/support';
import { pictures } from '../support/book';
import { golden } from '../support/golden';
import { evengrey } from '../support/run';

const json = async (...args: string[]) =>
  JSON.parse((await evengrey(['forecast', ...args, '--format', 'json'])).stdout);

describe('evengrey forecast', () => {
  it('answers for every process and light, as its schema says', async () => {
    for (const stated of [
      ['--ink', '0,0,0,50'],
      ['--rgb', '128,128,128'],
      ['--grey', '128'],
    ]) {
      const report = await json(...stated);
      assert.equal(strictErrors(forecastReportSchema, report), '');
      assert.equal(report.forecasts.length, processes.length * lights.length);
    }
  });

  it('answers for one condition', async () => {
    const report = await json(
      '--process',
      'offset-coated',
      '--light',
      'D65',
      '--paper',
      'grade-3-coated',
      '--ink',
      '50,40,40,0',
    );
    assert.deepEqual(report.of, { path: null, page: null, space: 'cmyk', values: [50, 40, 40, 0] });
    assert.equal(report.forecasts.length, 1);
    assert.deepEqual(report.forecasts[0].condition, {
      process: 'offset-coated',
      paper: 'grade-3-coated',
      light: 'D65',
      route: 'inks',
      basis: 'data',
    });
  });

  it('answers for a picture, in words too', async () => {
    const root = temporaryFolder({
      'a.tif': pictures.neutral(1),
      'b.tif': pictures.colour(),
      'c.tif': 'none',
    });
    const at = (name: string) => path.join(root, name);
    const report = await json(at('a.tif'), '--process', 'offset-coated', '--light', 'D50');
    assert.ok(report.forecasts[0].zones.length > 1);
    const ran = await evengrey(['forecast', 'a.tif', '--process', 'offset-coated', '--light', 'D50'], {
      cwd: root,
    });
    golden('forecast/picture.txt', ran.stdout);
    const colour = await evengrey(['forecast', 'b.tif'], { cwd: root });
    assert.equal(colour.code, 0);
    assert.match(colour.stdout, /Nothing can be forecast/);
    const none = await evengrey(['forecast', 'c.tif'], { cwd: root });
    assert.equal(none.code, 2);
    assert.match(none.stderr, /^evengrey: "c\.tif" cannot be read\. /);
    const page = await evengrey(['forecast', 'a.tif', '--page', '2'], { cwd: root });
    assert.match(page.stderr, /"a\.tif" has no page 2; it has 1\./);
  });

  it('prints a separation made for another process, and draws a chart', async () => {
    const grey = ['--grey', '128', '--process', 'offset-uncoated', '--light', 'D50', '--route', 'separated'];
    const [own] = (await json(...grey)).forecasts;
    const [wrong] = (await json(...grey, '--separated-for', 'offset-coated')).forecasts;
    assert.ok(wrong.tint.chroma > own.tint.chroma + 0.5);
    const { stdout } = await evengrey(['forecast', ...grey, '--format', 'svg']);
    assert.match(stdout, /^<svg xmlns/);
    assert.match(stdout, /Offset, uncoated paper; Uncoated paper/);
  });

  it('tells many conditions as tables', async () => {
    golden('forecast/black.txt', (await evengrey(['forecast', '--ink', '0,0,0,50'])).stdout);
    golden('forecast/daylight.txt', (await evengrey(['forecast', '--grey', '128', '--light', 'D50'])).stdout);
  });
});
