// Builds what is shipped into dist/ and, with --tests, every test file into out/ (--only FOLDER, --out and --dist
// FOLDER build apart, for work side by side). --metafile FILE: which source files what is shipped was made of, JSON.
// One set of loaders for both, so that a test reads the same data files and pages as the product.
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import Ajv from 'ajv';
import standaloneCode from 'ajv/dist/standalone/index.js';
import esbuild from 'esbuild';

const root = path.dirname(fileURLToPath(import.meta.url));
process.chdir(root);
const require = createRequire(import.meta.url);
const { values: options } = parseArgs({
  options: {
    dev: { type: 'boolean', default: false },
    tests: { type: 'boolean', default: false },
    only: { type: 'string', default: 'test' },
    out: { type: 'string', default: 'out' },
    dist: { type: 'string', default: 'dist' },
    metafile: { type: 'string' },
  },
});
const { dev, dist } = options;

const common = {
  bundle: true,
  logLevel: 'warning',
  sourcemap: dev || options.tests ? 'linked' : false,
  loader: {
    '.ti3': 'text',
    '.csv': 'text',
    '.md': 'text',
    '.svg': 'text',
    '.css': 'text',
    '.wasm': 'binary',
  },
};
const plain = {
  ...common,
  platform: 'node',
  target: 'node20',
  format: 'cjs',
  external: ['vscode', 'sharp', '@img/*', 'mocha', 'playwright-core', 'esbuild'],
  // its CommonJS form asks for its parts in a way that no bundler follows
  alias: { 'jsonc-parser': 'jsonc-parser/lib/esm/main.js' },
  // an ES module bundled to CommonJS still asks where it lives
  define: { 'import.meta.url': '__bundleUrl' },
  banner: { js: "const __bundleUrl = require('node:url').pathToFileURL(__filename).href;" },
};

/** The JSON schemas, which follow the code: rules, processes and reports describe themselves. By file name. */
async function schemasOfCode() {
  const entry = 'src/report/schemas.ts';
  const built = await esbuild.build({ ...plain, entryPoints: [entry], write: false, sourcemap: false });
  const module = { exports: {} };
  new Function('module', 'exports', 'require', '__filename', built.outputFiles[0].text)(
    module,
    module.exports,
    require,
    path.join(root, entry),
  );
  return module.exports.schemas;
}
const schemas = await schemasOfCode();

/** What people write by hand, by the name that src/book/settings/validate.ts knows it by. */
const WRITTEN = {
  settings: 'evengrey.schema.json',
  house: 'house.schema.json',
  waivers: 'waivers.schema.json',
};

/** `compiled-schemas`: made here, as making them at every start would take a fifth of a small check. */
const compiledSchemas = {
  name: 'compiled-schemas',
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^compiled-schemas$/ }, ({ path }) => ({ path, namespace: 'compiled-schemas' }));
    onLoad({ filter: /.*/, namespace: 'compiled-schemas' }, () => {
      // not strict: the schema also carries what an editor shows, such as the descriptions of single words
      const ajv = new Ajv({
        allErrors: true,
        verbose: true,
        strict: false,
        code: { source: true, esm: true },
      });
      for (const [name, file] of Object.entries(WRITTEN)) ajv.addSchema(schemas[file], name);
      const names = Object.fromEntries(Object.keys(WRITTEN).map(name => [name, name]));
      return { contents: standaloneCode(ajv, names), loader: 'js', resolveDir: root };
    });
  },
};
const node = { ...plain, plugins: [compiledSchemas] };

/** The pixel pass: AssemblyScript to WebAssembly with SIMD. */
function buildKernel() {
  const source = 'src/picture/kernel/kernel.ts';
  if (!fs.existsSync(source)) return;
  const target = 'src/picture/kernel/kernel.wasm';
  const newest = Math.max(
    ...fs
      .readdirSync('src/picture/kernel')
      .filter(f => f.endsWith('.ts'))
      .map(f => fs.statSync(`src/picture/kernel/${f}`).mtimeMs),
  );
  if (fs.existsSync(target) && fs.statSync(target).mtimeMs > newest) return;
  const asc = path.join(path.dirname(require.resolve('assemblyscript/package.json')), 'bin/asc.js');
  execFileSync(
    process.execPath,
    [
      asc,
      source,
      '-o',
      target,
      '-O3',
      '--noAssert',
      '--enable',
      'simd',
      '--runtime',
      'stub',
      '--importMemory',
      '--use',
      'abort=',
    ],
    { stdio: 'inherit' },
  );
}

/** esbuild's account of what is shipped: every output with the files that are in it. */
const shipped = { outputs: {} };

async function ship(what) {
  const { metafile } = await esbuild.build({ ...what, outdir: dist, metafile: true });
  Object.assign(shipped.outputs, metafile.outputs);
}

async function buildProduct() {
  const entries = {
    cli: 'src/cli/main.ts',
    reader: 'src/picture/reader.ts',
    converter: 'src/remedy/converter.ts',
    demo: 'src/demo/child.ts',
    extension: 'src/editor/extension.ts',
    checker: 'src/editor/checker/main.ts',
  };
  const present = Object.fromEntries(Object.entries(entries).filter(([, file]) => fs.existsSync(file)));
  await ship({ ...node, entryPoints: present, minifySyntax: !dev });
  if (fs.existsSync(`${dist}/cli.js`)) fs.chmodSync(`${dist}/cli.js`, 0o755);
  if (fs.existsSync('src/preview/main.ts'))
    await ship({
      ...common,
      platform: 'browser',
      target: 'chrome120',
      format: 'iife',
      entryPoints: {
        preview: 'src/preview/main.ts',
        book: 'src/preview/book.ts',
        review: 'src/preview/review.ts',
      },
      minify: !dev,
    });
  if (options.metafile) fs.writeFileSync(options.metafile, JSON.stringify(shipped));
}

function writeSchemas() {
  fs.mkdirSync('media/schemas', { recursive: true });
  for (const [name, schema] of Object.entries(schemas)) {
    const file = `media/schemas/${name}`;
    const text = `${JSON.stringify(schema, null, 2)}\n`;
    if (!fs.existsSync(file) || fs.readFileSync(file, 'utf8') !== text) fs.writeFileSync(file, text);
  }
}

function testFiles(dir) {
  return fs.readdirSync(dir, { withFileTypes: true }).flatMap(e => {
    const file = path.join(dir, e.name);
    if (e.isDirectory()) return testFiles(file);
    return e.name.endsWith('.test.ts') ? [file] : [];
  });
}

async function buildTests() {
  fs.rmSync(options.out, { recursive: true, force: true });
  await esbuild.build({
    ...node,
    entryPoints: testFiles(options.only),
    outdir: path.join(options.out, 'test'),
    outbase: 'test',
  });
}

fs.mkdirSync(dist, { recursive: true });
buildKernel();
await buildProduct();
writeSchemas();
if (options.tests) await buildTests();
