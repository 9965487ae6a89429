// no-unit-test: drawings alone
import type { Severity } from '../../shared/finding';
import type { Advice } from '../../shared/sheet';
import { Html } from './html';

type Mark = Severity | Advice['kind'] | 'outlier' | 'chosen';

/** Signs told apart by shape, never by colour: own drawings on a grid of 16, in the colour of the text. */
const drawings: Record<Mark, string> = {
  send: '<path d="M2.5 8h10M9 4.5 12.5 8 9 11.5"/>',
  // a box half of which has become solid
  convert: '<path d="M2.5 2.5h11v11h-11zM2.5 13.5l11-11"/><path d="M5 13.5 13.5 5M8.5 13.5l5-5"/>',
  ask: '<path d="M2.5 3h11v8h-5l-3 2.7V11h-3z"/>',
  mend: '<path d="M4 4l8 8M12 4l-8 8"/>',
  leave: '<path d="M3 8h10"/>',
  // a stop sign and a warning triangle, as on roads and in the editor's own lists
  error: '<path d="M5.5 2h5L14 5.5v5L10.5 14h-5L2 10.5v-5z"/><path d="M8 5v3.8M8 10.7v.3"/>',
  warning: '<path d="M8 2.5 14 13.5H2z"/><path d="M8 6.5v3.2M8 11.4v.3"/>',
  note: '<circle cx="8" cy="8" r="4.5"/>',
  // one of a row that stands out of it
  outlier: '<path d="M2 11.5h3M11 11.5h3M6.5 5h3v3h-3z"/>',
  chosen: '<path d="M3 8.5 6.5 12 13 4.5"/>',
};

export const mark = (kind: Mark): Html =>
  new Html(`<svg class="mark" viewBox="0 0 16 16" aria-hidden="true">${drawings[kind]}</svg>`);
