import { readLuminance } from './read';
import { Unusual } from './unusual';
import { baselineJpeg } from './write';

export { promisesLuminance } from './read';

/**
 * The luminance of a JPEG as a JPEG of its own, with every quantised coefficient as it was, so that nothing is rounded
 * anew: from the quantisation table to the end, without metadata.
 * @param channels 1: grey; 3: YCbCr whose colour is none
 * @returns null where the JPEG is coded in a rare way, damaged or cut, so that this cannot be done
 */
export function luminanceApart(file: Buffer, channels: 1 | 3): Buffer | null {
  try {
    return baselineJpeg(readLuminance(file), channels);
  } catch (error) {
    if (error instanceof Unusual) return null;
    throw error;
  }
}
