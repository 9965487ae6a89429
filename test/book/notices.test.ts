import assert from 'node:assert/strict';
import { noticesOf } from '../../src/book/notices';
import { noSettings, type Settings } from '../../src/book/settings/settings';
import { defaultTarget } from '../../src/print';
import type { Target } from '../../src/shared/target';
import { picture } from '../rules/support/pictures';

const nothingFound = { files: [], notEntered: [], ignored: 0, idleIgnore: [] };
const offset = (route: Target['route']): Target => ({
  ...defaultTarget('offset-coated'),
  name: 'book',
  route,
});

function notices(settings: Partial<Settings>, encoding: 'rgb-neutral' | 'black-only' = 'rgb-neutral') {
  const targets = settings.targets ?? [];
  const book = [
    picture(encoding, { path: 'a.tif', targets }),
    picture('rgb-neutral', { path: 'b.tif', targets }),
  ];
  return noticesOf(nothingFound, { ...noSettings, ...settings }, book, []);
}

describe('notices', () => {
  it('tell what was not searched, what is left out, and what of "ignore" is idle', () => {
    const found = {
      files: [],
      notEntered: [{ path: 'out', why: 'it is a link' }],
      ignored: 2,
      idleIgnore: ['drafts/**'],
    };
    const always = [
      '"out" was not searched: it is a link.',
      '2 pictures are left out by ignore files (.gitignore, .evengreyignore).',
    ];
    assert.deepEqual(noticesOf(found, noSettings, [], [{ message: 'Idle.', at: null }]), [
      ...always,
      'Idle.',
    ]);
    assert.deepEqual(noticesOf(found, noSettings, [], null), always, 'only some of the book was looked at');
  });

  it('tell of a book within the book, which its own settings do not judge here', () => {
    const pictures = ['in/1.tif', 'in/2.tif', 'one/1.tif', 'inn.tif'].map(path =>
      picture('rgb-neutral', { path }),
    );
    const found = { ...nothingFound, innerBooks: ['in', 'none', 'one'] };
    assert.deepEqual(noticesOf(found, noSettings, pictures, null), [
      '"in" has an evengrey.json of its own, and 2 pictures in it were judged by this book\'s. If it is another book, leave it out here: "ignore": ["in/**"].',
      '"one" has an evengrey.json of its own, and its picture was judged by this book\'s. If it is another book, leave it out here: "ignore": ["one/**"].',
    ]);
  });

  it('tell of a paper and a route that cannot be, also where only some pictures were looked at', () => {
    const targets = [{ ...defaultTarget('silver-halide'), name: 'book', route: 'inks' as const }];
    const told = [
      'The target "book": the route "inks" cannot apply on silver halide: forecast there as "rgb".',
    ];
    assert.deepEqual(notices({ targets }), told, 'once');
    assert.deepEqual(noticesOf(nothingFound, { ...noSettings, targets }, [], null), told);
  });

  it('tell of a route that the press has and none of the pictures can take', () => {
    assert.deepEqual(notices({ targets: [offset('inks')] }), [
      'The target "book": its route "inks" can be taken by none of the pictures: they are forecast as "separated".',
    ]);
    assert.deepEqual(notices({ targets: [offset('inks')] }, 'black-only'), [], 'one of them has inks');
    for (const route of ['separated', 'black-plate', 'unknown'] as const)
      assert.deepEqual(notices({ targets: [offset(route)] }), [], route);
  });
});
