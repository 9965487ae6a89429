import { safe } from '../text/style';

/**
 * Words as GitHub-flavoured Markdown shows them, whatever they hold: nothing is taken for a mark, and `@name` and `#1`
 * call nobody and link to nothing (an empty comment keeps them apart).
 */
export const words = (text: string): string =>
  safe(text)
    .replace(/[\\`*_[\]<>&|~$]/g, '\\$&')
    .replace(/(?<!\w)[@#](?=\w)/g, '$&<!-- -->');

/** A name as code, fenced by more backticks than it holds in a row; a bar would end a table's cell even there. */
export function code(name: string): string {
  const text = safe(name).replace(/\|/g, '\\|');
  const longest = Math.max(0, ...[...text.matchAll(/`+/g)].map(([run]) => run.length));
  const fence = '`'.repeat(longest + 1);
  const pad = /^[` ]|[` ]$/.test(text) ? ' ' : '';
  return `${fence}${pad}${text}${pad}${fence}`;
}
