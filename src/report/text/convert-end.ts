// no-unit-test: test/report/text/convert.test.ts reads it
import { list } from '../../rules/words';
import type { Conversion, ConvertReport } from '../../shared/conversion';
import { missingIn } from '../missing';
import { otherThanAsked, withColourKept } from '../otherwise';
import { type Style, safe } from './style';
import { indent, wrap } from './wrap';

/**
 * What a report of conversions ends with, as blocks of lines: whatever must not be missed last. `settings`: the book's own,
 * as whoever asked sees that file, where results lie outside of the book; else null.
 */
export function endBlocks(report: ConvertReport, style: Style, settings: string | null): string[][] {
  const { conversions, dryRun, stopped } = report;
  const made = conversions.filter(({ outcome }) => outcome === 'converted' || outcome === 'planned');
  return [
    made.length ? originalsLines(report, style) : [],
    stopped === null && !dryRun && made.length ? wrap(advice(made, report, settings), style.width) : [],
    missingLines(report, style),
  ];
}

function originalsLines({ originals, dryRun }: ConvertReport, { width }: Style): string[] {
  if (originals === null) return [];
  const kept = `The originals ${dryRun ? 'would be' : 'are'} kept in "${safe(originals)}"`;
  return wrap(
    `${kept}. "evengrey convert --undo" with the same names brings them back, bit for bit. They stay there after that, too: delete them once nothing is to be brought back any more.`,
    width,
  );
}

/** What the proofs bear out, no more: a tone that is none makes another encoding. */
function advice(
  made: readonly Conversion[],
  { below, folder }: ConvertReport,
  settings: string | null,
): string {
  const check =
    folder !== null && settings !== null
      ? `Check the results by the book's settings, "evengrey check ${quoted(folder)} --settings ${quoted(settings)}",`
      : 'Check the book,';
  return `${proven(made, below)} ${check} and have a test print made before the run.`;
}

/** As a shell takes it for one word; it is typed by a person, so that plain names stay plain. */
const quoted = (name: string): string => (/^[\w./\\:-]+$/.test(name) ? name : `'${safe(name)}'`);

function proven(made: readonly Conversion[], below: number | null): string {
  const results = { conversions: [...made], below };
  const others = otherThanAsked(results);
  const coloured = withColourKept(results).length;
  const kept = `${coloured} of them colour is left, since only colour below a chroma of ${below} was to go`;
  if (others.length) {
    const encodings = [...new Set(others.map(({ proof }) => proof!.encoding))].join(', ');
    const also = coloured ? ` In ${kept}.` : '';
    return `The results were read again. ${others.length} of them ${others.length === 1 ? 'is' : 'are'} not what was asked: ${encodings} instead of ${made[0].to}.${also}`;
  }
  const off = worstOff(made);
  const asked = off.length ? 'of the encoding that was asked for' : 'what was asked for';
  const tones = off.length
    ? ` Tones are off what was planned by more than a rounding: ${safe(list(off, off.length))}.`
    : '';
  return `The results were read again and are ${asked}${coloured ? `; in ${kept}` : ''}.${tones}`;
}

/** L*: a JPEG of the highest quality rounds by no more. */
const ROUNDED = 1.5;

/** Results whose tones are off what was intended by more than a rounding, the worst first. */
const worstOff = (made: readonly Conversion[]): string[] =>
  made
    .flatMap(({ output, proof }) =>
      proof && proof.maxError > ROUNDED ? [{ output, most: proof.maxError }] : [],
    )
    .sort((x, y) => y.most - x.most)
    .map(({ output, most }) => `${output} by L* ${most.toFixed(2)} at most`);

/** Pictures that are not in the folder for the results, which is then not all of what was asked for. */
function missingLines({ conversions, folder, dryRun }: ConvertReport, { width }: Style): string[] {
  const missing = missingIn({ conversions, folder });
  if (!missing.length) return [];
  const [of, them, is] = missing.length === 1 ? ['picture', 'it', 'is'] : ['pictures', 'them', 'are'];
  const head = `${missing.length} ${of} of the book ${dryRun ? 'would not be' : `${is} not`} in "${safe(folder!)}", which is not the whole set without ${them}:`;
  return [
    ...wrap(head, width, 2),
    ...[...byReason(missing)].flatMap(([reason, names]) =>
      indent(wrap(`${safe(list(names, names.length))}: ${safe(reason)}`, width - 2, 2), 2),
    ),
  ];
}

function byReason(missing: readonly Conversion[]): Map<string, string[]> {
  const names = new Map<string, string[]>();
  for (const { path, reason } of missing) {
    const why = firstSentence(reason!);
    names.set(why, [...(names.get(why) ?? []), path]);
  }
  return names;
}

/** The rest of a reason says what to do, and stands above. */
const firstSentence = (reason: string): string => /^.*?\.(?=\s|$)/s.exec(reason)?.[0] ?? reason;
