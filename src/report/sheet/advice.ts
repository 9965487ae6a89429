import { kindOf } from '../../rules/recommended';
import { isStronglyToned } from '../../rules/unasked';
import { inOrders } from '../../rules/words';
import type { Finding, PictureReport, Severity } from '../../shared/finding';
import type { Forecast } from '../../shared/forecast';
import type { Encoding } from '../../shared/picture';
import type { Advice } from '../../shared/sheet';
import { rank } from '../told';
import { encodings } from './encoding';
import { asksOf, concerns, names } from './shared';

/** From this share (0-1) of a picture cut off at white or black on, somebody should have looked at it. Own choice. */
const LOOK = 0.25;

/** What is to be done with a picture because of a finding. */
export interface Duty extends Advice {
  /** As a sentence ends with it: `convert it`. */
  task: string;
  rule: string;
  severity: Severity;
}

/** What each rule asks for, and why in one sentence. In the order in which one thing has to be done before another. */
const byRule: Record<string, Task> = {
  unreadable: mend('The file could not be read.'),
  'not-fetched': mend('What lies here is only a pointer to it.', 'fetch the picture', 'fetch'),
  'encoding-not-accepted': convert(
    'By the settings the print house does not take pictures that are stored like this.',
  ),
  'unbalanced-grey': convert(
    'By the forecast its inks are out of balance as it is printed, and a cast may be seen.',
  ),
  'ink-total': convert('It asks for more ink than the press usually carries, or than the settings allow.'),
  'residual-chroma': convert('Colour that was left in it is likely to be seen in print.'),
  'mixed-encodings': convert('It is stored unlike others around it, and is likely to print unlike them.'),
  'facing-difference': convert('It is likely to look unlike the picture beside it on the same spread.'),
  'odd-one-out': convert('It is likely to print unlike others that are stored in the same way.'),
  'likely-tint': convert(
    'By the forecast it prints with a visible tint less often if it is stored in another way.',
  ),
  'tone-mismatch': convert('Its tone is not that of the picture it should match.'),
  'profile-mismatch': convert('Its profile does not fit it, or not the paper it is printed on.'),
  'format-not-placed': mend(
    'A layout places it whose tool takes no file of its format.',
    'have a PNG of it placed',
    'place a PNG of it',
  ),
  'low-resolution': mend(
    'It has too few pixels for the size at which it is placed. Where its original has more, export it larger.',
    'place it smaller',
    'place smaller',
  ),
  'wrong-extension': mend('Its name says another format than its content is.', 'rename it', 'rename'),
  clipped: mend('Much of it is cut off at white or at black.', 'look at it', 'look'),
};

/** Notes that ask for something before the picture is sent; the others are for knowing. */
const asking: Record<string, (data: Finding['data']) => boolean> = {
  'wrong-extension': () => true,
  clipped: ({ share }) => typeof share === 'number' && share >= LOOK,
};

/** Something to be done before all else, and why. */
type Task = Advice & Pick<Duty, 'task'>;

function first(kind: Advice['kind'], task: string, tag: string, reason: string): Task {
  return { kind, title: `${task[0].toUpperCase()}${task.slice(1)} first`, tag, task, reason };
}
function convert(reason: string): Task {
  return first('convert', 'convert it', 'convert', reason);
}
function mend(reason: string, task = 'put the file right', tag = 'put right'): Task {
  return first('mend', task, tag, reason);
}
function ask(reason: string): Advice {
  return { kind: 'ask', title: 'Ask the print house', tag: 'ask', reason };
}

/**
 * What has to be done first with a picture by the worst of its own findings and of those about the book that ask it to be
 * changed; null where none asks for anything.
 */
