/** Says where temporary files go. */
export const VARIABLE = process.platform === 'win32' ? 'TEMP' : 'TMPDIR';

/** With temporary files going elsewhere. */
export async function goingInto<T>(folder: string, work: () => Promise<T>): Promise<T> {
  const was = process.env[VARIABLE];
  process.env[VARIABLE] = folder;
  try {
    return await work();
  } finally {
    if (was === undefined) delete process.env[VARIABLE];
    else process.env[VARIABLE] = was;
  }
}
