// no-unit-test: reader.test.ts runs the built one
import './decode-binary';
import type { ReaderDone, ReaderTask } from '../shared/reader-protocol';
import { serve } from './child';
import { pixelDigests } from './digest';
import { detailOf } from './look/detail';
import { openPage } from './look/kept';
import { marksOf } from './look/marks';
import { readPixel } from './look/pixel';
import { OtherContent } from './open';
import { LONGEST_EDGE, rasterOf } from './raster';
import { readFacts } from './read';
import { rehearse } from './rehearse';
import { smallPictures } from './small';

function ofOther(error: unknown): null {
  if (error instanceof OtherContent) return null;
  throw error;
}

// A reader: a child process that reads pictures for the pool.
serve<ReaderTask, ReaderDone>(async (task, onSize) => {
  switch (task.kind) {
    case 'facts':
      return { kind: 'facts', facts: await readFacts(task, onSize).catch(ofOther) };
    case 'rehearse':
      await rehearse();
      return { kind: 'rehearse' };
    case 'pixels':
      return { kind: 'pixels', digests: await pixelDigests(task, onSize) };
    case 'raster':
      return { kind: 'raster', raster: await rasterOf(task, task.page, task.longEdge, onSize) };
    case 'small':
      return { kind: 'small', sizes: await smallPictures(task.file, task.page, task.edges, onSize) };
    case 'detail': {
      const page = await openPage(task.file, task.page, onSize);
      return {
        kind: 'detail',
        detail: await detailOf(page, task.box, Math.min(LONGEST_EDGE, task.longEdge)),
      };
    }
    case 'pixel':
      return {
        kind: 'pixel',
        pixel: readPixel(await openPage(task.file, task.page, onSize), task.x, task.y),
      };
    case 'marks': {
      const page = await openPage(task.file, task.page, onSize);
      return { kind: 'marks', marks: marksOf(page, Math.min(LONGEST_EDGE, task.longEdge)) };
    }
  }
});
