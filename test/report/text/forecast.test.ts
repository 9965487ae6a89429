import assert from 'node:assert/strict';
import { defaultTarget, forecastPicture, forecastValue, lights, processes } from '../../../src/print';
import { forecastText } from '../../../src/report/text/forecast';
import type { LightId } from '../../../src/shared/target';
import { inkScale } from '../../print/facts';

const plain = { width: 80, colour: false };
const subject = { path: null, page: null, space: 'cmyk' as const, values: [0, 0, 0, 50] };
const black = (light: LightId, process = 'offset-coated' as const) =>
  forecastValue({ space: 'cmyk', values: [0, 0, 0, 0.5] }, { ...defaultTarget(process), light });

describe('forecasts as text', () => {
  it('tell one condition in words, in figures and with what it rests on', () => {
    const text = forecastText(subject, [black('D50')], plain);
    assert.match(text, /^C 0 %, M 0 %, Y 0 %, K 50 %\n\nOffset, coated paper; Gloss coated paper; /);
    assert.match(text, / {2}A tint is seen in .* No predictable direction\./);
    assert.match(text, /The print itself, L\* \/ a\* \/ b\* /);
    assert.match(text, /What this rests on\n {2}- ANSI\/CGATS TR 006/);
    assert.match(text, /A forecast is no proof: have a test print made before the run/);
  });

  it('tell the ways of the print house one by one, and that their weights are a guess', () => {
    const grey = forecastValue({ space: 'grey', values: [0.5] }, defaultTarget('offset-coated'));
    const text = forecastText({ ...subject, space: 'grey', values: [128] }, [grey], plain);
    assert.match(text, /What the print house may do with it \(how likely each is, is our guess\)/);
    assert.match(text, /- 60 %: grey values kept, on the black plate: L\* \d+, tint /);
    assert.equal(text.match(/^ {2}- \d+ %: /gm)!.length, grey.routes!.length);
    assert.match(text, /- a guess: how likely each way of the print house is/);
    assert.doesNotMatch(forecastText(subject, [black('D50')], plain), /may do with it|how likely/);
  });

  it('say what a separation for another condition does, or that it does nothing, in full and as a table', () => {
    const separatedFor = { process: 'liquid-toner', paper: 'gloss-coated-bright' } as const;
    const grey = forecastValue(
      { space: 'grey', values: [0.5] },
      { ...defaultTarget('inkjet'), separatedFor },
    );
    const photographic = forecastValue(
      { space: 'grey', values: [0.5] },
      { ...defaultTarget('silver-halide'), separatedFor },
    );
    for (const many of [1, 4]) {
      const told = (forecast: typeof grey) =>
        forecastText(subject, Array(many).fill(forecast), plain).replace(/\s+/g, ' ');
      assert.match(told(grey), /is done for liquid toner \(Gloss coated paper, brightened\), and those inks/);
      assert.match(told(photographic), /Nothing is separated here: .* changes nothing\./);
    }
  });

  it('tell many lights of a press as a table, and many presses in one light too', () => {
    const every = forecastText(
      subject,
      lights.map(light => black(light.id)),
      plain,
    );
    assert.equal(every.match(/^ {2}(D|A|FL|LED)/gm)?.length, lights.length);
    const presses = forecastText(
      subject,
      processes.map(p => forecastValue({ space: 'grey', values: [0.5] }, defaultTarget(p.id))),
      plain,
    );
    assert.match(presses, /^Daylight of a viewing booth \(D50\)$/m);
    for (const { id } of processes) assert.match(presses, new RegExp(`^ {2}${id} `, 'm'));
  });

  it('tell the tint and what is seen beside another paper apart, in no more than the width', () => {
    const text = forecastText(
      subject,
      processes.map(p => forecastValue({ space: 'grey', values: [0.5] }, defaultTarget(p.id))),
      plain,
    );
    assert.match(text, /tint +beside another +a tint is seen +it +black\n +L\* +a\*, b\* +paper a\*, b\*/);
    assert.match(text, /A tint is seen by itself from\s+about 2 up/);
    assert.match(text, /public\s+press\s+data\s+for\s+liquid-toner/);
    for (const line of text.split('\n')) assert.ok(line.length <= plain.width, line);
  });

  it('speak of no picture where a value was stated', () => {
    const of = { path: null, page: null, space: 'grey' as const, values: [3] };
    const dark = forecastValue({ space: 'grey', values: [3 / 255] }, defaultTarget('inkjet'));
    const text = forecastText(of, [dark], plain);
    assert.match(text, /this value prints as black\./);
    assert.match(text, /Prints as black +yes/);
    assert.doesNotMatch(text, /picture/);
  });

  it('give no odds of a tint for line work, in full or as a table', () => {
    const of = { path: 'plan.tif', page: 1, space: 'grey' as const, values: null };
    const plan = inkScale(k => [k], 'bilevel', 2);
    const ends = plan.zones.map((zone, i) => ({ ...zone, L: 100 * i }));
    const line = forecastPicture({ ...plan, space: 'grey', zones: ends }, defaultTarget('inkjet'))!;
    for (const many of [1, 4]) {
      const text = forecastText(of, Array(many).fill(line), plain);
      assert.match(text, /no grey that could be tinted/);
      assert.doesNotMatch(text, /about \d|fewer than|nearly every|leans (warm|bluish|greenish|pinkish)/);
    }
  });

  it('say where nobody prints so', () => {
    const odd = forecastValue(
      { space: 'grey', values: [0.5] },
      { ...defaultTarget('silver-halide'), paper: 'uncoated' },
    );
    assert.match(forecastText(subject, [odd], plain), /\n {2}No such paper is made for silver halide: /);
    assert.match(forecastText(subject, [odd, odd, odd, odd], plain), /\nNo such paper is made for silver/);
    assert.doesNotMatch(forecastText(subject, [black('D50')], plain), /such paper/);
  });

  it('name no direction that is not predictable', () => {
    const text = forecastText(subject, [black('D50')], plain);
    assert.ok(!/leans/.test(text));
  });

  it('say where nothing can be forecast', () => {
    const of = { path: 'a.jpg', page: 2, space: 'rgb' as const, values: null };
    assert.match(
      forecastText(of, [], plain),
      /^a\.jpg \(page 2\)\n\nNothing can be forecast: no pixel of the picture\sprints/,
    );
    assert.match(forecastText({ ...of, inColour: true }, [], plain), /forecast: the picture is in colour/);
  });
});
