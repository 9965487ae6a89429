import { UnreadableError } from '../picture/header/unreadable';
import { unreadableFacts } from '../picture/unreadable-facts';
import type { ChildAnswer } from '../shared/child-protocol';
import type { PictureFacts } from '../shared/picture';
import type {
  Content,
  FactsDone,
  FactsTask,
  Raster,
  ReaderDone,
  ReaderTask,
  Shown,
  SmallPicture,
} from '../shared/reader-protocol';
import { ChildFailure, fileOf } from './child';
import { Children, type ChildrenOptions } from './children';

/** Reads pictures in child processes, so that a decoder's crash costs one file and never the editor. */
export interface Pool {
  /**
   * All pages of a file; what cannot be read is an entry too, also where the reader crashed or hung on it twice.
   * Rejects with the signal's reason when cancelled, and where no reader can be started at all.
   * @param sha256 the content's hash where it is known, which saves the hashing
   */
  facts(file: string, signal?: AbortSignal, sha256?: string): Promise<PictureFacts[]>;
  /** The same of a content that may be told in other ways. Null where the file holds another one. */
  factsOf(content: Content, signal?: AbortSignal): Promise<PictureFacts[] | null>;
  /** Names of the pixels of all pages, null for one that cannot be read; null where nothing can. */
  pixels(content: Shown, signal?: AbortSignal): Promise<(string | null)[] | null>;
  /** A picture for showing; goes before waiting facts. Rejects where it cannot be read. */
  raster(content: Shown, page: number, longEdge: number, signal?: AbortSignal): Promise<Raster>;
  /** The same in several sizes for a page that carries many pictures, the largest first. Rejects where it cannot be read. */
  small(file: string, page: number, edges: readonly number[], signal?: AbortSignal): Promise<SmallPicture[]>;
  /** Has so many readers ready for work that is to come, at most as many as work at a time. */
  warm(count: number): void;
  /** Ends all readers; what still waits is rejected. */
  close(): Promise<void>;
}

export interface PoolOptions extends Omit<ChildrenOptions, 'file' | 'name' | 'rehearsal' | 'onLost'> {
  /** The bundled reader. */
  readerFile: string;
  /** Told of a picture whose reader was lost, and why in words; it is then given to another reader. */
  onLost?: (file: string, why: string) => void;
}

export function createPool({ readerFile, onLost, ...options }: PoolOptions): Pool {
  const readers = new Children<ReaderTask, ReaderDone>({
    ...options,
    // one that stands by has the time
    rehearsal: options.spare ? ({ kind: 'rehearse' } satisfies ReaderTask) : undefined,
    onLost: (task, why) => onLost?.((task as Partial<Content>).called ?? fileOf(task)!, why.message),
    file: readerFile,
    name: 'picture reader',
  });
  return {
    facts: factsFrom((task, signal) => readers.ask(task, signal)),
    factsOf: contentsFrom((task, signal) => readers.ask(task, signal)),
    async pixels(content, signal) {
      try {
        const answer = await readers.ask({ kind: 'pixels', ...content }, signal);
        return answer.ok && answer.kind === 'pixels' ? answer.digests : null;
      } catch (error) {
        if (error instanceof ChildFailure && (error.kind === 'crashed' || error.kind === 'timeout'))
          return null;
        throw error;
      }
    },
    async raster(content, page, longEdge, signal) {
      const answer = await readers.ask({ kind: 'raster', ...content, page, longEdge }, signal, true);
      if (answer.ok && answer.kind === 'raster') return answer.raster;
      throw new Error(answer.ok ? 'The reader sent no picture.' : answer.message);
    },
    async small(file, page, edges, signal) {
      const answer = await readers.ask({ kind: 'small', file, page, edges }, signal, true);
      if (answer.ok && answer.kind === 'small') return answer.sizes;
      throw new Error(answer.ok ? 'The reader sent no picture.' : answer.message);
    },
    warm: count => readers.warm(count),
    close: () => readers.close(),
  };
}

/** Facts by children that read them, whatever else these do. @param ask `Children.ask` */
export function factsFrom(ask: Ask): Pool['facts'] {
  const read = contentsFrom(ask);
  // a file that is to hold no certain content holds no other
  return async (file, signal, sha256) => (await read({ file, sha256 }, signal))!;
}

type Ask = (task: FactsTask, signal?: AbortSignal) => Promise<ChildAnswer<object>>;

function contentsFrom(ask: Ask): Pool['factsOf'] {
  return async (content, signal) => {
    try {
      const answer: ChildAnswer<Partial<FactsDone>> = await ask({ kind: 'facts', ...content }, signal);
      if (answer.ok && answer.facts !== undefined) return answer.facts;
      return [
        lost('crashed', `The picture could not be judged (${answer.ok ? 'no facts' : answer.message}).`),
      ];
    } catch (error) {
      if (!(error instanceof ChildFailure)) throw error;
      if (error.kind === 'crashed')
        return [lost('crashed', 'The reader crashed on this picture. It may be damaged: export it again.')];
      if (error.kind === 'timeout')
        return [
          lost('timeout', `Reading was given up: ${error.message}. It may be damaged: export it again.`),
        ];
      throw error;
    }
  };
}

function lost(reason: 'crashed' | 'timeout', text: string): PictureFacts {
  return unreadableFacts(new UnreadableError(reason, text), '');
}
