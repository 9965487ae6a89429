import assert from 'node:assert/strict';
import fs from 'node:fs';
import { platformOf, targets, UNIVERSAL } from '../../scripts/package/targets';

interface Locked {
  os?: string[];
  cpu?: string[];
  libc?: string[];
}

const locked: Record<string, Locked> = JSON.parse(fs.readFileSync('package-lock.json', 'utf8')).packages;

/** Decoders of the lock file that npm installs on a platform. */
function decodersFor({ os, cpu, libc }: ReturnType<typeof platformOf>): string[] {
  return Object.entries(locked)
    .filter(
      ([name, on]) =>
        name.includes('@img/sharp-') &&
        on.os?.includes(os) &&
        on.cpu?.includes(cpu) &&
        (on.libc?.includes(libc) ?? true),
    )
    .map(([name]) => name)
    .filter(name => !name.includes('libvips'));
}

describe('targets of a package', () => {
  for (const target of targets.filter(target => target !== UNIVERSAL))
    it(`${target}: the lock file has one decoder for it`, () => {
      assert.equal(decodersFor(platformOf(target)).length, 1);
    });

  it('the one for every platform gets no native decoder', () => {
    assert.deepEqual(decodersFor(platformOf(UNIVERSAL)), []);
  });

  it('another is refused, and the known ones are named', () => {
    assert.throws(() => platformOf('amiga'), /"amiga": universal, .*win32-x64/);
  });
});
