import type {
  Conversion,
  ConvertReport,
  Fitting,
  Relinked,
  RelinkedLine,
  Undone,
  UndoReport,
} from '../../shared/conversion';
import { proofWords } from '../proof';
import { endBlocks } from './convert-end';
import { type SharedWords, sharedWords } from './shared-words';
import { type Paint, paintOf, type Style, safe } from './style';
import { columns, indent, wrap } from './wrap';

/**
 * What was converted, for people: the sum first, then each picture, what failed last so that it is seen. `settings`: the
 * book's, as whoever asked sees that file, where the results lie outside of the book.
 */
export function convertText(
  report: ConvertReport,
  fitting: Fitting,
  style: Style,
  settings: string | null = null,
): string {
  const { conversions, notices, dryRun, relinking } = report;
  const paint = paintOf(style);
  const of = (...outcomes: Conversion['outcome'][]) =>
    conversions.filter(({ outcome }) => outcomes.includes(outcome));
  const made = of('converted', 'planned');
  const shared = sharedWords(made);
  const blocks = [
    [paint.bold(convertHeadline(report))],
    fitLines(fitting, style),
    counterLines(fitting, style),
    ...made.map(conversion => madeLines(conversion, shared, style)),
    ...shared.map(({ sentences, pictures, number }) => [
      number === null ? 'Of all of them:' : `Of ${pictures.size} of them [${number}]:`,
      ...bullets(sentences, style),
    ]),
    copiedLines(of('copied'), dryRun, style),
    reasons('Skipped', of('skipped'), style),
    reasons(paint.red('Failed'), of('failed'), style),
    relinking ? relinkLines(relinking, 'the results', dryRun) : [],
    relinking ? settingsLines(relinking, 'the results', dryRun) : [],
    relinking ? notRelinkedLines(relinking, style) : [],
    notices.flatMap(notice => wrap(safe(notice), style.width, 2)),
    ...endBlocks(report, style, settings),
  ];
  return text(blocks);
}

export function undoText(report: UndoReport, style: Style): string {
  const { undone, relinking, dryRun } = report;
  const paint = paintOf(style);
  const of = (outcome: Undone['outcome']) => undone.filter(each => each.outcome === outcome);
  const back = of(dryRun ? 'planned' : 'restored');
  return text([
    [paint.bold(undoHeadline(report))],
    back.map(({ path }) => safe(path)),
    reasons('Skipped', of('skipped'), style),
    reasons(paint.red('Failed'), of('failed'), style),
    reasons(paint.red('Lost'), of('lost'), style),
    relinking?.changes.length ? relinkLines(relinking, 'the originals again', dryRun) : [],
    relinking ? settingsLines(relinking, 'the originals again', dryRun) : [],
    relinking ? notRelinkedLines(relinking, style) : [],
  ]);
}

/** What became of all originals, as a sentence. */
export function undoHeadline({ undone, relinking, dryRun, stopped }: UndoReport): string {
  const back = undone.filter(({ outcome }) => outcome === (dryRun ? 'planned' : 'restored')).length;
  const [verb, would] = dryRun ? ['would be brought back', 'would be'] : ['brought back, bit for bit', 'was'];
  const head = back
    ? `${originals(back)} ${verb}.`
    : relinking?.changes.length
      ? `The layouts ${dryRun ? 'would place' : 'place'} the originals again; no picture ${would} brought back.`
      : `Nothing ${would} undone.`;
  return stopped === null ? head : `Stopped before the end. ${head}`;
}

const text = (blocks: readonly (readonly string[])[]) =>
  `${blocks
    .filter(lines => lines.length)
    .map(lines => lines.join('\n'))
    .join('\n\n')}\n`;

const pictures = (count: number) => (count === 1 ? '1 picture' : `${count} pictures`);
const originals = (count: number) => (count === 1 ? '1 original' : `${count} originals`);

/** What became of all pictures, as a sentence. */
export function convertHeadline({ conversions, dryRun, stopped }: ConvertReport): string {
  const count = (outcome: Conversion['outcome']) =>
    conversions.filter(each => each.outcome === outcome).length;
  const made = count(dryRun ? 'planned' : 'converted');
  const parts = [
    dryRun ? `${pictures(made)} would be converted` : `${pictures(made)} converted`,
    ...(count('copied') ? [`${count('copied')} copied`] : []),
    ...(count('skipped') ? [`${count('skipped')} skipped`] : []),
    ...(count('failed') ? [`${count('failed')} failed`] : []),
  ];
  return `${stopped === null ? '' : 'Stopped before the end: '}${parts.join(', ')}.${dryRun ? ' Nothing was written.' : ''}`;
}

