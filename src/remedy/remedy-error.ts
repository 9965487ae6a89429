// no-unit-test: a name for an error
/** A picture cannot be converted: what, where and what to do, in plain sentences for the user. */
export class RemedyError extends Error {
  override readonly name = 'RemedyError';
}
