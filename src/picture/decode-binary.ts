// no-unit-test: acts before the decoder is loaded; reader.test.ts runs a reader on the WebAssembly build
import Module from 'node:module';

/** Argument of a reader that must not load the native decoder: that one crashed, or did not load. */
export const WASM_ARGUMENT = '--wasm';

const NATIVE = /^@img\/sharp-(?!wasm32)[a-z0-9-]+\/sharp\.node$/;

type Load = (request: string, parent: unknown, isMain: boolean) => unknown;

// sharp picks its binary by platform and takes the WebAssembly build only where no native one can be found: asking for
// the one is answered with the other. Must be imported before sharp.
if (process.argv.includes(WASM_ARGUMENT)) {
  const loader = Module as unknown as { _load: Load };
  const load = loader._load;
  loader._load = (request, parent, isMain) =>
    load(NATIVE.test(request) ? '@img/sharp-wasm32/sharp.node' : request, parent, isMain);
}
