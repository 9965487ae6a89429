/**
 * A message as a page prints it: curly quotes, an apostrophe, a sign for "by" between numbers. Rules write plain
 * characters, since terminals and logs read them too.
 */
export function printed(message: string): string {
  return message
    .replace(/"([^"]*)"/g, '“$1”')
    .replace(/(?<=\w)'(?=(s|t)?([\s,;:)]|$|\.(\s|$)))/g, '’')
    .replace(/(\d) x (\d)/g, '$1 × $2');
}
