// no-unit-test: converters.test.ts runs the built one
import '../picture/decode-binary';
import { serve } from '../picture/child';
import { readHeaders, UnreadableError } from '../picture/header';
import { type OnSize, openPicture } from '../picture/open';
import type { ConverterDone, ConverterTask } from '../shared/converter-protocol';
import { remedyPicture } from './picture';
import { RemedyError } from './remedy-error';

// A converter: a child process that converts pictures for a batch.
serve<ConverterTask, ConverterDone>(async ({ file, temporary, wish, known }, onSize) => {
  try {
    tellSize(file, onSize);
    return { result: await remedyPicture(file, temporary, wish, known) };
  } catch (error) {
    if (error instanceof RemedyError) return { refused: error.message };
    if (error instanceof UnreadableError) return { refused: error.text };
    throw error;
  }
});

function tellSize(file: string, onSize: OnSize): void {
  const { source, close } = openPicture(file);
  try {
    const [page] = readHeaders(source);
    if (!(page instanceof UnreadableError)) onSize(source.size, (page.width * page.height) / 1e6);
  } finally {
    close();
  }
}
