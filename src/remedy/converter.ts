// no-unit-test: converters.test.ts runs the built one
import '../picture/decode-binary';
import { serve } from '../picture/child';
import { readHeaders, UnreadableError } from '../picture/header';
import { type OnSize, openPicture } from '../picture/open';
import type { AnyConverterTask, ConverterDone } from '../shared/converter-protocol';
import type { FactsTask } from '../shared/reader-protocol';
import { candidateOf } from './candidates/candidate';
import { methodPictures } from './candidates/methods';
import { remedyPicture } from './picture';
import { RemedyError } from './remedy-error';
import { factsAhead } from './source';

// A converter: a child process that converts pictures for a batch, or shows what would come of it.
serve<AnyConverterTask, ConverterDone>(async (task, onSize) => {
  if (task.kind === 'facts')
    return { kind: 'facts', facts: await factsAhead(task.file, task.sha256, onSize) };
  try {
    tellSize(task.file, onSize);
    return await done(task);
  } catch (error) {
    if (error instanceof RemedyError) return { refused: error.message };
    if (error instanceof UnreadableError) return { refused: error.text };
    throw error;
  }
});

async function done(task: Exclude<AnyConverterTask, FactsTask>): Promise<ConverterDone> {
  const { file } = task;
  switch (task.kind) {
    case 'convert':
      return { result: await remedyPicture(file, task.temporary, task.wish, task.known) };
    case 'candidate':
      return { candidate: await candidateOf(file, task.wish, task.longEdge) };
    case 'methods':
      return { methods: await methodPictures(file, task.methods, task.longEdge) };
  }
}

function tellSize(file: string, onSize: OnSize): void {
  const { source, close } = openPicture({ file });
  try {
    const [page] = readHeaders(source);
    if (!(page instanceof UnreadableError)) onSize(source.size, (page.width * page.height) / 1e6);
  } finally {
    close();
  }
}