export function dutyOf(picture: PictureReport, shared: readonly Finding[]): Duty | null {
  const all = [...picture.findings, ...shared.filter(finding => asksOf(finding, picture))].filter(
    ({ severity, rule, data }) => severity !== 'note' || asking[rule]?.(data),
  );
  if (!all.length) return null;
  // what fails goes first: a person asks for it
  const [worst] = all.toSorted((x, y) => rank[x.severity] - rank[y.severity]);
  const findings = all.filter(({ severity }) => severity === worst.severity);
  const { severity } = worst;
  const rule = ruleOf(findings, picture.findings);
  const told = findings.filter(finding => finding.rule === rule);
  // a rule that is raised to a warning and has no line above still wants a look
  if (!rule) return { ...mend(LOOK_AT, 'look at it', 'look'), rule: worst.rule, severity };
  const asksFirst = aboutTone.has(rule) && !picture.intentStated && isStronglyToned(picture.facts);
  return {
    ...(asksFirst ? toneQuestion(told) : { ...byRule[rule], reason: reasonOf(rule, picture, told) }),
    ...(rule === 'format-not-placed' && mayBecomeGrey(picture) && { places: true as const }),
    rule,
    severity,
  };
}

/** What is in colour is saved in another format by the program that it comes from. */
const mayBecomeGrey = ({ facts, intent }: PictureReport): boolean =>
  !facts.unreadable && facts.encoding !== 'colour' && intent !== 'colour' && facts.page === 1;

/** What comes first; of several causes to convert a picture its own goes before what it shares with the book. */
function ruleOf(findings: readonly Finding[], own: readonly Finding[]): string | undefined {
  const first = (of: readonly Finding[], kind?: Advice['kind']) =>
    Object.keys(byRule).find(
      id => (!kind || byRule[id].kind === kind) && of.some(finding => finding.rule === id),
    );
  const rule = first(findings);
  const isConverted = rule !== undefined && byRule[rule].kind === 'convert';
  return (
    (isConverted &&
      first(
        findings.filter(finding => own.includes(finding)),
        'convert',
      )) ||
    rule
  );
}

/** These ask a toned picture to be converted for its tone alone. */
const aboutTone: ReadonlySet<string> = new Set([
  'residual-chroma',
  'mixed-encodings',
  'facing-difference',
  'odd-one-out',
  'likely-tint',
]);

/** Nobody converts a tone away that may be what the picture is about. */
function toneQuestion(told: readonly Finding[]): Task {
  const ways = waysOf(told);
  return {
    kind: 'convert',
    title: 'Is the tone meant?',
    tag: 'is the tone meant?',
    task: 'say whether its tone is meant',
    reason: `It has a strong, even tone of its own. If that is meant, as a toning is, list it under "intent", "toned", in evengrey.json. If not, ${ways ? `save it as ${ways}` : 'convert it'}.`,
  };
}

function reasonOf(rule: string, picture: PictureReport, told: readonly Finding[]): string {
  const { facts } = picture;
  if (rule === 'unreadable' && facts.unreadable) return facts.unreadable.text;
  // where no way of storing has the most, a picture is not unlike the others
  const isSplit = rule === 'mixed-encodings' && told.every(({ data }) => Array.isArray(data.groups));
  const isCast = rule === 'likely-tint' && facts.encoding === 'rgb-toned';
  const isForeign = rule === 'likely-tint' && told.some(({ data }) => data.foreign === true);
  const ways = waysOf(told);
  return `${isSplit ? splitWords(picture) : isCast ? CAST : isForeign ? INKS : byRule[rule].reason}${amongTones(rule, told)}${ways && ` Save it as ${ways}.`}`;
}

const CAST = 'It has a colour of its own all over, and prints with it.';

const INKS =
  'It says how much ink, and the process prints from R, G, B: its tint and its black are left to whoever turns the one into the other.';

/** A tone is given by no way of storing. */
const amongTones = (rule: string, told: readonly Finding[]): string =>
  rule === 'mixed-encodings' && told.some(({ data }) => data.majority === 'rgb-toned')
    ? ' Give it the tone of its neighbours, or make all of them neutral.'
    : '';

