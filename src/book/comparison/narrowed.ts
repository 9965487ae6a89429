import { list } from '../../rules/words';
import type { Finding } from '../../shared/finding';
import { isOfBook, namedIn } from '../revisions/claims';

/** What is new of a picture, or has ended; its path on that side. */
export interface ToldOf {
  path: string;
  findings: readonly Finding[];
}

/** As messages list pictures: so many of them are named. */
const LISTED = [5, 3];

/**
 * Of findings about several pictures those that are new for some of them alone, as they are told of these: by name, with how
 * many others have it as before. What is new for all that it names is told as it is.
 */
export function narrowedToNew(shared: readonly Finding[], told: readonly ToldOf[]): Map<Finding, Finding> {
  return narrowed(shared, told, (finding, some, others) => ({
    ...finding,
    message: reworded(finding, some, others),
  }));
}

/** The same of those that ended for some of them alone: they are no finding of the whole book any more, but still one. */
export const narrowedToEnded = (shared: readonly Finding[], told: readonly ToldOf[]): Map<Finding, Finding> =>
  narrowed(shared, told, finding => ({ ...finding }));

function narrowed(
  shared: readonly Finding[],
  told: readonly ToldOf[],
  tell: (finding: Finding, some: readonly string[], others: number) => Finding,
): Map<Finding, Finding> {
  const concerned = new Map<Finding, Set<string>>();
  for (const finding of shared) if (!isOfBook(finding)) concerned.set(finding, new Set());
  for (const { path, findings } of told) for (const finding of findings) concerned.get(finding)?.add(path);
  return new Map(
    [...concerned].flatMap(([finding, some]) => {
      const others = new Set(namedIn(finding).filter(path => !some.has(path as string))).size;
      return some.size && others ? [[finding, tell(finding, [...some], others)] as const] : [];
    }),
  );
}

/** In place of the first of all that it names; a message that lists none has them at its end. */
function reworded(finding: Finding, some: readonly string[], others: number): string {
  const names = namedIn(finding) as string[];
  const listed = LISTED.map(most => list(names, most)).find(words => finding.message.includes(words));
  const more = `${others} ${others === 1 ? 'other' : 'others'}`;
  return listed
    ? finding.message.replace(listed, () => `${list(some, LISTED[0])} and, as before, ${more}`)
    : `${finding.message} New is ${list(some, LISTED[0])}; ${more} as before.`;
}
