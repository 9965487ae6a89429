import { transform } from 'esbuild';

/**
 * The strings that a TypeScript source has translated: the first argument of every `t(` and `l10n.t(`.
 * @throws where one is no literal, so that nobody could translate it
 */
export async function translatedIn(source: string, file: string): Promise<string[]> {
  // comments, types and spaces are gone afterwards, and every literal is written in one of two ways
  const { code } = await transform(source, { loader: 'ts', minifyWhitespace: true, charset: 'utf8' });
  return [
    ...code.matchAll(
      /(?<![\w$.])(?:(?:[\w$]+\.)?l10n\.)?t\((?:("(?:[^"\\]|\\.)*"|'(?:[^'\\]|\\.)*'|`(?:[^`\\$]|\\.)*`)(?=[,)]))?/g,
    ),
  ].map(([call, literal]) => {
    if (!literal)
      throw new Error(`${file}: what ${call}...) is given is no literal, so it cannot be translated`);
    // a literal of the sources themselves, in any of its quotes
    return new Function(`return ${literal}`)() as string;
  });
}
