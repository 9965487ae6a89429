// no-unit-test: test/report/compare/json.test.ts validates reports against it, test/report/schemas.test.ts the schema itself
import { finding } from '../json/finding-schema';
import { picture } from '../json/picture-schema';
import {
  ENCODINGS,
  flag,
  head,
  list,
  number,
  object,
  orNull,
  type Schema,
  share,
  text,
  whole,
  words,
} from '../json/schema-parts';
import { target } from '../json/target-schema';
import { ASPECTS } from './differences';

const KINDS = ['added', 'deleted', 'changed', 'renamed', 'moved', 'mode'];

const revision = (which: string) =>
  object(
    {
      asked: orNull(text(), 'The revision as it was asked for; null: the current commit'),
      commit: text('The commit that was compared, in full'),
      folderThen: orNull(
        text(),
        "What the book's folder was called there, from the top of the repository, where it is called otherwise now",
      ),
      targets: list(target, 'By the settings of that revision'),
      pictures: whole('Files, and those that are placed and missing'),
    },
    which,
  );

const changes = object({
  new: list(finding),
  ended: list(finding),
  unchanged: list(finding, 'As they are told now'),
});

const match = object({
  target: orNull(text(), 'Name of the target; null where nobody said where the book is printed'),
  verdict: words(
    'Whether it is likely to print like the rest of its part and intent; `differs` by `rules`, `unknown` with a distance where no rule speaks of one that is likely to be seen; `ahead`: it is stored as `rules` ask of all, and others are not yet; `along`: it is stored like most, and `rules` ask all of these for a change',
    ['matches', 'differs', 'unknown', 'alone', 'ahead', 'along'],
  ),
  rules: list({ type: 'string' }, 'Rules that say so of `differs`, `ahead` and `along`'),
  waived: flag('All of these are waived'),
  stored: orNull(
    object({ as: words('What it is', ENCODINGS), others: words('What they are', ENCODINGS) }),
    'Where it differs and most of the others of its part and intent are stored otherwise',
  ),
  distance: orNull(
    number('CIELAB, a*b* plane'),
    'From the middle of the others that are stored alike, at the same lightness: what the files cause',
  ),
  probability: orNull(share('0 to 1'), 'That the distance is seen on facing pages'),
});

const page = object({
  page: whole('Page of the file, from 1', 1),
  before: orNull(picture, 'Null where it was not there'),
  after: orNull(picture, 'Null where it is not there any more'),
  samePixels: orNull(
    flag('It is pixel for pixel what it was'),
    'Null where its figures are others already, where it is there on one side alone, or where nobody could look',
  ),
  differences: list(
    object({
      of: words(
        'What of it; `nothing`: by the figures nothing that is seen, which is proof only with `samePixels`; `bytes`: of the file',
        [...ASPECTS],
      ),
      words: text('Before and after, in a clause'),
    }),
    'In the picture itself, where it is there on both sides with other content and both can be read',
  ),
  findings: changes,
  waived: list(finding, 'What is said of it now and waived, since this change or before'),
  matches: list(match, 'One a target; empty for what is no grey, and for what is gone'),
});

const change = object({
  kind: words('`moved`: renamed and changed. `mode`: the content is the same', KINDS),
  path: text('As it is called now; of a deleted one, as it was'),
  from: orNull(text(), 'Its name before, where it has another'),
  swapped: flag('Renamed, and another picture has the name that it had'),
  modes: orNull(object({ before: text('Octal'), after: text('Octal') }), 'Where they differ'),
  bytes: orNull(
    object({ before: whole('Of the file'), after: whole('Of the file') }),
    'Null where they are not known of both, or one only points to a file',
  ),
  neighbours: object({
    before: orNull(text(), 'The picture before it in the book'),
    after: orNull(text(), 'The picture after it'),
    beside: list({ type: 'string' }, 'On the same spread, by the settings'),
  }),
  faced: list({ type: 'string' }, 'On its spread before, by their names now'),
  still: orNull(
    words('Why it is not in the book', ['left-out', 'unplaced']),
    'Of one that is not in the book any more and whose file is still there; else null',
  ),
  pages: list(page, 'Empty where only the mode changed: the content was not read'),
});

const stand = object({
  facing: list({ type: 'string' }, 'On its spread'),
  after: orNull(text(), 'The picture before it; null: it is the first'),
  layout: orNull(text(), 'The layout source that places it; null: none does'),
});

const counts = object({ errors: whole('Findings'), warnings: whole('Findings'), notes: whole('Findings') });

/** What `compare --format json` prints. */
export const compareReportSchema: Schema = {
  ...head('Evengrey: two revisions of a book compared'),
  ...object({
    schema: { const: 1, description: 'Number of this contract' },
    base: revision('The book before'),
    head: revision('The book after'),
    mergeBase: flag('The base is where the two revisions parted, not the revision that was asked for'),
    scope: words(
      '`changes`: unchanged pictures were not looked at, so nothing is said of the set; all are where the settings changed',
      ['book', 'changes'],
    ),
    unread: whole('Unchanged pictures that were not looked at'),
    beyond: list(
      { type: 'string' },
      'Submodules that changed: their pictures belong to another repository and were not looked at',
    ),
    changes: list(change, 'By path'),
    others: list(
      object({
        path: text('A picture that did not change itself'),
        page: whole('Page of the file, from 1', 1),
        findings: object({ new: list(finding), ended: list(finding) }),
      }),
    ),
    advice: list(
      object({
        target: orNull(text(), 'Null: every one that they are printed on'),
        before: text('What they were to be saved as, in words'),
        after: text('What they are to be saved as'),
        pictures: list({ type: 'string' }, 'Their content is what it was'),
      }),
      'Where a finding that stayed asks for something else than before',
    ),
    settings: object({
      changes: list({ type: 'string' }, 'What pictures are judged by, where that changed: a clause each'),
      off: list(
        { type: 'string' },
        'Rules that ran before and are off now: what they said has ended for that reason',
      ),
      weaker: list({ type: 'string' }, 'Rules that still run, and count for less than before'),
      stricter: list({ type: 'string' }, 'Rules that ran before, and count for more than they did'),
      forecasts: list(
        object({
          target: text('As it is called now'),
          pages: whole('Pages of greys that are the same on both sides'),
          before: share('Mean probability that a tint is seen, by the settings before'),
          after: share('The same by the settings after'),
        }),
        'Empty where the settings judge as they did',
      ),
    }),
    rearranged: list(
      object({
        path: text('A picture that did not change and stands elsewhere'),
        before: stand,
        after: stand,
      }),
      'Pictures are called as they are now',
    ),
    waived: list(
      object({
        path: orNull(text(), 'Null: about the book'),
        page: whole('Page of the file, from 1', 1),
        finding,
      }),
      'What the change itself waives; not what was waived before',
    ),
    findings: {
      ...changes,
      description:
        'About the book as a whole; `unchanged` also about several pictures by name, of which what is new or has ended is told of these pictures',
    },
    notices: list({ type: 'string' }, 'What was not compared'),
    summary: object({
      changes: object(Object.fromEntries(KINDS.map(kind => [kind, whole('Files')]))),
      new: counts,
      ended: counts,
      unchanged: {
        ...counts,
        description:
          'With the new ones, what a check of the head counts of what was looked at; what stays on a single picture that did not change is counted here alone',
      },
      base: {
        ...counts,
        description:
          'What a check of the base counts of what was looked at: not always those that ended and stayed, since one about several pictures is new where it is new for one of them',
      },
      regraded: whole(
        'Findings of the base of which the settings changed the severity alone: they are among the unchanged, as they count now',
      ),
    }),
  }),
};
