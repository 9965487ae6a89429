import assert from 'node:assert/strict';
import { parse } from 'junit2json';
import { bookJunit } from '../../../src/report/junit';
import type { Trouble } from '../../../src/report/trouble';
import type { Severity } from '../../../src/shared/finding';
import { brokenFacts } from '../../book/support/facts';
import { AWKWARD } from '../awkward';
import { finding, picture, report } from '../text/support';

const book = report(
  [
    picture(AWKWARD, [
      finding('ink-total', 'error', 'Too much.'),
      finding('likely-tint', 'warning', 'A < B & "C".'),
      finding('untagged', 'note', 'None.'),
    ]),
    picture('b.tif', [finding('likely-tint', 'warning', 'Less.')]),
    picture('c.tif', [], { encoding: 'colour' }),
  ],
  { findings: [finding('mixed-profiles', 'note', 'All.')] },
);

/** Read back by a parser that is not ours: the package junit2json (MIT). */
async function read(failing: Severity[], of = book, troubles: Trouble[] = []) {
  const suites = await parse(bookJunit(of, { folder: 'b/', settings: null }, new Set(failing), troubles));
  assert.ok(suites && 'testsuite' in suites);
  return suites;
}
type Suites = Awaited<ReturnType<typeof read>>;
const cases = ({ testsuite }: Suites) => testsuite!.flatMap(suite => suite.testcase ?? []);

describe('a report as JUnit', () => {
  it('has a case a picture and one for the book, in the order of the pictures', async () => {
    const [all, first, ...others] = cases(await read(['error']));
    assert.equal(all.name, 'The book as a whole');
    assert.match(first.name!, /^a\/50% of: a, b \{0\} \[c\]\(1\) "d" 'e' & <f> .*\\u\{d\}\\u\{a\} 丹=\.tif$/);
    assert.deepEqual(
      others.map(of => of.name),
      ['b.tif', 'c.tif'],
    );
  });

  it('passes nothing that was not looked at', async () => {
    const broken = picture('a.tif', [], brokenFacts('truncated'));
    const some = report([broken], { scope: { which: 'staged', unread: 24 } });
    const [all, first] = cases(await read(['error'], some));
    assert.match(all.skipped![0].message!, /^24 other pictures of the book were not looked at/);
    assert.match(first.skipped![0].message!, /^It was not judged\. ./);
    const [known] = cases(await read(['error'], { ...some, scope: { which: 'staged', unread: 0 } }));
    assert.equal(known.skipped, undefined, 'where the others are remembered');
    const [failed] = cases(await read(['error'], { ...some, findings: [finding('x', 'error', 'X.')] }));
    assert.deepEqual([failed.skipped, failed.failure?.length], [undefined, 1]);
  });

  it('fails those alone that fail the check, and tells the rest', async () => {
    const suites = await read(['error']);
    const [all, first, second, third] = cases(suites);
    assert.deepEqual([suites.tests, suites.failures, suites.errors], [4, 1, 0]);
    assert.deepEqual(
      suites.testsuite!.map(({ tests, failures, skipped }) => [tests, failures, skipped]),
      [
        [1, 0, 0],
        [3, 1, 1],
      ],
    );
    assert.deepEqual(
      first.failure!.map(({ message, type, inner }) => [message, type, inner]),
      [['ink-total: Too much.', 'error', 'error ink-total: Too much.']],
    );
    assert.deepEqual(first['system-out'], ['warning likely-tint: A < B & "C".\nnote untagged: None.']);
    assert.deepEqual([second.failure, second['system-out']], [undefined, ['warning likely-tint: Less.']]);
    assert.equal(third.skipped![0].message, 'In colour, and nobody said what it is meant to be.');
    assert.deepEqual(all['system-out'], ['note mixed-profiles: All.']);
  });

  it('fails every picture that a failing finding about the book asks to be changed', async () => {
    const all = { ...finding('mixed-encodings', 'error', 'Mixed.'), data: { convert: ['a.tif', 'c.tif'] } };
    const mixed = report(
      ['a.tif', 'b.tif', 'c.tif'].map(name => picture(name)),
      { findings: [all] },
    );
    const suites = await read(['error'], mixed);
    assert.deepEqual(
      cases(suites).map(({ failure }) => failure?.[0].message),
      [
        'mixed-encodings: Mixed.',
        'mixed-encodings: This picture is one of those that "The book as a whole" asks to be changed.',
        undefined,
        'mixed-encodings: This picture is one of those that "The book as a whole" asks to be changed.',
      ],
    );
    assert.equal(suites.failures, 3);
    assert.equal((await read([], mixed)).failures, 0);
  });

  it('tells what is waived, and passes it', async () => {
    const waived = [{ ...finding('untagged', 'error', 'None.'), reason: 'Meant.' }];
    const suites = await read(['error'], report([{ ...picture('a.tif'), waived }]));
    const [, first] = cases(suites);
    assert.deepEqual([suites.failures, first['system-out']], [0, ['waived (Meant.): error untagged: None.']]);
  });

  it('is in error where not all was checked', async () => {
    const at = { file: 'b/evengrey.json', line: 3, column: 7 };
    const suites = await read(['error'], report([]), [{ message: 'Broken.', at }]);
    const [only] = cases(suites);
    assert.deepEqual([suites.tests, suites.failures, suites.errors], [1, 0, 1]);
    assert.equal(only.error![0].message, 'b/evengrey.json:3:7: Broken.');
  });

  it('fails warnings too where there are too many, once a case', async () => {
    const suites = await read(['error', 'warning']);
    const [, first, second] = cases(suites);
    assert.equal(suites.failures, 2);
    assert.deepEqual(
      first.failure!.map(({ message }) => message),
      ['2 findings: ink-total, likely-tint'],
    );
    assert.equal(second.failure!.length, 1);
  });

  it('names its suites and cases after the folder of the book, if that is not the repository itself', () => {
    const names = (folder: string) => {
      const xml = bookJunit(report([picture('a.tif')]), { folder, settings: null }, new Set());
      return [...xml.matchAll(/ classname="(.*?)"|<testsuite name="(.*?)"/g)].map(
        ([, classname, suite]) => classname ?? suite,
      );
    };
    assert.deepEqual(names(''), ['Book', 'Evengrey.Book', 'Pictures', 'Evengrey.Pictures']);
    assert.deepEqual(names('books/two/'), [
      'books/two: Book',
      'Evengrey.books.two.Book',
      'books/two: Pictures',
      'Evengrey.books.two.Pictures',
    ]);
  });
});
