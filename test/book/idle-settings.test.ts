import assert from 'node:assert/strict';
import { idleNotice, idleSettings, slipsOf } from '../../src/book/idle-settings';
import { noSettings, type Settings } from '../../src/book/settings/settings';

const nothingFound = { notEntered: [], ignored: 0, idleIgnore: [] };
const book = ['a.tif', 'b.tif', 'chapter-1.tif'].map(path => ({ path }));
const told = (settings: Partial<Settings>, found = {}) =>
  idleSettings({ ...nothingFound, ...found }, { ...noSettings, ...settings }, book).map(idleNotice);

describe('settings that say something in vain', () => {
  it('are parts, intents, placements and spreads of no picture, each told once', () => {
    const settings: Partial<Settings> = {
      parts: [
        { name: 'cover', pictures: ['covr/**'], targets: null },
        { name: 'plates', pictures: ['*.tif'], targets: null },
      ],
      intents: [
        { intent: 'line', pictures: ['maps/**'], reference: null },
        { intent: 'grey', pictures: ['*.tif'], reference: null },
      ],
      placements: [
        { picture: 'drawing.tif', width: 100 },
        { picture: 'a.tif', width: 100 },
      ],
      spreads: [['a.tif', 'cover.tif'], ['cover.tif', 'b.tif'], []],
    };
    assert.deepEqual(told(settings), [
      'The part "cover" holds no picture: nothing matches covr/**.',
      'The intent "line" is of no picture: nothing matches maps/**.',
      'The placement of "drawing.tif" is of no picture: nothing matches drawing.tif.',
      'A spread names "cover.tif", and nothing matches it.',
    ]);
  });

  it('are patterns that leave nothing out and find no layout', () => {
    assert.deepEqual(told({}, { idleIgnore: ['drafts/**'], idleLayouts: ['chapters/*.md'] }), [
      '"ignore" has drafts/**, and nothing that was searched matches it.',
      '"layouts" has chapters/*.md, and no layout that was searched matches it.',
    ]);
  });

  it('are told apart from pictures that are there and not placed, and from slips that can be guessed', () => {
    const settings: Partial<Settings> = {
      intents: [{ intent: 'toned', pictures: ['new.tif'], reference: null }],
      spreads: [['new.tif', 'a.tif'], ['b.tiff', 'chapter-1.tif'], ['chapter-9.tif']],
    };
    assert.deepEqual(told(settings, { notInBook: ['new.tif'] }), [
      'The intent "toned" is of no picture: new.tif is in the folder, but no layout places it, so it is not in the book.',
      'A spread names "new.tif", and it is in the folder, but no layout places it, so it is not in the book.',
      'A spread names "b.tiff", and nothing matches it. Did you mean "b.tif"?',
      // the picture whose name is nearest stands in a spread already
      'A spread names "chapter-9.tif", and nothing matches it.',
    ]);
  });

  it('are second spreads of a picture, and a picture beside itself', () => {
    const spreads = [
      ['a.tif', 'a.tif'],
      ['b.tif', 'a.tif'],
    ];
    assert.deepEqual(told({ spreads }), [
      'A spread names "a.tif" twice, and it is shown once.',
      'A spread names "a.tif", which stands in an earlier one: it is shown there, and here it is only compared with the others.',
    ]);
  });

  it('are told at their words, where somebody wrote them', () => {
    const text =
      '\uFEFF{\n  // a.tif\n  "intent": { "line": "b.tiff" },\n  "placements": { "b.tiff": { "width": 9 } },\n  "spreads": [["a.tif", "b.tif"], ["a.tif"]],\n}\n';
    const idle = idleSettings(
      nothingFound,
      {
        ...noSettings,
        intents: [{ intent: 'line', pictures: ['b.tiff'], reference: null }],
        placements: [{ picture: 'b.tiff', width: 9 }],
        spreads: [['a.tif', 'b.tif'], ['a.tif']],
        written: { file: 'evengrey.json', text },
      },
      book,
    );
    assert.deepEqual(
      slipsOf(idle).map(({ line, column, length }) => [line, column, length]),
      [
        [3, 23, 8],
        [4, 19, 8],
        [5, 36, 7],
      ],
    );
    assert.deepEqual(
      slipsOf(idle).map(({ suggestion }) => suggestion),
      ['b.tif', 'b.tif', undefined],
    );
    assert.match(idleNotice(idle[0]), /^evengrey\.json:3:23: The intent "line"/);
  });
});
