// no-unit-test: test/report/json/index.test.ts validates reports against it, test/report/schemas.test.ts the schema itself
import { object, orNull, text, words } from './schema-parts';

export const finding = object({
  rule: text('Id of the rule'),
  severity: words('', ['error', 'warning', 'note']),
  message: text('The consequence in print, the cause, the way out'),
  data: { type: 'object', description: "Figures behind the message; each rule's own" },
  waived: orNull(
    object({ reason: text('Why; empty where nobody said') }),
    'The team has decided to live with it: it does not count, and stands after those that do; null: it counts',
  ),
});
