// no-unit-test: part of the tests
import type {
  Conversion,
  ConvertReport,
  Fitting,
  Relinked,
  UndoReport,
} from '../../../src/shared/conversion';

const made = (path: string, output: string, told: string[]): Conversion => ({
  ...{
    path,
    output,
    told,
    outcome: 'converted',
    sha256: 'a'.repeat(64),
    from: 'four-channel',
    to: 'rgb-neutral',
  },
  ...{ format: 'tiff', bits: 8, reason: null },
  proof: { encoding: 'rgb-neutral', maxError: 1 / 3, meanError: 0.1, sha256: 'b'.repeat(64), bytes: 100 },
  moved: null,
});

const none = (path: string, outcome: 'skipped' | 'failed', reason: string): Conversion => ({
  ...{ path, outcome, reason, output: null, sha256: '', from: 'unreadable', to: 'rgb-neutral' },
  ...{ format: null, bits: null, proof: null, moved: null, told: [] },
});

export const report: ConvertReport = {
  dryRun: false,
  conversions: [
    made('a.tif', 'a.rgb-neutral.tif', ['Said of all.', 'Said of one.']),
    made('b\u001b[2J.tif', 'b\u001b[2J.tif', ['Said of all.']),
    none('c.tif', 'skipped', 'It is rgb-neutral already.'),
    none('d.tif', 'failed', 'It is cut short.'),
  ],
  folder: null,
  originals: null,
  untoned: ['a.tif'],
  faint: [],
  spared: [],
  below: null,
  notices: ['1 picture was left out.'],
  relinking: null,
  stopped: null,
};

export const undone: UndoReport = {
  dryRun: false,
  undone: [
    { path: 'a.tif', outcome: 'restored', sha256: 'a'.repeat(64), reason: null },
    { path: 'b.tif', outcome: 'failed', sha256: null, reason: 'It was changed.' },
  ],
  relinking: null,
  stopped: null,
};

export const noFitting: Fitting = { fit: null, counterTint: null };

export const fitting: Fitting = {
  fit: {
    ...{
      target: 'book',
      process: 'offset-uncoated',
      strength: 0.5,
      moves: true,
      told: ['It rests on a guess.'],
    },
    tones: [
      { from: 0, to: 4.4, printedAsIs: 31, printed: 31 },
      { from: 10, to: 18, printedAsIs: 32.6, printed: 38.2 },
      { from: 100, to: 100, printedAsIs: 95, printed: 95 },
    ],
  },
  counterTint: {
    ...{ target: 'book', against: 'paper', strength: 0.5, a: -1.2, b: 0.5 },
    told: ['The next order will differ.'],
  },
};

export const relinking: Relinked = {
  changes: [
    {
      ...{ file: 'book.md', line: 3, column: 9, from: 'a.tif', to: 'a.rgb-neutral.tif' },
      picture: 'a.rgb-neutral.tif',
    },
  ],
  settings: [
    {
      ...{ file: 'evengrey.json', line: 4, column: 7, from: 'a.tif', to: 'a.rgb-neutral.tif' },
      picture: 'a.rgb-neutral.tif',
    },
  ],
  placedBefore: 0,
  problems: [
    { file: 'book.tex', line: 7, why: 'It cannot be named here.' },
    { file: 'old.tex', line: null, why: 'It is write-protected.' },
  ],
};
