// no-unit-test: it joins parts that have their own tests; test/e2e/suites/ tests it as a process
import type { Pool } from '../../book/pool';
import { smallOrders } from '../../report/chart/small-orders';
import { sheetOf } from '../../report/sheet';
import { encodings } from '../../report/sheet/encoding';
import type { Finding, PictureReport } from '../../shared/finding';
import type { Glance, GlanceForecast } from '../../shared/layout-places';
import type { Sheet } from '../../shared/sheet';

/** Longest edge of a thumbnail: its PNG has to go through an editor's hover, which takes 100,000 characters. */
const LONG_EDGE = 120;
/** So many forecasts are drawn. */
const DRAWN = 2;

/**
 * A picture in brief.
 * @param file absolute
 * @param picture as its book knows it; undefined: it is none of the book's, and only looked at
 * @param shared what is found on the book as a whole
 */
export async function glanceAt(
  file: string,
  picture: PictureReport | undefined,
  shared: readonly Finding[],
  pool: Pick<Pool, 'facts' | 'raster'>,
  signal: AbortSignal,
): Promise<Glance> {
  const thumbnail = thumbnailOf(file, picture?.facts.page ?? 1, pool, signal);
  if (!picture) {
    const [facts, small] = await Promise.all([pool.facts(file, signal), thumbnail]);
    const id = facts[0].encoding;
    const encoding = { id, ...encodings[id] };
    const unknown = { verdict: null, resolution: null, forecasts: [], more: 0, inBook: false };
    return { encoding, thumbnail: small, ...unknown };
  }
  const { encoding, conditions, scale, advice, facts } = sheetOf(picture, shared, { light: null, series: 0 });
  const known = new Map(facts);
  const forecasts = conditions.slice(0, DRAWN).map(condition => forecastOf(condition, scale));
  const more = conditions.length - forecasts.length;
  const resolution = known.get('As placed') ?? known.get('Resolution') ?? null;
  const brief = { encoding, verdict: advice.title, resolution, forecasts, more, inBook: true };
  return { ...brief, thumbnail: await thumbnail };
}

/** Null where it cannot be read: why is told by its findings. */
async function thumbnailOf(
  file: string,
  page: number,
  pool: Pick<Pool, 'raster'>,
  signal: AbortSignal,
): Promise<Glance['thumbnail']> {
  try {
    const { png, width, height } = await pool.raster({ file }, page, LONG_EDGE, signal);
    return { png, width, height };
  } catch {
    return null;
  }
}

function forecastOf(
  { process, paper, light, basisWords, expect, orders, tinted }: Sheet['conditions'][number],
  { colours }: Sheet['scale'],
): GlanceForecast {
  const { svg } = smallOrders(
    colours,
    orders.map(({ alone }) => alone),
  );
  return {
    condition: `${process}; ${paper}; ${light}`,
    basis: basisWords,
    expect: expect.tint,
    drawing: svg,
    drawn: tinted.alone,
  };
}
