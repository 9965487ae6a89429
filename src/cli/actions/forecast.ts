import fs from 'node:fs/promises';
import path from 'node:path';
import { look } from '../../book/discovery/look';
import { gather } from '../../book/gather';
import { forecastPicture, forecastValue, type StatedValue } from '../../print';
import { forecastChart } from '../../report/chart';
import { forecastsJson, type Subject } from '../../report/json';
import { forecastText, subjectLine } from '../../report/text/forecast';
import type { Forecast } from '../../shared/forecast';
import type { PictureFacts } from '../../shared/picture';
import type { Target } from '../../shared/target';
import { named, rootOf } from '../book';
import { EXIT, Failure } from '../failure';
import { type InBook, targetsOf } from '../forecast-targets';
import { interruptible } from '../interrupt';
import { refuse, writeResult } from '../output';
import { withReading } from '../reading';
import { styleOf } from '../style';
import type { ForecastVerbOptions } from '../verbs/forecast';

/** Forecasts a picture or a stated value under all the conditions asked for, and gives the exit code. */
export async function forecast(picture: string | undefined, options: ForecastVerbOptions): Promise<number> {
  const stated = statedOf(options);
  if (stated.length + (picture === undefined ? 0 : 1) !== 1)
    throw new Failure('Name one thing to forecast: a picture, or one of --ink, --rgb, --grey.');
  if (options.page !== undefined && picture === undefined)
    throw new Failure('--page: stated values have no pages. Name a picture, or leave --page out.');
  const standing = { format: options.format, reads: [options.settings] };
  if (options.output !== undefined) await refuse(options.output, standing);
  const place = picture === undefined ? null : await placeOf(picture);
  const { targets, settings } = await targetsOf(options, place);
  const { subject, forecasts } = place
    ? await ofPicture(place, targets, options)
    : ofValue(stated[0], targets);
  const text = written(options, { ...subject, settings }, forecasts);
  await writeResult(text, options.output, standing);
  tellRoutes(options.route, forecasts);
  return EXIT.clean;
}

function written({ format, output }: ForecastVerbOptions, subject: Subject, forecasts: readonly Forecast[]) {
  if (format === 'json') return forecastsJson(subject, forecasts);
  if (format === 'svg')
    return forecastChart(subjectLine(subject), forecasts, subject.values !== null, subject.inColour);
  return forecastText(subject, forecasts, styleOf(output));
}

/** A route that cannot apply is not dropped in silence. */
function tellRoutes(asked: string | undefined, forecasts: readonly Forecast[]): void {
  if (asked === undefined || asked === 'unknown') return;
  const others = new Map<string, string[]>();
  for (const { condition } of forecasts) {
    const taken = condition.route;
    if (taken === asked) continue;
    const ids = others.get(taken) ?? [];
    others.set(taken, ids.includes(condition.process) ? ids : [...ids, condition.process]);
  }
  for (const [taken, ids] of others)
    process.stderr.write(
      `--route ${asked} cannot apply on ${ids.join(', ')}: forecast there as "${taken}".\n`,
    );
}

interface Stated {
  subject: Subject;
  value: StatedValue;
}

function statedOf({ ink, rgb, grey }: ForecastVerbOptions): Stated[] {
  const of = (space: StatedValue['space'], values: number[] | undefined, most: number): Stated[] =>
    values
      ? [
          {
            subject: { path: null, page: null, space, values },
            value: { space, values: values.map(value => value / most) },
          },
        ]
      : [];
  return [...of('cmyk', ink, 100), ...of('rgb', rgb, 255), ...of('grey', grey, 255)];
}

function ofValue({ subject, value }: Stated, targets: readonly Target[]) {
  return { subject, forecasts: targets.map(target => forecastValue(value, target)) };
}

/** A picture: as it was named, where it lies, and its book. */
interface Pictured extends InBook {
  name: string;
  file: string;
}

async function placeOf(name: string): Promise<Pictured> {
  const file = named(name);
  const root = await rootOf([file]);
  return { name, file, root, path: path.relative(root, file).split(path.sep).join('/') };
}

async function ofPicture(
  picture: Pictured,
  targets: readonly Target[],
  { page = 1 }: ForecastVerbOptions,
): Promise<{ subject: Subject; forecasts: Forecast[] }> {
  const { name } = picture;
  const pages = await read(picture);
  const facts = pages.find(entry => entry.page === page);
  if (!facts) throw new Failure(`"${name}" has no page ${page}; it has ${pages.length}.`);
  if (facts.unreadable) throw new Failure(`"${name}" cannot be read. ${facts.unreadable.text}`);
  return {
    subject: {
      path: name.split(path.sep).join('/'),
      page,
      space: facts.space,
      values: null,
      inColour: facts.encoding === 'colour',
    },
    forecasts: targets.flatMap(target => forecastPicture(facts, target) ?? []),
  };
}

/** Through the book's own cache, so that a picture of a checked book is not read again. */
async function read({ root, path: at, file }: Pictured): Promise<PictureFacts[]> {
  const realRoot = await fs.realpath(root);
  const seen = await look(file, realRoot);
  if (seen.kind === 'folder') throw new Failure(`"${file}" is a folder; name a picture in it.`);
  const found = { path: at, file, obstacle: seen.kind === 'obstacle' ? seen.why : null };
  return interruptible(signal =>
    withReading(root, { cache: true }, async ({ pool, cache }) => {
      const [pages] = await gather([found], { realRoot, pool, cache, signal });
      return pages;
    }),
  );
}
