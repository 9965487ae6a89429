import type { Format } from '../../shared/picture';
import { defineRule, everyIntent, noOptions } from '../rule';
import { say } from '../say';
import page from './README.md';

const messages = {
  wrong:
    'An upload or a layout program that goes by the name may refuse this picture or read it wrongly: it is called .{extension}, and its content is {format}. Rename it to .{right}.',
} as const;

/** Extensions in use for a format, the usual one first. */
const extensions: Partial<Record<Format, readonly string[]>> = {
  jpeg: ['jpg', 'jpeg', 'jpe', 'jfif'],
  png: ['png'],
  tiff: ['tif', 'tiff', 'dng'],
  webp: ['webp'],
  avif: ['avif'],
  gif: ['gif'],
  psd: ['psd', 'psb'],
  bmp: ['bmp', 'dib'],
  heic: ['heic', 'heif', 'hif'],
  jp2: ['jp2', 'j2k', 'jpf', 'jpx', 'jpc'],
  svg: ['svg'],
  pdf: ['pdf'],
};

export default defineRule({
  id: 'wrong-extension',
  description: "A file name that says another format than the file's content.",
  severity: 'note',
  scope: 'picture',
  needs: 'header',
  intents: everyIntent,
  options: noOptions,
  messages,
  page,
  *check({ pictures }) {
    for (const picture of pictures) {
      const { format, page } = picture.facts;
      const right = extensions[format];
      const extension = /[^/]\.([^./]+)$/.exec(picture.path)?.[1].toLowerCase();
      // A name without an extension says nothing wrong; a file of many pages is named once.
      if (!right || !extension || right.includes(extension) || page > 1) continue;
      yield {
        picture,
        message: say(messages.wrong, { extension, format: format.toUpperCase(), right: right[0] }),
        data: { extension, format, right: right[0] },
      };
    }
  },
});
