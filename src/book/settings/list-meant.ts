import { modify, type ParseError, parse } from 'jsonc-parser';
import type { TextChange } from '../waivers/add';

/**
 * What makes settings list a picture among those whose tone or colour is meant, after those that are listed: order,
 * values and comments stay.
 * @param text the settings as they are
 * @throws Error in words for people where they cannot be read
 */
export function listingMeant(text: string, picture: string, meant: 'toned' | 'colour'): TextChange[] {
  const errors: ParseError[] = [];
  const settings = parse(text, errors, { allowTrailingComma: true });
  if (errors.length || typeof settings !== 'object' || settings === null)
    throw new Error('evengrey.json cannot be read as it is. Put it right first.');
  const listed: unknown = settings.intent?.[meant];
  const formattingOptions = { insertSpaces: true, tabSize: 2, eol: text.includes('\r\n') ? '\r\n' : '\n' };
  // a name that begins so would take away
  const name = picture.startsWith('!') ? `./${picture}` : picture;
  if (Array.isArray(listed))
    return modify(text, ['intent', meant, -1], name, { isArrayInsertion: true, formattingOptions });
  const all = listed === undefined ? [name] : [listed, name];
  return modify(text, ['intent', meant], all, { formattingOptions });
}
