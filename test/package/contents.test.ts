import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { filesOf } from './vsix';

/** Beside this very build of the tests. */
const packages = path.resolve(__dirname, '../../packages');

const MUST = [
  ...[
    'LICENSE.txt',
    'ThirdPartyNotices.txt',
    'changelog.md',
    'readme.md',
    'package.json',
    'package.nls.json',
    'l10n/bundle.l10n.json',
  ],
  ...['checker', 'converter', 'demo', 'extension', 'preview', 'reader'].map(program => `dist/${program}.js`),
  'node_modules/sharp/dist/index.cjs',
  'node_modules/@img/sharp-wasm32/index.cjs',
  'node_modules/@emnapi/runtime/index.js',
];
const DECODER = 'node_modules/(sharp|semver|detect-libc|@img/[a-z0-9-]+|@emnapi/runtime)';
const MAY = [
  /^(LICENSE|ThirdPartyNotices)\.txt$/,
  /^(readme|changelog)\.md$/,
  /^package(\.nls(\.[a-z-]+)?)?\.json$/,
  /^l10n\/[^/]+\.json$/,
  /^dist\/[a-z-]+\.js$/,
  /^media\/[a-z-]+\.(css|png|svg)$/,
  /^media\/[a-z-]+\/[a-z-]+(\.[a-z-]+)*\.(json|md|svg|png)$/,
  new RegExp(`^${DECODER}/(package|versions)\\.json$`),
  new RegExp(`^${DECODER}/(LICENSE(\\.md)?|README\\.md)$`),
  new RegExp(`^${DECODER}/([a-z]+/)?[\\w.-]+\\.c?js$`),
  /^node_modules\/@img\/sharp-wasm32\/lib\/[\w.-]+\.wasm$/,
];
const NATIVE = /^node_modules\/@img\/sharp-(libvips-)?linux-x64\/lib\/[\w.-]+\.(node|so[.\d]*)$/;

describe('packages', () => {
  before(function () {
    this.timeout(300_000);
    execFileSync(process.execPath, ['test/tools/built-packages.mjs', packages]);
  });

  for (const target of ['universal', 'linux-x64'])
    describe(target, () => {
      let files: Map<string, Buffer>;
      const names = () => [...files.keys()];
      const text = (name: string) => files.get(name)!.toString('utf8');
      before(async () => {
        const [vsix] = fs.readdirSync(packages).filter(name => name.startsWith(`evengrey-${target}-`));
        const all = await filesOf(path.join(packages, vsix));
        const inside = [...all].filter(([name]) => name.startsWith('extension/'));
        files = new Map(inside.map(([name, bytes]) => [name.slice('extension/'.length), bytes]));
      });

      it('holds every program and what it needs', () => {
        assert.deepEqual(
          MUST.filter(name => !files.has(name)),
          [],
        );
      });

      it('holds every file that its manifest names', () => {
        const named = [...text('package.json').matchAll(/"(?:\.\/)?((?:dist|media|l10n)\/[^"*]+)"/g)].map(
          m => m[1],
        );
        assert.ok(named.length >= 3, named.join());
        assert.deepEqual(
          named.filter(name => !names().some(file => file === name || file.startsWith(`${name}/`))),
          [],
        );
      });

      it('holds every page, style and program that the extension names', () => {
        const source = text('dist/extension.js');
        const named = [...source.matchAll(/"(dist|media)(?:", "|\/)([\w.-]+\.\w+)"/g)].map(
          m => `${m[1]}/${m[2]}`,
        );
        assert.ok(named.includes('dist/checker.js') && named.includes('media/preview.css'), named.join());
        assert.deepEqual(
          named.filter(name => !files.has(name)),
          [],
        );
      });

      it('holds nothing else: no source, no test, no map, no other platform’s decoder', () => {
        const allowed = target === 'linux-x64' ? [...MAY, NATIVE] : MAY;
        assert.deepEqual(
          names().filter(name => !allowed.some(pattern => pattern.test(name))),
          [],
        );
      });

      it(`holds ${target === 'universal' ? 'no native decoder' : 'its platform’s native decoder'}`, () => {
        const native = names().filter(name => NATIVE.test(name));
        assert.equal(native.length, target === 'universal' ? 0 : 2, native.join());
      });

      it('names no folder of the machine that it was made on', () => {
        const here = [process.cwd(), `${os.homedir()}/`, `${path.join(os.tmpdir(), 'evengrey-')}`];
        const found = [...files].flatMap(([name, bytes]) =>
          here.filter(folder => bytes.includes(folder)).map(folder => `${folder} in ${name}`),
        );
        assert.deepEqual(found, []);
      });

      it('tells nothing of how it was made', () => {
        const manifest = JSON.parse(text('package.json'));
        for (const key of ['scripts', 'devDependencies', 'private']) assert.equal(manifest[key], undefined);
      });

      it('says whose work it holds: every package beside the programs and inside them', () => {
        const notices = text('ThirdPartyNotices.txt');
        const folders = new Set(
          names().flatMap(name => /^node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(name)?.[1] ?? []),
        );
        // esbuild writes above each file where it came from
        const programs = names().filter(name => name.startsWith('dist/'));
        const inside = programs.flatMap(name =>
          [...text(name).matchAll(/^ *\/\/ node_modules\/((?:@[\w-]+\/)?[\w.-]+)\//gm)].map(m => m[1]),
        );
        assert.ok(inside.includes('lcms-wasm') && folders.has('sharp'));
        for (const name of [...folders, ...inside])
          assert.match(notices, new RegExp(`^  ${name} \\d[\\w.-]* - \\w`, 'm'));
      });

      it('gives the decoder’s libraries their licence, and the data theirs', () => {
        const notices = text('ThirdPartyNotices.txt');
        assert.match(notices, /GNU LESSER GENERAL PUBLIC LICENSE\s+Version 3/);
        assert.match(notices, /\| libvips\s+\| LGPLv3/);
        assert.match(notices, /CC BY-SA 4\.0/);
        assert.match(notices, /CGATS/);
        assert.match(notices, /Marti Maria/);
      });
    });
});
