/** A platform as npm names it in `--os`, `--cpu` and `--libc`. */
export interface Platform {
  os: string;
  cpu: string;
  libc: string;
}

/** No package of the registry is made for it: nothing native is installed. */
const NONE: Platform = { os: 'none', cpu: 'none', libc: 'none' };

/** VS Code's names of platforms, as far as the decoder has a native binary for them. */
const NATIVE: Record<string, Platform> = {
  'alpine-arm64': { os: 'linux', cpu: 'arm64', libc: 'musl' },
  'alpine-x64': { os: 'linux', cpu: 'x64', libc: 'musl' },
  'darwin-arm64': { os: 'darwin', cpu: 'arm64', libc: 'none' },
  'darwin-x64': { os: 'darwin', cpu: 'x64', libc: 'none' },
  'linux-arm64': { os: 'linux', cpu: 'arm64', libc: 'glibc' },
  'linux-armhf': { os: 'linux', cpu: 'arm', libc: 'glibc' },
  'linux-x64': { os: 'linux', cpu: 'x64', libc: 'glibc' },
  'win32-arm64': { os: 'win32', cpu: 'arm64', libc: 'none' },
  'win32-x64': { os: 'win32', cpu: 'x64', libc: 'none' },
};

/** The package for every platform without one of its own: the decoder as WebAssembly alone. */
export const UNIVERSAL = 'universal';

export const targets: readonly string[] = [UNIVERSAL, ...Object.keys(NATIVE)];

/** @throws Error that names the known targets */
export function platformOf(target: string): Platform {
  if (target === UNIVERSAL) return NONE;
  const platform = NATIVE[target];
  if (!platform) throw new Error(`There is no target "${target}": ${targets.join(', ')}.`);
  return platform;
}
