import { type Style, styleFor } from '../report/text/style';

/** Colour on a terminal only, never against NO_COLOR (no-color.org), never in a file. FORCE_COLOR asks for it. */
export function styleOf(output: string | undefined, { env, stdout } = process): Style {
  const allowed = !env.NO_COLOR && env.TERM !== 'dumb' && output === undefined;
  return styleFor(output === undefined ? stdout : {}, allowed && Boolean(env.FORCE_COLOR || stdout.isTTY));
}
