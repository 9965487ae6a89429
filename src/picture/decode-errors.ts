import type { Unreadable } from '../shared/picture';
import { UnreadableError } from './header/unreadable';
import type { Header } from './types';

type Meaning = [pattern: RegExp, reason: Unreadable['reason'], text: string];

const CUT: Meaning = [
  /premature end of (JPEG|file|input)|truncated|not enough (image )?data|unexpected end|end of (file|stream)|EOF|past end|read error|short/i,
  'truncated',
  'The file ends before its picture does: part of it is missing. Copy or export it again.',
];

/** The decoder's first message, by what it means to the user (what follows are consequences). First match wins. */
const MEANINGS: Meaning[] = [
  [
    /exceeds (pixel|channel) limit|too large|out of memory|allocate/i,
    'too-large',
    'The picture is larger than can be decoded. Save it smaller.',
  ],
  CUT,
  [
    /unsupported|not supported|not been built in|unknown compression|not configured|not implemented/i,
    'format',
    'The picture is stored in a variant that cannot be read. Save it as an ordinary TIFF, JPEG or PNG.',
  ],
];

const UNKNOWN: Meaning = [
  /./,
  'corrupt',
  'The picture is damaged: its pixels cannot be decoded. Copy or export it again.',
];

/** What a failed decode means, in the words of the reader's report. */
export function decodeError(error: unknown, header: Header): UnreadableError {
  if (error instanceof UnreadableError) return error;
  const message = error instanceof Error ? error.message : String(error);
  const first = cause(message);
  const found = MEANINGS.find(([pattern]) => pattern.test(first || message)) ?? UNKNOWN;
  const [, reason, text] = cutOrDamaged(found, header);
  // a cut file needs no further explanation, a damaged one may
  const why = reason === 'corrupt' || reason === 'format' ? first : '';
  return new UnreadableError(reason, why ? `${text} (${why})` : text, header.format, header);
}

/** Where the header knows whether the file is all there, its word goes: damage too ends the decoder's data early. */
function cutOrDamaged(found: Meaning, { incomplete, impossible }: Header): Meaning {
  if (found[1] === 'too-large') return found;
  if (incomplete || impossible) return CUT;
  return incomplete === false && found === CUT ? UNKNOWN : found;
}

/** The first line of the decoder that says something, without the paths and buffers it likes to name. */
function cause(message: string): string {
  const lines = message
    .split('\n')
    .map(line => line.replace(/^.*?(Input (file|buffer) has corrupt header: ?)/, '').trim())
    .filter(line => line !== '' && !line.startsWith('Warning treated as error'));
  return (lines[0] ?? '').slice(0, 120);
}
