import type { Unreadable } from '../shared/picture';
import { UnreadableError } from './header/unreadable';
import type { Header } from './types';

/** The decoder's messages, by what they mean to the user. First match wins. */
const MEANINGS: [pattern: RegExp, reason: Unreadable['reason'], text: string][] = [
  [
    /exceeds (pixel|channel) limit|too large|out of memory|allocate/i,
    'too-large',
    'The picture is larger than can be decoded. Save it smaller.',
  ],
  [
    /premature end|truncated|not enough (image )?data|unexpected end|end of (file|stream)|EOF|past end|read error|short/i,
    'truncated',
    'The file ends before its picture does: part of it is missing. Copy or export it again.',
  ],
  [
    /unsupported|not supported|not been built in|unknown compression|not configured|not implemented/i,
    'format',
    'The picture is stored in a variant that cannot be read. Save it as an ordinary TIFF, JPEG or PNG.',
  ],
];

/** What a failed decode means, in the words of the reader's report. */
export function decodeError(error: unknown, header: Header): UnreadableError {
  if (error instanceof UnreadableError) return error;
  const message = error instanceof Error ? error.message : String(error);
  const [, reason, text] = MEANINGS.find(([pattern]) => pattern.test(message)) ?? [
    null,
    'corrupt' as const,
    'The picture is damaged: its pixels cannot be decoded. Copy or export it again.',
  ];
  return new UnreadableError(reason, `${text} (${cause(message)})`, header.format, header);
}

/** The decoder's first line, without the paths and buffers it likes to name. */
function cause(message: string): string {
  const [line] = message.split('\n');
  return line.replace(/^.*?(Input (file|buffer) has corrupt header: )/, '').slice(0, 120);
}
