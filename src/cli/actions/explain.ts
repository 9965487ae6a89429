import settingsPage from '../../book/settings/README.md';
import { language } from '../../book/settings/words';
import { adviceTable } from '../../print';
import { adviceText } from '../../report/text/advice';
import { markdownText } from '../../report/text/markdown';
import { columns, wrap } from '../../report/text/wrap';
import { rules } from '../../rules';
import { EXIT, Failure } from '../failure';
import { meantOr } from '../known';
import { print } from '../output';
import { styleOf } from '../style';

/** Not a rule: the table of advice on encodings. */
const ENCODINGS = 'encodings';

/** Not a rule: the keys of evengrey.json. */
const SETTINGS = 'settings';

/** A rule's page, the list of all rules, the table of advice on encodings, or the keys of the settings. */
export async function explain(id: string | undefined, format: 'text' | 'json'): Promise<number> {
  const text = textOf(id, format);
  await print(text);
  return EXIT.clean;
}

function textOf(id: string | undefined, format: 'text' | 'json'): string {
  if (id === undefined) return listOf(format);
  if (id === ENCODINGS) return adviceOf(format);
  return id === SETTINGS ? settingsOf(format) : pageOf(id, format);
}

function settingsOf(format: 'text' | 'json'): string {
  const { settings, house } = language;
  return format === 'json'
    ? `${JSON.stringify({ settings: { page: settingsPage, schema: settings, houseSchema: house } }, null, 2)}\n`
    : markdownText(settingsPage, styleOf(undefined));
}

function adviceOf(format: 'text' | 'json'): string {
  const advice = adviceTable();
  return format === 'json'
    ? `${JSON.stringify({ advice }, null, 2)}\n`
    : adviceText(advice, styleOf(undefined));
}

function listOf(format: 'text' | 'json'): string {
  const list = rules.map(({ id, description, severity }) => ({ id, description, severity }));
  if (format === 'json') return `${JSON.stringify({ rules: list }, null, 2)}\n`;
  const { width } = styleOf(undefined);
  const rows = columns(list.map(rule => [rule.id, rule.severity, '']));
  const hang = Math.max(...rows.map(row => row.length)) + 2;
  const lines = list.flatMap((rule, at) => wrapBeside(rows[at].padEnd(hang), rule.description, width, hang));
  return `${lines.join('\n')}\n\n"evengrey explain RULE" tells what a rule means in print and what to do;\n"evengrey explain ${ENCODINGS}" which encoding to send to which process;\n"evengrey explain ${SETTINGS}" what evengrey.json can say.\n`;
}

function wrapBeside(head: string, text: string, width: number, hang: number): string[] {
  const [first, ...more] = wrap(text, width - hang);
  return [head + first, ...more.map(line => ' '.repeat(hang) + line)];
}

function pageOf(id: string, format: 'text' | 'json'): string {
  const rule = rules.find(r => r.id === id);
  if (!rule) {
    const ids = [...rules.map(r => r.id), ENCODINGS, SETTINGS];
    throw new Failure(`No rule is called "${id}". ${meantOr(id, ids)}`);
  }
  const { description, severity, options, page } = rule;
  if (format === 'json')
    return `${JSON.stringify({ rule: { id, description, severity, options, page } }, null, 2)}\n`;
  return markdownText(page, styleOf(undefined));
}
