// no-unit-test: it joins parts that have their own tests; test/e2e/suites/ tests it as a process
import path from 'node:path';
import { kindOf, takes } from '../../layout';
import { type Converting, convertPictures } from '../../remedy/batch';
import type { Converters } from '../../remedy/converters';
import type { ConvertReport } from '../../shared/conversion';

/**
 * Converts pictures for layouts to place: where a layout shows a picture and would not show its result, such as a TIFF
 * on a web page, the result is a PNG, which all of them show. Ink values have no such format.
 * @param converters begins converters; they are closed with each run
 * @throws as `convertPictures`
 */
export async function convertPlaceable(
  how: Omit<Converting, 'converters' | 'dryRun'>,
  converters: () => Converters,
): Promise<ConvertReport> {
  const run = (what: Partial<Converting> = {}) =>
    convertPictures({ ...how, converters: converters(), dryRun: false, ...what });
  if (!how.relink || how.wish.to === 'black-only') return run();
  const planned = await run({ dryRun: true, onProgress: undefined });
  const unshown = unshownIn(planned);
  if (!unshown.size) return run();
  const paths = planned.conversions.map(conversion => conversion.path);
  const files = (is: boolean) =>
    paths.filter(file => unshown.has(file) === is).map(file => path.join(how.root, file));
  const asPng = await run({ paths: files(true), wish: { ...how.wish, format: 'png' } });
  if (asPng.stopped !== null || unshown.size === new Set(paths).size) return asPng;
  return joined(await run({ paths: files(false) }), asPng);
}

/** Pictures that a layout shows, and whose results it would not show. */
function unshownIn({ conversions, relinking }: ConvertReport): ReadonlySet<string> {
  const sources = new Map(
    conversions.flatMap(({ output, path }) => (output === null ? [] : [[output, path]])),
  );
  return new Set(
    (relinking?.changes ?? []).flatMap(({ file, picture, doubt }) => {
      const source = sources.get(picture);
      return doubt !== null && source && takes(kindOf(file)!, source) ? source : [];
    }),
  );
}

const joined = (x: ConvertReport, y: ConvertReport): ConvertReport => ({
  dryRun: false,
  conversions: [...x.conversions, ...y.conversions].sort((a, b) => (a.path < b.path ? -1 : 1)),
  notices: [...new Set([...x.notices, ...y.notices])],
  relinking: {
    changes: [...(x.relinking?.changes ?? []), ...(y.relinking?.changes ?? [])],
    problems: [...(x.relinking?.problems ?? []), ...(y.relinking?.problems ?? [])],
  },
  stopped: x.stopped,
});
