import type { InkTable } from '../../colour/press/table';
import type { AB } from '../../shared/forecast';
import { tonerScale } from '../spectral/toner';
import { inkModel } from './model';

/**
 * Departure of the measured liquid-toner press, set up by the usual tone curves, from what the table gives its ink
 * values on its paper: a*, b* by print lightness, none on bare paper, linear between the measured greys and constant
 * below the darkest.
 */
export function tonerOffset(table: InkTable): (L: number) => AB {
  const { paper, greys } = tonerScale('tvi-calibrated');
  const still = { order: 0, page: 0 };
  const none = { a: 0, b: 0 };
  const model = inkModel({
    table,
    paper: paper.lab,
    scatter: { tone: still, blackShade: none, colouredGrey: none },
    ground: [],
  });
  const lab = new Float64Array(3);
  const points = [{ L: paper.lab[0], a: 0, b: 0 }];
  for (const grey of greys) {
    model.lab(grey.inks, null, lab);
    points.push({ L: grey.lab[0], a: grey.lab[1] - lab[1], b: grey.lab[2] - lab[2] });
  }
  return L => {
    const i = points.findIndex(point => point.L <= L);
    if (i === 0) return none;
    if (i < 0) return points[points.length - 1];
    const [dark, light] = [points[i], points[i - 1]];
    const t = (L - dark.L) / (light.L - dark.L);
    return { a: dark.a + t * (light.a - dark.a), b: dark.b + t * (light.b - dark.b) };
  };
}
