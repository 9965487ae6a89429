import assert from 'node:assert/strict';
import { bundledPackages } from '../../scripts/package/bundled';

const of = (inputs: Record<string, number>) =>
  bundledPackages({
    outputs: {
      'dist/a.js': {
        inputs: Object.fromEntries(
          Object.entries(inputs).map(([file, bytesInOutput]) => [file, { bytesInOutput }]),
        ),
      },
    },
  });

describe('packages inside the programs', () => {
  it('are those that left anything in them, each once', () => {
    const inputs = {
      'src/a.ts': 9,
      'node_modules/b/x.js': 4,
      'node_modules/b/y.js': 4,
      'node_modules/c/z.js': 0,
    };
    assert.deepEqual(of(inputs), ['node_modules/b']);
  });

  it('may have a scope, or lie in one another', () => {
    const inputs = { 'node_modules/@s/p/lib/x.js': 1, 'node_modules/b/node_modules/c/x.js': 1 };
    assert.deepEqual(of(inputs), ['node_modules/@s/p', 'node_modules/b/node_modules/c']);
  });

  it('count the compiler of the pixel pass', () => {
    assert.deepEqual(of({ 'src/picture/kernel/kernel.wasm': 9 }), ['node_modules/assemblyscript']);
  });
});
