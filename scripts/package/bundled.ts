import { packageFolder } from './packages';

/** What esbuild writes of its outputs: of each input how many bytes are left in the output. */
export interface Metafile {
  outputs: Record<string, { inputs: Record<string, { bytesInOutput: number }> }>;
}

/**
 * The compiler of the pixel pass: what it adds of its own library is in the compiled kernel, which a bundler sees as
 * data.
 */
const COMPILED_IN = 'node_modules/assemblyscript';

/** Folders of the packages that have left anything in what is shipped, sorted. */
export function bundledPackages({ outputs }: Metafile): string[] {
  const inputs = Object.values(outputs).flatMap(({ inputs }) =>
    Object.entries(inputs).flatMap(([file, { bytesInOutput }]) => (bytesInOutput > 0 ? [file] : [])),
  );
  const folders = inputs.map(packageFolder).filter(folder => folder !== null);
  const compiled = inputs.some(file => file.endsWith('kernel.wasm')) ? [COMPILED_IN] : [];
  return [...new Set([...folders, ...compiled])].sort();
}
