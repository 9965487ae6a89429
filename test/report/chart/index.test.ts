import assert from 'node:assert/strict';
import sharp from 'sharp';
import { defaultTarget, forecastPicture, forecastValue, lights, processes } from '../../../src/print';
import { forecastChart } from '../../../src/report/chart';
import { isChart } from '../../../src/report/chart/own';
import { greyScale, pictureFacts } from '../../print/facts';

const grey = { space: 'grey' as const, values: [0.5] };
const offset = forecastValue(grey, defaultTarget('offset-coated'));

describe('chart of forecasts', () => {
  it('is a drawing that an independent renderer reads', async () => {
    const svg = forecastChart('Grey 128 of 255', [offset]);
    const { width, height } = await sharp(Buffer.from(svg)).metadata();
    assert.ok(width! > 800 && height! > 400);
    assert.ok(isChart(svg.slice(0, 512)));
    assert.ok(!isChart('<svg xmlns="http://www.w3.org/2000/svg"><g class="evengrey-forecast"/></svg>'));
  });
  it('has a panel a press, ellipses of one and two deviations a route, one of one deviation and a dot a further light', () => {
    const all = processes.flatMap(({ id }) =>
      lights.map(light => forecastValue(grey, { ...defaultTarget(id), light: light.id })),
    );
    const svg = forecastChart('Grey', all);
    for (const { name } of processes) assert.equal(svg.split(`${name}; `).length, 2, name);
    const routes = all
      .filter(({ condition }) => condition.light === 'D50')
      .reduce((sum, { routes: ways }) => sum + (ways?.length ?? 1), 0);
    const further = processes.length * (lights.length - 1);
    assert.equal(svg.match(/<ellipse /g)!.length, 2 * routes + further);
    assert.equal(svg.match(/ r="2.5" fill="#666"/g)!.length, further);
    const names = svg.match(/paint-order="stroke">(D65|A|FL2|FL11|LED-B\d)<\/text>/g)!;
    assert.equal(names.length, further);
  });
  it('numbers the ways as its list does, names the lights, and says how far each goes', () => {
    const lit = forecastValue(grey, { ...defaultTarget('offset-coated'), light: 'A' });
    const svg = forecastChart('Grey', [offset, lit], true);
    offset.routes!.forEach((_, i) => {
      assert.match(svg, new RegExp(`class="small strong" [^>]*>${i + 1}</text>`));
      assert.match(svg, new RegExp(`>${i + 1}: \\d+ %, `));
    });
    assert.match(svg, /is our guess:/);
    assert.match(svg, /fill="#444" [^>]*>A<\/text>/);
    assert.match(svg, /A [+−]?\d\.\d\/[+−]?\d\.\d ± \d\.\d\/\d\.\d/);
    const one = forecastChart('Grey', [forecastValue(grey, defaultTarget('silver-halide'))], true);
    assert.doesNotMatch(one, /small strong/, 'one way has no number');
    const labels = [...svg.matchAll(/<text x="([\d.]+)" y="([\d.]+)" text-anchor="middle"/g)];
    const places = labels.map(([, x, y]) => `${Math.round(Number(x) / 8)} ${Math.round(Number(y) / 8)}`);
    assert.equal(new Set(places).size, offset.routes!.length + 1, 'none upon another');
  });
  it('draws the tone curve of a picture between black and paper, and says the same in words', () => {
    const picture = forecastPicture(greyScale(), defaultTarget('silver-halide'))!;
    const svg = forecastChart('plate.tif', [picture]);
    assert.match(svg, /<path d="M[\d. ]+(L[\d. ]+){11}" fill="none" stroke="#000" stroke-width="2"/);
    assert.match(svg, /generic process, not your printer/);
    assert.match(svg, /No predictable/);
    assert.match(svg, /Orders in which a tint is seen: about \d in 10/);
    assert.match(svg, /– no tint \(below 1\): about \d0 %/);
  });
  it('draws no tint of line work, and says why', () => {
    const [zone] = greyScale().zones;
    const ends = [0, 100].map(L => ({
      ...zone,
      L,
      clusters: [{ weight: 1, mean: [L / 100], covariance: [0] }],
    }));
    const plan = pictureFacts({ space: 'grey', encoding: 'bilevel', bits: 1, zones: ends });
    const drawn = lights.map(({ id }) => forecastPicture(plan, { ...defaultTarget('inkjet'), light: id })!);
    const svg = forecastChart('plan.tif', drawn);
    assert.doesNotMatch(svg, /<ellipse|llipses:|pinkish|dots|in 10|leans|undefined/);
    assert.match(svg, /No ellipses are drawn: black or white alone/);
    assert.match(svg, /No proof: have a test print made/);
    assert.equal(
      svg.match(/<circle /g)!.length,
      2,
      'its black and its white on the tone scale, no line between',
    );
    assert.doesNotMatch(svg, /stroke-width="2"/);
    const stated = forecastChart(
      'Grey 0 of 255',
      [forecastValue({ ...grey, values: [0] }, defaultTarget('inkjet'))],
      true,
    );
    assert.match(stated, /<ellipse/, 'one stated value is no drawing');
    assert.match(stated, /No tint \(below 1\): /);
  });
  it('turns an ellipse with the correlation: long along +a* +b*, as an SVG turns (clockwise)', () => {
    const slanted = structuredClone(offset);
    slanted.routes = undefined;
    slanted.spread = {
      ...slanted.spread,
      house: { a: 0, b: 0 },
      order: { a: 2, b: 2 },
      page: { a: 0, b: 0 },
      corr: 0.8,
    };
    const svg = forecastChart('Grey', [slanted]);
    assert.match(svg, /rotate\(-45\)/);
    const [, rx, ry] = svg.match(/<ellipse rx="([\d.]+)" ry="([\d.]+)"/)!.map(Number);
    // sqrt((1 + 0.8) / (1 - 0.8)) = 3
    assert.ok(Math.abs(rx / ry - 3) < 0.02);
  });
  it('lets no name of a file into the markup', () =>
    assert.ok(!forecastChart('<script>&"', [offset]).includes('<script>')));
  it('is a sentence of a picture that has no forecast, which says why', () => {
    assert.match(forecastChart('clear.png', []), /Nothing can be forecast: no pixel of the picture prints/);
    assert.match(forecastChart('colour.tif', [], false, true), /forecast: the picture is in colour/);
  });
});
