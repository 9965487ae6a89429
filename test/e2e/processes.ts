import fs from 'node:fs';

interface Running {
  pid: number;
  parent: number;
  command: string;
}

/** Checkers and readers that this extension host has started, as Linux knows them. */
export function ourProcesses(): Running[] {
  const all = fs.readdirSync('/proc').flatMap(look);
  const family = new Set([process.pid]);
  // a child may be listed before its parent
  for (let size = 0; size !== family.size; ) {
    size = family.size;
    for (const { pid, parent } of all) if (family.has(parent)) family.add(pid);
  }
  return all.filter(({ pid, command }) => family.has(pid) && /dist\/(checker|reader)\.js/.test(command));
}

export const readers = () => ourProcesses().filter(({ command }) => command.includes('reader.js'));

/** Which build of the decoder a reader has loaded, by the files that Linux has mapped for it. */
export function decoderOf({ pid }: Running): 'native' | 'wasm' {
  const native = /@img\/sharp-[\w-]+\/lib\/sharp-[\w.-]+\.node$/m;
  return native.test(fs.readFileSync(`/proc/${pid}/maps`, 'utf8')) ? 'native' : 'wasm';
}

function look(entry: string): Running[] {
  if (!/^\d+$/.test(entry)) return [];
  try {
    const status = fs.readFileSync(`/proc/${entry}/status`, 'utf8');
    const command = fs.readFileSync(`/proc/${entry}/cmdline`, 'utf8').replaceAll('\0', ' ');
    return [{ pid: Number(entry), parent: Number(/^PPid:\s*(\d+)/m.exec(status)?.[1]), command }];
  } catch {
    return []; // it has ended meanwhile
  }
}
