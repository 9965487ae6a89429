// no-unit-test: words alone; the tests of every format read them
import { count } from '../rules/words';
import type { Summary } from '../shared/finding';

/** `13 pictures: 6 errors, 1 warning, 3 notes.` */
export const closing = ({ pictures, errors, warnings, notes }: Summary): string =>
  `${count(pictures, 'picture')}: ${count(errors, 'error')}, ${count(warnings, 'warning')}, ${count(notes, 'note')}.`;
