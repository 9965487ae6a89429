import fs from 'node:fs/promises';
import path from 'node:path';
import { look } from '../../book/discovery/look';
import { gather } from '../../book/gather';
import { findRoot, RootError } from '../../book/root';
import {
  defaultTarget,
  forecastPicture,
  forecastValue,
  lights,
  processes,
  type StatedValue,
} from '../../print';
import { forecastChart } from '../../report/chart';
import { forecastsJson, type Subject } from '../../report/json';
import { forecastText, subjectLine } from '../../report/text/forecast';
import type { Forecast } from '../../shared/forecast';
import type { PictureFacts } from '../../shared/picture';
import type { LightId, Target } from '../../shared/target';
import { named } from '../book';
import { conditionsOf, routeOf, separatedForOf } from '../conditions';
import { EXIT, Failure } from '../failure';
import { interruptible } from '../interrupt';
import { refuse, writeResult } from '../output';
import { withReading } from '../reading';
import { styleOf } from '../style';
import type { ForecastVerbOptions } from '../verbs/forecast';

/** Forecasts a picture or a stated value under all the conditions asked for, and gives the exit code. */
export async function forecast(picture: string | undefined, options: ForecastVerbOptions): Promise<number> {
  const targets = targetsOf(options);
  const stated = statedOf(options);
  if (stated.length + (picture === undefined ? 0 : 1) !== 1)
    throw new Failure('Name one thing to forecast: a picture, or one of --ink, --rgb, --grey.');
  if (options.page !== undefined && picture === undefined)
    throw new Failure('--page: stated values have no pages. Name a picture, or leave --page out.');
  const drawing = options.format === 'svg';
  if (options.output !== undefined) await refuse(options.output, drawing);
  const { subject, forecasts } =
    picture === undefined ? ofValue(stated[0], targets) : await ofPicture(picture, targets, options);
  const text = written(options, subject, forecasts);
  await writeResult(text, options.output, drawing);
  tellRoutes(options.route, forecasts);
  return EXIT.clean;
}

function written({ format, output }: ForecastVerbOptions, subject: Subject, forecasts: readonly Forecast[]) {
  if (format === 'json') return forecastsJson(subject, forecasts);
  if (format === 'svg') return forecastChart(subjectLine(subject), forecasts, subject.values !== null);
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

/** Every process and light that was not left to choice, by process, then light. */
function targetsOf(options: ForecastVerbOptions): Target[] {
  const every = options.light === ALL;
  const { process, paper, light } = conditionsOf({ ...options, light: every ? undefined : options.light });
  // seven tables of ten lights are read by nobody; other programs want them all
  const brief = options.format === 'text' && !process && !light && !every;
  const route = routeOf(options.route);
  const separatedFor = separatedForOf(options.separatedFor);
  const chosen = process ? [process] : processes.map(({ id }) => id);
  return chosen.flatMap(id => {
    const target = defaultTarget(id);
    return (light ? [light] : brief ? [DAYLIGHT] : lights.map(l => l.id)).map(under => ({
      ...target,
      light: under,
      paper: paper ?? target.paper,
      route: route ?? target.route,
      separatedFor,
    }));
  });
}

const ALL = 'all';
const DAYLIGHT: LightId = 'D50';

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

async function ofPicture(
  name: string,
  targets: readonly Target[],
  { page = 1 }: ForecastVerbOptions,
): Promise<{ subject: Subject; forecasts: Forecast[] }> {
  const pages = await read(named(name));
  const facts = pages.find(entry => entry.page === page);
  if (!facts) throw new Failure(`"${name}" has no page ${page}; it has ${pages.length}.`);
  if (facts.unreadable) throw new Failure(`"${name}" cannot be read. ${facts.unreadable.text}`);
  return {
    subject: { path: name.split(path.sep).join('/'), page, space: facts.space, values: null },
    forecasts: targets.flatMap(target => forecastPicture(facts, target) ?? []),
  };
}

/** Through the book's own cache, so that a picture of a checked book is not read again. */
async function read(file: string): Promise<PictureFacts[]> {
  try {
    const root = await findRoot([file]);
    const realRoot = await fs.realpath(root);
    const seen = await look(file, realRoot);
    if (seen.kind === 'folder') throw new Failure(`"${file}" is a folder; name a picture in it.`);
    const found = {
      path: path.relative(root, file).split(path.sep).join('/'),
      file,
      obstacle: seen.kind === 'obstacle' ? seen.why : null,
    };
    return await interruptible(signal =>
      withReading(root, { cache: true }, async ({ pool, cache }) => {
        const [pages] = await gather([found], { realRoot, pool, cache, signal });
        return pages;
      }),
    );
  } catch (error) {
    throw error instanceof RootError ? new Failure(error.message) : error;
  }
}
