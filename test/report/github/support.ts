/** A command as the runner reads it: actions/runner (MIT), src/Runner.Common/ActionCommand.cs, TryParseV2, retold. */
export function readCommand(line: string) {
  const [, info, data] = /^\s*::(.*?)::(.*)$/.exec(line)!;
  const at = info.indexOf(' ');
  const properties = info
    .slice(at + 1)
    .trim()
    .split(',')
    .map(pair => [pair.slice(0, pair.indexOf('=')), unescaped(pair.slice(pair.indexOf('=') + 1), true)]);
  return {
    name: info.slice(0, at),
    properties: Object.fromEntries(properties) as Record<string, string>,
    data: unescaped(data, false),
  };
}

/** In the runner's order: the per cent sign comes last, or an escaped one would be read twice. */
function unescaped(text: string, property: boolean): string {
  const plain = text.replace(/%0D/g, '\r').replace(/%0A/g, '\n');
  return (property ? plain.replace(/%3A/g, ':').replace(/%2C/g, ',') : plain).replace(/%25/g, '%');
}
