import assert from 'node:assert/strict';
import { settingsLines, whoseChanged } from '../../../src/report/compare/settings';
import { clause } from './support';

const effect = (before: number, after: number, target = 'book') => ({ target, pages: 6, before, after });

describe('changed settings in words', () => {
  it('says what changed, and what it does to the forecast of what did not', () => {
    assert.deepEqual(
      settingsLines({
        settings: {
          changes: [clause('process: inkjet, before offset-coated')],
          forecasts: [effect(0.3, 0.5)],
        },
      }),
      [
        'The settings changed, so all pictures are judged anew: process: inkjet, before offset-coated.',
        'On average, in 6 grey pictures that did not change, a tint is seen in about 5 orders of 10; before in about 3 orders of 10.',
      ],
    );
  });

  it('is silent where nothing changed, and of a forecast that stays; tells targets apart', () => {
    assert.deepEqual(settingsLines({ settings: { changes: [], forecasts: [] } }), []);
    const told = settingsLines({
      settings: { changes: [clause('x')], forecasts: [effect(0.3, 0.3, 'a'), effect(0.3, 0.31, 'b')] },
    });
    assert.equal(told.length, 2);
    assert.match(told[1], /in about 3 orders of 10 \(b\); about as often as before\.$/);
  });

  it('blames the settings for nothing that a layout or a waiver does', () => {
    const settings = {
      changes: [
        clause('layouts place 1 unchanged picture at another size', 'layouts'),
        clause('waivers in w.json: 2 more', 'waivers'),
      ],
      forecasts: [],
    };
    assert.deepEqual(settingsLines({ settings }), [
      'Layouts place 1 unchanged picture at another size.',
      'Waivers in w.json: 2 more.',
    ]);
    assert.deepEqual(whoseChanged({ settings }), ['layouts', 'waivers']);
  });
});
