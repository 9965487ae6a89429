import assert from 'node:assert/strict';
import { judge } from '../../src/rules';
import { judgeWith } from '../../src/rules/judge';
import { defineRule, noOptions, type Rule } from '../../src/rules/rule';
import { picture, target } from './support/pictures';

/** Says one thing of every picture that it is shown. */
const speaks = (id: string, changes: Partial<Rule> = {}): Rule =>
  defineRule({
    id,
    description: '',
    severity: 'warning',
    scope: 'picture',
    needs: 'header',
    intents: ['grey'],
    options: noOptions,
    messages: {},
    page: '',
    check: ({ pictures }) => pictures.map(p => ({ picture: p, message: p.path, data: {} })),
    ...changes,
  });

const book = (...pictures: ReturnType<typeof picture>[]) => ({ pictures, targets: [] });

describe('judge', () => {
  it('gives each picture its own findings, in the order of the pictures', () => {
    const input = book(picture('rgb-neutral', { path: 'b' }), picture('rgb-neutral', { path: 'a' }));
    const { pictures } = judgeWith([speaks('x')], input);
    assert.deepEqual(
      pictures.map(findings => findings.map(f => f.message)),
      [['b'], ['a']],
    );
  });

  it('passes over pictures that a converted copy replaces', () => {
    const input = book(
      { ...picture('rgb-toned', { path: 'a' }), replacedBy: 'b' },
      picture('rgb-neutral', { path: 'b' }),
    );
    const { pictures } = judgeWith([speaks('x')], input);
    assert.deepEqual(
      pictures.map(findings => findings.map(f => f.message)),
      [[], ['b']],
    );
  });

  it('leaves out what compares where only some pictures were looked at', () => {
    const rules = [speaks('alone'), speaks('beside', { compares: true })];
    const input = book(picture('rgb-neutral'));
    const told = (partial: boolean) => judgeWith(rules, { ...input, partial }).pictures[0].map(f => f.rule);
    assert.deepEqual([told(false), told(true)], [['alone', 'beside'], ['alone']]);
  });

  it('names no encoding that hangs on pictures that were not looked at', () => {
    const takesTwo = [target('offset-coated', { encodings: ['rgb-neutral', 'single-channel'] })];
    const inks = [target('dry-toner', { route: 'inks' })];
    const pictures = [
      picture('rgb-toned', { targets: takesTwo, path: 'a.tif', tones: [55, 60], tone: [4, 20] }),
      picture('four-channel', { targets: takesTwo, path: 'b.tif' }),
      picture('four-channel', { targets: inks, path: 'c.tif' }),
    ];
    const told = (partial: boolean) => {
      const { pictures: some, book } = judge({ pictures, targets: [...takesTwo, ...inks], partial });
      return [...some.flat(), ...book].filter(({ message }) =>
        /[Ss]ave (it|them|the whole picture) as /.test(message),
      );
    };
    const named = /[Ss]ave (it|them|the whole picture) as (?!what a check of the whole book recommends)/;
    assert.ok(told(false).some(({ message }) => named.test(message)));
    assert.ok(
      new Set(told(true).map(({ rule }) => rule)).size > 1,
      'more than one rule says what to save as',
    );
    for (const { message, data } of told(true)) {
      assert.doesNotMatch(message, named);
      assert.equal(data.save, 'what a check of the whole book recommends');
    }
  });

  it('sorts by severity, then rule, whatever the order of the rules', () => {
    const rules = [
      speaks('b'),
      speaks('c', { severity: 'error' }),
      speaks('a'),
      speaks('n', { severity: 'note' }),
    ];
    const input = book(picture('rgb-neutral'));
    const [findings] = judgeWith(rules, input).pictures;
    assert.deepEqual(
      findings.map(f => f.rule),
      ['c', 'a', 'b', 'n'],
    );
    assert.deepEqual(judgeWith(rules.toReversed(), input).pictures[0], findings);
  });

  it('shows a rule only the intents that it concerns', () => {
    const input = book(
      picture('rgb-neutral', { intent: 'colour' }),
      picture('rgb-neutral', { intent: 'grey' }),
    );
    assert.deepEqual(
      judgeWith([speaks('x')], input).pictures.map(f => f.length),
      [0, 1],
    );
  });

  it('does not judge colour that nobody called anything, except by rules that judge colour', () => {
    const input = book(picture('colour', { intent: 'grey', intentStated: false }));
    assert.equal(judgeWith([speaks('x')], input).pictures[0].length, 0);
    assert.equal(judgeWith([speaks('x', { intents: ['colour', 'grey'] })], input).pictures[0].length, 1);
    const stated = book(picture('colour', { intent: 'grey', intentStated: true }));
    assert.equal(judgeWith([speaks('x')], stated).pictures[0].length, 1);
  });

  it('keeps a note a note when its rule is raised, and a verdict without a picture for the book', () => {
    const rule = speaks('x', {
      check: () => [
        { message: 'told', data: {}, note: true },
        { message: 'judged', data: {} },
      ],
    });
    const input = { ...book(picture('rgb-neutral')), ruleSettings: { x: 'error' as const } };
    assert.deepEqual(
      judgeWith([rule], input).book.map(f => [f.severity, f.message]),
      [
        ['error', 'judged'],
        ['note', 'told'],
      ],
    );
  });
});
