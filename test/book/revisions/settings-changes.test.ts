import assert from 'node:assert/strict';
import {
  pairedTargets,
  rulesOff,
  rulesStricter,
  rulesWeaker,
  settingsChanges,
} from '../../../src/book/revisions/settings-changes';
import { noSettings, type Settings } from '../../../src/book/settings/settings';
import { defaultTarget } from '../../../src/print';

const target = { ...defaultTarget('offset-coated'), name: 'book' };
type Judging = Parameters<typeof settingsChanges>[0];
const side = (settings: Partial<Settings>, more: Partial<Judging> = {}): Judging => ({
  ...{ settings: { ...noSettings, ...settings }, waivers: [], placements: new Map() },
  ...more,
});
const clauses = (before: Judging, after: Judging) => settingsChanges(before, after, ['a.tif']);
const changes = (before: Judging, after: Judging) => clauses(before, after).map(({ words }) => words);

describe('what pictures are judged by, where it changed', () => {
  it('is nothing where the settings only let pictures in or out', () =>
    assert.deepEqual(changes(side({ targets: [target] }), side({ targets: [target], ignore: ['x'] })), []));

  it('tells targets key by key, and those that came or went', () => {
    const inkjet = { ...defaultTarget('inkjet'), name: 'book' };
    const [process, ...others] = changes(side({ targets: [target] }), side({ targets: [inkjet] }));
    assert.equal(process, 'process from offset-coated to inkjet');
    assert.ok(others.some(clause => clause.startsWith('paper ')));
    assert.deepEqual(
      changes(side({ targets: [target] }), side({ targets: [{ ...target, encodings: ['rgb-neutral'] }] })),
      ['encodings from none to rgb-neutral'],
    );
    const cover = { ...inkjet, name: 'cover' };
    assert.deepEqual(changes(side({ targets: [target] }), side({ targets: [target, cover] })), [
      'a new target "cover" (inkjet)',
    ]);
    assert.equal(pairedTargets([target], [cover]).length, 1, 'the only ones are each other');
  });

  it('tells rules by their level, lists by name, and waivers by number', () => {
    assert.deepEqual(
      changes(
        side({ rules: { untagged: 'off', clipped: ['error', { share: 1 }] } }),
        side({
          rules: { 'low-resolution': 'error', clipped: ['error', { share: 2 }] },
          spreads: [['a', 'b']],
        }),
      ),
      [
        'clipped with "share" from 1 to 2',
        'low-resolution from a warning to an error',
        'untagged from off to a note',
        '"spreads" from none to a with b',
      ],
    );
    const waiver = { rule: 'untagged', content: ['1'], value: {} };
    assert.deepEqual(changes(side({}, { waivers: [waiver] }), side({})), [
      'waivers in .evengrey-waivers.json: 1 fewer',
    ]);
    assert.deepEqual(
      changes(side({}, { waivers: [waiver] }), side({}, { waivers: [{ ...waiver, reason: 'x' }] })),
      [],
    );
  });

  it('names the rules that run no more, and those that count for less', () => {
    const [was, is] = [
      { untagged: 'off', clipped: 'error', 'odd-one-out': 'warning' },
      { untagged: 'off', clipped: 'note', 'odd-one-out': 'off', unreadable: 'warning' },
    ] as const;
    const of = (rules: Settings['rules'], targets: Settings['targets'] = [target]) => ({ rules, targets });
    assert.deepEqual(
      [rulesOff(of(was), of(is)), rulesWeaker(was, is)],
      [['odd-one-out'], ['clipped', 'unreadable']],
    );
    assert.deepEqual(
      [rulesOff(of(is), of(was)), rulesWeaker(is, was)],
      [[], []],
      'and none that counts for more',
    );
    const blind = rulesOff(of({ 'light-shift': 'off' }), of({}, []));
    assert.ok(blind.includes('likely-tint'), 'which has nothing left to forecast');
    assert.ok(!blind.includes('light-shift') && !blind.includes('unreadable'));
    assert.deepEqual(rulesOff(of({}, []), of({})), []);
    assert.deepEqual(
      [rulesStricter(is, was), rulesStricter(was, is)],
      [['clipped', 'unreadable'], []],
      'which are told apart, without what did not run at all',
    );
    assert.deepEqual(rulesWeaker({ untagged: 'error' }, {}), ['untagged'], 'which is a note by itself');
  });

  it('is nothing where the settings follow a picture to its new name', () => {
    const [was, is] = [
      side({ spreads: [['a', 'b']], placements: [{ picture: 'a', width: 10 }] }),
      side({ spreads: [['a2', 'b']], placements: [{ picture: 'a2', width: 10 }] }),
    ];
    const called = (name: string) => (name === 'a' ? 'a2' : name);
    assert.deepEqual(settingsChanges(was, is, [], called), []);
    const others = settingsChanges(was, is, []).map(({ words }) => words);
    assert.deepEqual(others, [
      '"placements" from a 10 mm wide to a2 10 mm wide',
      '"spreads" from a with b to a2 with b',
    ]);
    assert.equal(settingsChanges(is, was, [], called).length, 2, 'it is called a2 now');
    assert.deepEqual(settingsChanges(was, was, [], called), [], 'nor where they do not follow it');
  });

  it('tells which file says it', () => {
    const waiver = { rule: 'untagged', content: ['1'], value: {} };
    const at = (width: number) =>
      new Map([['a.tif', [{ size: { width } }]]]) as unknown as Judging['placements'];
    const of = (before: Judging, after: Judging) => clauses(before, after).map(each => each.of);
    assert.deepEqual(
      of(side({ textWidth: 1 }), side({ textWidth: 1 }, { waivers: [waiver], placements: at(9) })),
      ['layouts', 'waivers'],
    );
    assert.deepEqual(
      of(side({ textWidth: 1 }, { placements: at(8) }), side({ textWidth: 2 }, { placements: at(9) })),
      ['settings', 'settings'],
      'the text is wider by the settings',
    );
  });

  it('tells that a layout places an unchanged picture at another size, not that it places it elsewhere', () => {
    const placed = (file: string, width: number | null) =>
      side(
        {},
        {
          placements: new Map([
            [
              'a.tif',
              [{ file, line: 1, column: 1, picture: 'a.tif', size: width === null ? null : { width } }],
            ],
          ]) as Judging['placements'],
        },
      );
    assert.deepEqual(changes(placed('a.md', 100), placed('a.md', 200)), [
      'layouts place 1 unchanged picture at another size',
    ]);
    assert.deepEqual(changes(placed('a.md', 100), placed('b.md', 100)), []);
    assert.deepEqual(changes(side({}), placed('b.md', null)), []);
  });
});
