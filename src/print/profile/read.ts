import { createHash } from 'node:crypto';
import { type IccProfile, openIccApart } from '../../colour/icc';
import type { PressProfile } from '../../shared/target';

/** Steps of L* 1 from paper to black. */
const STEPS = 100;
/** A print has at least this much L* between its paper and its black (own choice; newsprint has about 45). */
const LEAST_RANGE = 20;

/**
 * Reads the print house's profile.
 * @throws Error in plain words: what is wrong, and what to do
 */
export async function readPressProfile(bytes: Uint8Array): Promise<PressProfile> {
  const profile = await openIccApart(bytes);
  const { space, description } = profile;
  const name = description === '' ? 'the ICC profile' : `the ICC profile "${description}"`;
  if (space === 'lab' || profile.class !== 'output')
    throw new Error(
      `${name} describes ${SUBJECTS[profile.class]}, not a print: ask the print house for the profile of its press or printer`,
    );
  const lab = profile.toLab('absolute');
  const range = rangeOf(lab, space);
  if (!(range >= LEAST_RANGE))
    throw new Error(
      `${name} cannot be a print's: only ${range.toFixed(0)} L* lie between its paper and its black; ask the print house for another`,
    );
  const id = createHash('sha256').update(bytes).digest('hex');
  return {
    id,
    description,
    space,
    lab,
    greys: greysOf(profile),
    toJSON: () => id,
  };
}

const SUBJECTS: Record<IccProfile['class'], string> = {
  output: 'colours in general',
  input: 'a camera or a scanner',
  display: 'a screen or a colour space of files',
  'colour space': 'a colour space of files',
};

/** Device values of bare paper and of the deepest black. */
export const paperOf = (space: PressProfile['space']): number[] =>
  Array(channels(space)).fill(space === 'cmyk' ? 0 : 1);
export const blackOf = (space: PressProfile['space']): number[] =>
  Array(channels(space)).fill(space === 'cmyk' ? 1 : 0);

const channels = (space: PressProfile['space']) => ({ grey: 1, rgb: 3, cmyk: 4 })[space];

function rangeOf(lab: PressProfile['lab'], space: PressProfile['space']): number {
  const out = new Float64Array(3);
  lab(paperOf(space), out);
  const white = out[0];
  lab(blackOf(space), out);
  return white - out[0];
}

function greysOf(profile: IccProfile): Float64Array | null {
  const greys = new Float64Array((STEPS + 1) * 3);
  for (let i = 0; i <= STEPS; i++) greys[i * 3] = 100 - i;
  try {
    return profile.transformFromLab('relative', greys);
  } catch {
    return null;
  }
}
