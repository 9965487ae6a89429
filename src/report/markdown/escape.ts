import { safe } from '../text/style';

/**
 * Words as GitHub-flavoured Markdown shows them, whatever they hold: nothing is taken for a mark, and `@name` and `#1`
 * call nobody and link to nothing (an empty comment keeps them apart).
 */
export const words = (text: string): string =>
  safe(text)
    .replace(/[\\`*_[\]<>&|~$]/g, '\\$&')
    .replace(/(?<!\w)[@#](?=\w)/g, '$&<!-- -->');

/** A name as code, fenced by more backticks than it holds in a row. Not for a table, where a bar would end the cell even there. */
export const codeInText = (name: string): string => fenced(safe(name));

/** The same for a cell of a table. */
export const code = (name: string): string => fenced(safe(name).replace(/\|/g, '\\|'));

function fenced(text: string): string {
  const longest = Math.max(0, ...[...text.matchAll(/`+/g)].map(([run]) => run.length));
  const fence = '`'.repeat(longest + 1);
  const pad = /^[` ]|[` ]$/.test(text) ? ' ' : '';
  return `${fence}${pad}${text}${pad}${fence}`;
}
