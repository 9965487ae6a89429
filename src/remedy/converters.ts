import { Children, type ChildrenOptions } from '../book/children';
import type { ConverterDone, ConverterTask } from '../shared/converter-protocol';
import type { RemedyResult } from '../shared/remedy';
import { RemedyError } from './remedy-error';

/** Converts pictures in child processes: no pixel is touched in this one. */
export interface Converters {
  /**
   * Writes the result to `temporary`, reads it back and proves it.
   * @throws RemedyError, ChildFailure; what the file system says; the signal's reason when cancelled, though a file
   * may then still be written until the converters are closed
   */
  convert(task: ConverterTask, signal?: AbortSignal): Promise<RemedyResult>;
  close(): Promise<void>;
}

export interface ConvertersOptions extends Omit<ChildrenOptions, 'file' | 'name'> {
  /** The bundled converter. */
  converterFile: string;
}

/** Decoding, converting, encoding and reading back, beside the one decoding that deadlines are made for. */
const PATIENCE = 5;

export function createConverters({ converterFile, patience = 1, ...options }: ConvertersOptions): Converters {
  const children = new Children<ConverterTask, ConverterDone>({
    ...options,
    patience: patience * PATIENCE,
    file: converterFile,
    name: 'converter',
  });
  return {
    async convert(task, signal) {
      const answer = await children.ask(task, signal);
      if (!answer.ok) throw Object.assign(new Error(answer.message), { code: answer.code });
      if ('refused' in answer) throw new RemedyError(answer.refused);
      return answer.result;
    },
    close: () => children.close(),
  };
}
