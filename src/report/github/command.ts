/**
 * A workflow command: a line of the log that GitHub's runner takes for an instruction. Escaped as the runner reads it
 * back (actions/runner, src/Runner.Common/ActionCommand.cs): `%`, CR and LF everywhere, in properties `:` and `,` too.
 * The runner cuts spaces off the end of the last property, so that one must not be a file's name.
 */
export function command(name: string, properties: Record<string, string | number | null>, data: string) {
  const written = Object.entries(properties)
    .filter(([, value]) => value !== null)
    .map(([key, value]) => `${key}=${property(String(value))}`);
  return `::${name} ${written.join(',')}::${escaped(data)}`;
}

const escaped = (text: string) => text.replace(/%/g, '%25').replace(/\r/g, '%0D').replace(/\n/g, '%0A');

const property = (text: string) => escaped(text).replace(/:/g, '%3A').replace(/,/g, '%2C');
