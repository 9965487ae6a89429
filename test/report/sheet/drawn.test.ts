import assert from 'node:assert/strict';
import { drawingOf } from '../../../src/report/sheet/drawn';
import { picture } from '../text/support';

const [forecast] = picture('a.tif').forecasts;
const centre = { u: 0, v: 0, pick: 0.5 };

describe('a picture drawn as one possible order', () => {
  it('goes from the print’s black up to the bare paper', () => {
    const drawing = drawingOf(forecast, centre);
    for (const channel of drawing) {
      assert.equal(channel.length, 18);
      for (let i = 1; i < channel.length; i++) assert.ok(channel[i] > channel[i - 1], `step ${i}`);
      assert.ok(channel[0] > 0.02, 'black ink is no black');
      assert.ok(channel[17] > 0.9 && channel[17] < 1, 'paper is no screen’s white');
    }
  });

  it('is the same for the same draw, and leans the other way for the opposite one', () => {
    const far = { u: 2, v: 1, pick: 0.5 };
    assert.deepEqual(drawingOf(forecast, far), drawingOf(forecast, far));
    const lean = (u: number, v: number) => {
      const [red, green] = drawingOf(forecast, { ...far, u, v });
      return red[9] - green[9];
    };
    const [over, middle, under] = [lean(2, 0), lean(0, 0), lean(-2, 0)];
    assert.ok((over - middle) * (under - middle) < 0, `${over} ${middle} ${under}`);
  });
});
