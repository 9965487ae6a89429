import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { dist } from './support/run';

describe('the program', () => {
  const program = path.join(dist, 'cli.js');

  it('is a command that a shell starts by its first line', () => {
    assert.match(fs.readFileSync(program, 'utf8'), /^#!\/usr\/bin\/env node\n/);
  });

  it('says its version, that of the package', () => {
    const { version } = JSON.parse(fs.readFileSync('package.json', 'utf8'));
    assert.equal(
      execFileSync(process.execPath, [program, '--version'], { encoding: 'utf8' }),
      `${version}\n`,
    );
  });
});
