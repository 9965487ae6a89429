import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { parse } from 'yaml';
import { git } from '../../book/revisions/support/repository';
import { bash, installed, workspace } from './support';

const page = fs.readFileSync('src/cli/README.md', 'utf8');
const blocks = [...page.matchAll(/^```(\w*)\n([\s\S]*?)^```$/gm)].map(([, language, text]) => ({
  language,
  text,
}));
/** Every command of the page, out of whatever stands around it; shares and what joins them are one. */
const commands = [
  ...new Set(
    blocks.flatMap(({ text }) =>
      text.includes('--shard')
        ? [text.trim()]
        : (text.match(/(?:\w+=\S+ )?npx (?:--no-install )?evengrey [^'\n]*?(?=(" *,)?'?$| \|\| true$)/gm) ??
          []),
    ),
  ),
];

function ran(command: string, faulty: boolean) {
  const root = workspace(faulty);
  // a hook runs before the commit is made
  if (faulty && command.includes('--staged')) git(root, 'reset', '--soft', 'HEAD~1');
  const program = installed();
  const GITHUB_STEP_SUMMARY = path.join(root, 'summary');
  const result = bash(command, root, { PATH: `${program}/bin:${process.env.PATH}`, GITHUB_STEP_SUMMARY });
  return { ...result, root };
}

describe('the recipes', () => {
  it('have commands', () => {
    assert.ok(commands.length >= 8, commands.join('\n'));
  });

  for (const command of commands)
    it(`pass a sound book and fail a faulty one with: ${command.split('\n').at(-1)}`, () => {
      const sound = ran(command, false);
      assert.deepEqual([sound.status, sound.stderr], [0, '']);
      const faulty = ran(command, true);
      assert.deepEqual([faulty.status, faulty.stderr], [1, '']);
      const written = [...command.matchAll(/>> "\$(\w+)"|--output (\S+)/g)].at(-1);
      const file = written && path.join(faulty.root, written[2] ?? 'summary');
      const text = file ? fs.readFileSync(file, 'utf8') : faulty.stdout;
      assert.match(text, /02\.tif/);
    });

  it('are YAML and JSON where they say so', () => {
    for (const { language, text } of blocks) {
      if (language === 'yaml') assert.ok(parse(text));
      if (language === 'json') assert.ok(JSON.parse(text));
    }
  });

  it('are linked from the README', () => {
    assert.ok(fs.readFileSync('README.md', 'utf8').includes('(src/cli/README.md)'));
  });
});
