import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { lights, processes } from '../../../src/print';
import { forecastReportSchema } from '../../../src/report/json/forecast-schema';
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

  it('writes a chart where no drawing is, or an older chart', async () => {
    const root = temporaryFolder({
      'plate.svg': '<svg xmlns="http://www.w3.org/2000/svg"/>',
      'text.svg': 'a text',
    });
    const draw = (output: string, format = 'svg') =>
      evengrey(['forecast', '--grey', '9', '--process', 'inkjet', '--format', format, '--output', output], {
        cwd: root,
      });
    for (const again of ['anew', 'once more'])
      assert.deepEqual(await draw('chart.svg'), { code: 0, stdout: '', stderr: '' }, again);
    for (const [output, format] of [
      ['plate.svg', 'svg'],
      ['other.svg', 'text'],
      ['chart.svg', 'json'],
      ['chart.png', 'svg'],
    ])
      assert.equal((await draw(output, format)).code, 2, `${output} as ${format}`);
    assert.match(fs.readFileSync(path.join(root, 'plate.svg'), 'utf8'), /svg"\/>$/);
  });

  it('says of which processes a route cannot be', async () => {
    const args = ['forecast', '--grey', '128', '--route', 'inks', '--process'];
    const photographic = await evengrey([...args, 'silver-halide']);
    assert.equal(photographic.code, 0);
    assert.match(photographic.stderr, /^--route inks cannot apply on silver-halide: .* "rgb"\.\n$/);
    assert.equal((await evengrey([...args.slice(0, 4), 'separated', '--process', 'inkjet'])).stderr, '');
  });

  it('says of a picture of R, G, B that its inks cannot be kept, not that they are', async () => {
    const cwd = temporaryFolder({ 'a.tif': pictures.neutral(1) });
    const args = ['forecast', 'a.tif', '--route', 'inks', '--process', 'offset-coated', '--light', 'D50'];
    const { stdout, stderr } = await evengrey(args, { cwd });
    assert.match(stdout, /The file's numbers are +separated to inks\n/);
    assert.equal(stderr, '--route inks cannot apply on offset-coated: forecast there as "separated".\n');
    const [{ condition }] = JSON.parse(
      (await evengrey([...args, '--format', 'json'], { cwd })).stdout,
    ).forecasts;
    assert.equal(condition.route, 'separated');
  });

  it('titles a picture as it was named', async () => {
    const root = temporaryFolder({ 'plates/a.tif': pictures.neutral(1) });
    const { stdout } = await evengrey(['forecast', './plates/a.tif', '--process', 'inkjet'], { cwd: root });
    assert.match(stdout, /^\.\/plates\/a\.tif\n/);
  });

  it('tells many conditions as tables', async () => {
    golden('forecast/black.txt', (await evengrey(['forecast', '--ink', '0,0,0,50'])).stdout);
    golden(
      'forecast/lights.txt',
      (await evengrey(['forecast', '--grey', '3', '--process', 'inkjet'])).stdout,
    );
    const every = await evengrey(['forecast', '--grey', '128', '--light', 'all']);
    for (const { id } of lights)
      assert.equal(every.stdout.match(new RegExp(`^ {2}${id} `, 'gm'))?.length, processes.length);
    golden('forecast/daylight.txt', (await evengrey(['forecast', '--grey', '128', '--light', 'D50'])).stdout);
  });
});