function madeLines(conversion: Conversion, shared: readonly SharedWords[], style: Style): string[] {
  const { path, output, told } = conversion;
  const among = shared.filter(({ pictures }) => pictures.has(conversion));
  const own = told.filter(sentence => !among.some(({ sentences }) => sentences.includes(sentence)));
  const name = path === output ? `${safe(path)}, in place` : `${safe(path)} -> ${safe(output!)}`;
  const numbers = among.flatMap(({ number }) => (number === null ? [] : `[${number}]`));
  const what = [whatWasMade(conversion), ...numbers].join(' ');
  return [name, ...indent(wrap(what, style.width - 2), 2), ...bullets(own, style)];
}

/** Pictures that lie among the results as they are. */
function copiedLines(all: readonly Conversion[], dryRun: boolean, style: Style): string[] {
  if (!all.length) return [];
  return [
    `${dryRun ? 'Would be copied' : 'Copied'} as they are, being what was asked for already, or not to be changed`,
    ...all.flatMap(({ path, output, told }) => [
      `  ${safe(path)} -> ${safe(output!)}`,
      ...indent(bullets(told, style), 2),
    ]),
  ];
}

function whatWasMade({ from, to, format, bits, proof, moved }: Conversion): string {
  const stored = `${from} to ${to}, ${format!.toUpperCase()}, ${bits} bits`;
  if (!proof) return `${stored}.`;
  return `${stored}. ${proofWords({ ...proof, moved })}`;
}

/** L* that are left out, so that the table is no wider than a terminal. */
const TOO_MUCH = new Set([2, 6]);

/** The curve as a table, and what it rests on. */
function fitLines({ fit }: Fitting, style: Style): string[] {
  if (!fit) return [];
  const tones = fit.tones.filter(({ from }) => !TOO_MUCH.has(from));
  const head = ['L* in the file', ...tones.map(({ from }) => whole(from))];
  const rows = [
    ['in the result', ...tones.map(({ to }) => whole(to))],
    ['prints as it was', ...tones.map(({ printedAsIs }) => whole(printedAsIs))],
    ['prints now', ...tones.map(({ printed }) => whole(printed))],
  ];
  const table = columns([head, ...rows], head.map((_, at) => at).slice(1));
  const title = `Tones fitted to ${fit.target}, strength ${fit.strength}`;
  return [title, ...indent(fit.moves ? table : [], 2), ...bullets(fit.told, style)];
}

function counterLines({ counterTint: answer }: Fitting, style: Style): string[] {
  if (!answer) return [];
  const of = answer.against === 'print' ? 'the print' : 'the print and its paper';
  const title = `A tint of a* ${answer.a}, b* ${answer.b} answers that of ${of}: ${answer.target}, strength ${answer.strength}`;
  return [...wrap(title, style.width, 2), ...bullets(answer.told, style)];
}

const whole = (L: number) => L.toFixed(0);

const bullets = (sentences: readonly string[], style: Style): string[] =>
  sentences.flatMap(sentence => indent(wrap(`- ${safe(sentence)}`, style.width - 2, 2), 2));

function relinkLines({ changes, problems, placedBefore }: Relinked, what: string, dryRun: boolean): string[] {
  if (!changes.length && problems.length) return [];
  if (!changes.length)
    return [placedBefore ? `The layouts place ${what} already.` : 'No layout places any of them.'];
  const lines = new Set(changes.map(({ file, line }) => `${file}:${line}`)).size;
  const places = changes.length > lines ? `, in ${changes.length} places` : '';
  const act = dryRun ? 'would place' : lines === 1 ? 'places' : 'place';
  return [
    `${lines === 1 ? '1 line' : `${lines} lines`} of the layouts ${act} ${what}${places}:`,
    ...changes.map(changedLine),
  ];
}

function settingsLines({ settings }: Relinked, what: string, dryRun: boolean): string[] {
  if (!settings.length) return [];
  return [`evengrey.json ${dryRun ? 'would name' : 'names'} ${what}, too:`, ...settings.map(changedLine)];
}

const changedLine = ({ file, line, column, from, to }: RelinkedLine): string =>
  `  ${safe(`${file}:${line}:${column}`)}: ${safe(from)} -> ${safe(to)}`;

function notRelinkedLines({ problems }: Relinked, style: Style): string[] {
  if (!problems.length) return [];
  return [
    paintOf(style).red('Left as it is'),
    ...problems.flatMap(({ file, line, why }) => [
      `  ${safe(line === null ? file : `${file}:${line}`)}`,
      ...indent(wrap(safe(why), style.width - 4), 4),
    ]),
  ];
}

/** Pictures under the reason that they share. */
function reasons(
  title: ReturnType<Paint['red']>,
  all: readonly { path: string; reason: string | null }[],
  { width }: Style,
): string[] {
  if (!all.length) return [];
  const shared = new Map<string, string[]>();
  for (const { path, reason } of all) shared.set(reason!, [...(shared.get(reason!) ?? []), safe(path)]);
  return [
    title,
    ...[...shared].flatMap(([reason, paths]) => [
      ...indent(wrap(safe(reason), width - 2, 2), 2),
      ...indent(paths, 4),
    ]),
  ];
}
