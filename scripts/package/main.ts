// `npm run package -- --target linux-x64`: the extension as a VSIX for one platform, with the decoder's native binary
// for it and the WebAssembly one to fall back on; without --target, or with `universal`, with the latter alone.
// --target may be given several times, `all` means every one. --out FOLDER: where to, `packages` if not said.
import fs from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { createVSIX } from '@vscode/vsce';
import { stage } from './stage';
import { targets, UNIVERSAL } from './targets';

const root = path.resolve(__dirname, '../..');

async function main() {
  const { values } = parseArgs({
    options: {
      target: { type: 'string', multiple: true, default: [UNIVERSAL] },
      out: { type: 'string', default: 'packages' },
    },
  });
  const wanted = values.target.includes('all') ? targets : [...new Set(values.target)];
  const out = path.resolve(root, values.out);
  fs.mkdirSync(out, { recursive: true });
  for (const target of wanted) {
    const file = await pack(target, out);
    const size = (fs.statSync(file).size / 1e6).toFixed(1);
    console.log(`${path.relative(process.cwd(), file)}  ${size} MB`);
  }
}

/** Returns the VSIX. */
async function pack(target: string, out: string): Promise<string> {
  const staged = await stage(root, target);
  try {
    const file = path.join(out, `evengrey-${target}-${staged.version}.vsix`);
    await createVSIX({
      cwd: staged.folder,
      packagePath: file,
      target: target === UNIVERSAL ? undefined : target,
      // its page is read inside the editor: no address to complete a link with
      rewriteRelativeLinks: false,
      allowMissingRepository: true,
    });
    return file;
  } finally {
    fs.rmSync(staged.folder, { recursive: true });
  }
}

main().catch(error => {
  console.error(error.message);
  process.exitCode = 1;
});
