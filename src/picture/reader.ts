// no-unit-test: reader.test.ts runs the built one
import './decode-binary';
import type { ReaderDone, ReaderTask } from '../shared/reader-protocol';
import { serve } from './child';
import { rasterOf } from './raster';
import { readFacts } from './read';

// A reader: a child process that reads pictures for the pool.
serve<ReaderTask, ReaderDone>(async (task, onSize) =>
  task.kind === 'facts'
    ? { kind: 'facts', facts: await readFacts(task.file, task.sha256, onSize) }
    : { kind: 'raster', raster: await rasterOf(task.file, task.page, task.longEdge, onSize) },
);
