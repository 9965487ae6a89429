// no-unit-test: constants and a class without behaviour
import type { Problem } from '../book/settings/problem';

/** Exit codes: fixed, scripts rely on them. */
export const EXIT = { clean: 0, findings: 1, failure: 2, interrupted: 130, terminated: 143 } as const;

/** What was asked cannot be done: usage or settings. The message says what, where and what to do. Ends with code 2. */
export class Failure extends Error {
  override name = 'Failure';
  constructor(
    message: string,
    /** `problems`: where it stands in texts of the book. `told`: the result says it already. */
    readonly more: { problems?: readonly Problem[]; told?: boolean } = {},
  ) {
    super(message);
  }
}
