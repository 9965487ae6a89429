// no-unit-test: test/report/page/contacts.test.ts and test/report/overview/index.test.ts read what it draws
import type { PictureReport } from '../../shared/finding';
import type { Advice } from '../../shared/sheet';
import { LIGHT_GREY } from '../page/strip';
import { type Drawing, drawingOf } from './drawn';
import { drawsOf } from './draws';
import { possibleOrders } from './orders';

/** Three orders that stand for all: one near the centre, one in between, one far out. The same for every picture. */
export const CONTACT_DRAWS = drawsOf(0, 3);

/** A picture as it is drawn among the others, in each of those orders; null where nothing is forecast or judged. */
export function contactDrawings(
  { forecasts: [forecast] }: PictureReport,
  { kind }: Advice,
): Drawing[] | null {
  return forecast && kind !== 'leave' ? CONTACT_DRAWS.map(draw => drawingOf(forecast, draw)) : null;
}

/** One light grey of a picture in ten possible orders on its first target, `#rrggbb`; none of line work. */
export function contactGreys(
  { forecasts, targets, intent, facts }: PictureReport,
  { kind }: Advice,
): string[] {
  if (!forecasts.length || kind === 'leave' || intent === 'line' || facts.encoding === 'bilevel') return [];
  return possibleOrders(forecasts[0], targets[0], 0).map(({ alone }) => alone[LIGHT_GREY]);
}
