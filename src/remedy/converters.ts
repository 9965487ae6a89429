import { Children, type ChildrenOptions } from '../book/children';
import { factsFrom, type Pool, type PoolOptions } from '../book/pool';
import type {
  AnyConverterTask,
  CandidateTask,
  ConverterDone,
  ConverterTask,
  MethodsTask,
} from '../shared/converter-protocol';
import type { Candidate, MethodPictures } from '../shared/remedies';
import type { RemedyResult } from '../shared/remedy';
import { RemedyError } from './remedy-error';

/** Converts pictures in child processes: no pixel is touched in this one. */
export interface Converters {
  /**
   * Writes the result to `temporary`, reads it back and proves it.
   * @throws RemedyError, ChildFailure; what the file system says; the signal's reason when cancelled, though a file
   * may then still be written until the converters are closed
   */
  convert(task: Omit<ConverterTask, 'kind'>, signal?: AbortSignal): Promise<RemedyResult>;
  close(): Promise<void>;
}

/** Shows what would come of conversions, too. */
export interface CandidateConverters extends Converters {
  /** What would come of it; nothing is written. @throws as `convert` */
  candidate(task: Omit<CandidateTask, 'kind'>, signal?: AbortSignal): Promise<Candidate>;
  /** The ways to grey, small; nothing is written. @throws as `convert` */
  methods(task: Omit<MethodsTask, 'kind'>, signal?: AbortSignal): Promise<MethodPictures>;
}

/** Reads facts, too: a picture that one of them has read last need not be decoded again to be converted. */
export interface ReadingConverters extends CandidateConverters, Pick<Pool, 'facts'> {}

export interface ConvertersOptions extends Omit<ChildrenOptions, 'file' | 'name' | 'onLost'> {
  /** The bundled converter. */
  converterFile: string;
  /** As that of a pool: told of pictures whose facts were being read. */
  onLost?: PoolOptions['onLost'];
}

/** Decoding, converting, encoding and reading back, beside the one decoding that deadlines are made for. */
const PATIENCE = 5;

export function createConverters({
  converterFile,
  patience = 1,
  onLost,
  ...options
}: ConvertersOptions): ReadingConverters {
  const children = new Children<AnyConverterTask, ConverterDone>({
    ...options,
    patience: task =>
      (typeof patience === 'number' ? patience : patience(task)) *
      ((task as AnyConverterTask).kind === 'facts' ? 1 : PATIENCE),
    file: converterFile,
    name: 'converter',
    onLost: (task, why) => {
      const { kind, file } = task as AnyConverterTask;
      if (kind === 'facts') onLost?.(file, why.message);
    },
  });
  /** What the converter sends under `key`. */
  async function asked<Key extends keyof Answers>(
    key: Key,
    task: AnyConverterTask,
    signal?: AbortSignal,
  ): Promise<Answers[Key]> {
    const answer = await children.ask(task, signal);
    if (!answer.ok) throw Object.assign(new Error(answer.message), { code: answer.code });
    if ('refused' in answer) throw new RemedyError(answer.refused);
    if (!(key in answer)) throw new Error('The converter sent another answer than was asked for.');
    return (answer as unknown as Answers)[key];
  }
  return {
    facts: factsFrom((task, signal) => children.ask(task, signal)),
    convert: (task, signal) => asked('result', { ...task, kind: 'convert' }, signal),
    candidate: (task, signal) => asked('candidate', { ...task, kind: 'candidate' }, signal),
    methods: (task, signal) => asked('methods', { ...task, kind: 'methods' }, signal),
    close: () => children.close(),
  };
}

interface Answers {
  result: RemedyResult;
  candidate: Candidate;
  methods: MethodPictures;
}