/** A trace of colour makes no other way of storing. */
function splitWords(picture: PictureReport): string {
  const { name } = encodings[kindOf(picture) ?? picture.facts.encoding];
  return `It is stored as ${name[0].toLowerCase()}${name.slice(1)}, and others around it are not: side by side they are unlikely to match in print.`;
}

/** What to convert it to, where the findings name it: once, or for each target that asks for another; else empty. */
function waysOf(told: readonly Finding[]): string {
  const saves = told.filter(({ data }) => typeof data.save === 'string');
  const ways = [...new Set(saves.map(({ data }) => data.save))];
  if (!ways.length) return '';
  const all = ways.length === 1 ? ways : saves.map(({ data }) => `${data.save} for target "${data.target}"`);
  return all.join(' and ');
}

const LOOK_AT = 'A finding below asks for it.';

/** What to do with a picture, with one reason. `shared`: the findings about the book. */
export function adviceOn(picture: PictureReport, shared: readonly Finding[]): Advice {
  const { facts, intent, intentStated, findings, forecasts, replacedBy } = picture;
  if (replacedBy) return leave(`${replacedBy} was converted from it and takes its place in the book.`);
  const duty = dutyOf(picture, shared);
  if (duty) return adviceOf(duty);
  if (facts.unreadable) return adviceOf(mend(facts.unreadable.text));
  if (facts.encoding === 'colour' && !intentStated)
    return leave('It is in colour, and nobody said what it is meant to be.');
  if (intent === 'colour' || intent === 'line')
    return leave(`It is meant to be ${intent === 'line' ? 'line work' : 'in colour'}.`);
  const question = questionAbout(picture, shared);
  if (question) return ask(`${question} Have a test print made before the run.`);
  if (!picture.targets.length && inkFiles.has(facts.encoding)) return ask(UNKNOWN_INKS);
  const named = shared.filter(finding => finding.severity === 'note' && names(finding, picture));
  return send(facts.encoding, forecasts, findings.length + named.length);
}

/** They are made for a press, and nobody knows yet that they go to one. */
const inkFiles: ReadonlySet<Encoding> = new Set(['black-only', 'four-channel']);
const UNKNOWN_INKS =
  'It says how much ink is printed, and nobody said where: what suits a press may lose its deep black on photographic paper. Ask which files the house takes, name the process in evengrey.json, and have a test print made before the run.';

const adviceOf = ({ kind, title, tag, reason, places }: Advice): Advice => ({
  ...{ kind, title, tag, reason },
  ...(places && { places }),
});

const leave = (reason: string): Advice => ({
  kind: 'leave',
  title: 'Nothing to judge',
  tag: 'not judged',
  reason,
});

/** What a note of the book would have the print house asked, where it counts this picture. */
const questionAbout = (picture: PictureReport, shared: readonly Finding[]): string | null =>
  shared
    .filter(finding => concerns(finding, picture))
    .map(({ data }) => data.ask)
    .find(ask => typeof ask === 'string') ?? null;

/** `notes`: how many findings stand below, all of them only worth knowing. */
function send(encoding: Encoding, forecasts: readonly Forecast[], notes: number): Advice {
  const chance = Math.max(...forecasts.map(({ tint }) => tint.seen));
  const worst = `${inOrders(chance)}${forecasts.length > 1 ? ' at worst' : ''}`;
  let tint = '';
  if (encoding === 'rgb-toned') tint = ' Its own tone prints, and the process adds to it.';
  else if (forecasts.length && encoding !== 'bilevel') tint = ` By the forecast a tint is seen ${worst}.`;
  const below =
    notes === 1 ? 'A note is below; otherwise nothing' : `${notes} notes are below; otherwise nothing`;
  return {
    kind: 'send',
    title: notes ? `Read the ${notes === 1 ? 'note' : 'notes'} below, then send it` : 'Send it as it is',
    tag: 'send',
    reason: `${notes ? below : 'Nothing'} in the file stands against it.${tint} Have a test print made before the run.`,
  };
}
