/** What the build needs of the packages for developers: what it bundles, and what it works with. */
export const BUILD = [
  ...['ajv', 'assemblyscript', 'esbuild'],
  ...['@csstools/css-tokenizer', '@lezer/markdown', '@vscode/l10n', '@xmldom/xmldom', 'commander', 'culori'],
  ...['entities', 'env-paths', 'fastest-levenshtein', 'htmlparser2', 'ignore', 'jsonc-parser', 'lcms-wasm'],
  ...['picocolors', 'picomatch', 'yaml'],
];

/** A manifest, or the root of a lock file, without the other packages for developers. */
export const leanManifest = manifest => ({
  ...manifest,
  devDependencies: Object.fromEntries(
    Object.entries(manifest.devDependencies).filter(([name]) => BUILD.includes(name)),
  ),
});
