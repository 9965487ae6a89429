// no-unit-test: words alone; test/preview/pages.test.ts reads the pages that show them
import { t } from '@vscode/l10n';

/** How the two are called, and what the bar between them says. */
export interface Sides {
  before: string;
  after: string;
  bar: string;
  at(percent: number): string;
}

/** A conversion that nobody has made yet. */
export const converted = (): Sides => ({
  before: t('The picture as it is'),
  after: t('The picture as it would be'),
  bar: t('How much of the width shows the picture as it is'),
  at: percent => t('{0} % from the left as it is, the rest as it would be', percent),
});

/** A change that was made. */
export const changed = (): Sides => ({
  before: t('The picture before'),
  after: t('The picture after'),
  bar: t('How much of the width shows the picture before'),
  at: percent => t('{0} % from the left before, the rest after', percent),
});
