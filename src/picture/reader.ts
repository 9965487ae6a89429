// no-unit-test: reader.test.ts runs the built one
import './decode-binary';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import type { ReaderReply, ReaderRequest } from '../shared/reader-protocol';
import { rasterOf } from './raster';
import { readFacts } from './read';

// A reader: a child process that reads pictures for the pool, one at a time, and ends with its parent.

/** Buffers of large pictures lie outside the heap, where the collector does not see them pile up. */
const LARGE_MEGAPIXELS = 8;

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

function send(reply: ReaderReply): void {
  process.send?.(reply);
}

async function answer(request: ReaderRequest): Promise<void> {
  const { id } = request;
  let large = false;
  const onSize = (bytes: number, megapixels: number) => {
    large = megapixels > LARGE_MEGAPIXELS;
    send({ id, kind: 'size', megabytes: bytes / 2 ** 20, megapixels });
  };
  try {
    if (request.kind === 'facts')
      send({ id, ok: true, kind: 'facts', facts: await readFacts(request.file, request.sha256, onSize) });
    else
      send({
        id,
        ok: true,
        kind: 'raster',
        raster: await rasterOf(request.file, request.page, request.longEdge, onSize),
      });
  } catch (error) {
    send({ id, ok: false, message: error instanceof Error ? error.message : String(error) });
  }
  if (large) collect();
}

if (!process.send) {
  process.stderr.write('The reader is started by evengrey itself, not by hand.\n');
  process.exitCode = 2;
} else {
  let last: Promise<void> = Promise.resolve();
  process.on('message', (request: ReaderRequest) => {
    last = last.then(() => answer(request));
  });
  process.on('disconnect', () => process.exit(0));
  send({ kind: 'ready' });
}
