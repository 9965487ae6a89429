import type { Space } from '../shared/picture';
import { type IccHeader, readIccHeader } from './icc/header';
import { IccError, LittleCms } from './icc/littlecms';
import {
  channelsOf,
  floatFormat,
  INTENTS,
  type Intent,
  runTransform,
  singleTransform,
} from './icc/transform';

export type { Intent };

/** ICC profiles through LittleCMS. */
export interface Icc {
  /**
   * Opens a profile (v2 or v4; grey, RGB, CMYK or Lab).
   * @throws Error in plain words where the bytes are cut short, damaged, or no profile that a picture can use
   */
  open(bytes: Uint8Array): IccProfile;
}

/** An opened profile. Values: grey and RGB 0-1 (0 = black), inks 0-1 (0 = no ink), Lab as it is; interleaved. */
export interface IccProfile extends Readonly<IccHeader> {
  /** As the profile's own text says, without what is not ASCII. */
  readonly description: string;
  /** Channels of one device colour. */
  readonly channels: number;
  /** Device values (n x channels) -> CIELAB D50 (n x 3). @throws Error where the profile has no way for it */
  transformToLab(intent: Intent, values: ArrayLike<number>): Float64Array;
  /**
   * The same for one colour at a time, without making anything new: writes L*, a*, b* into `out`. For models that ask
   * thousands of times. @throws Error where the profile has no way for it
   */
  toLab(intent: Intent): (values: ArrayLike<number>, out: Float64Array) => void;
  /** CIELAB D50 (n x 3) -> device values (n x channels). @throws Error where the profile has no way back */
  transformFromLab(intent: Intent, lab: ArrayLike<number>): Float64Array;
  /** Gives its memory back; the profile cannot be used afterwards. */
  close(): void;
}

let loading: Promise<LittleCms> | null = null;

/** The library, loaded once and kept; loaded anew when a damaged profile broke it. */
export async function loadIcc(): Promise<Icc> {
  loading ??= LittleCms.load();
  let library = await loading;
  if (!library.usable) {
    loading = LittleCms.load();
    library = await loading;
  }
  return { open: bytes => open(library, bytes) };
}

/**
 * Opens a profile in a library of its own: for one that is kept for long. Other profiles cannot break it, and its memory
 * goes when nobody holds it any more. @throws as `Icc.open`
 */
export async function openIccApart(bytes: Uint8Array): Promise<IccProfile> {
  readIccHeader(bytes);
  return open(await LittleCms.load(), bytes);
}

function open(library: LittleCms, bytes: Uint8Array): IccProfile {
  const header = readIccHeader(bytes);
  const profile = library.run(lcms => {
    const pointer = lcms._malloc(bytes.length);
    lcms.HEAPU8.set(bytes, pointer);
    // the library copies what it is given
    const opened = lcms._cmsOpenProfileFromMem(pointer, bytes.length);
    lcms._free(pointer);
    if (opened === 0) throw new IccError('the ICC profile is damaged: it cannot be opened');
    return opened;
  });
  const lab = library.run(lcms => lcms.cmsCreateLab4Profile(null));
  const transforms = new Map<string, number>();
  let closed = false;

  function transform(way: 'to' | 'from', intent: Intent): number {
    if (closed) throw new IccError('this ICC profile was closed');
    const key = `${way} ${intent}`;
    const known = transforms.get(key);
    if (known !== undefined) return known;
    const device = floatFormat(header.space);
    const made = library.run(lcms =>
      way === 'to'
        ? lcms._cmsCreateTransform(profile, device, lab, floatFormat('lab'), INTENTS[intent], EXACT)
        : lcms._cmsCreateTransform(lab, floatFormat('lab'), profile, device, INTENTS[intent], EXACT),
    );
    if (made === 0)
      throw new IccError(
        way === 'to'
          ? 'the ICC profile is damaged: it does not say which colours its values have'
          : 'the ICC profile works one way only: it does not say which values print a colour',
      );
    transforms.set(key, made);
    return made;
  }

  const through = (way: 'to' | 'from', intent: Intent, values: ArrayLike<number>, from: Space, to: Space) => {
    const made = transform(way, intent);
    return library.run(lcms => runTransform(lcms, made, from, to, values));
  };

  return {
    ...header,
    description: library.run(lcms => lcms.cmsGetProfileInfoASCII(profile, DESCRIPTION, 'en', 'GB')).trim(),
    channels: channelsOf(header.space),
    transformToLab: (intent, values) => through('to', intent, values, header.space, 'lab'),
    toLab(intent) {
      const made = transform('to', intent);
      const one = library.run(lcms => singleTransform(lcms, made, header.space));
      return (values, out) => {
        if (closed) throw new IccError('this ICC profile was closed');
        library.run(() => one(values, out));
      };
    },
    transformFromLab: (intent, values) => through('from', intent, values, 'lab', header.space),
    close() {
      if (closed) return;
      closed = true;
      if (!library.usable) return;
      library.run(lcms => {
        for (const made of transforms.values()) lcms._cmsDeleteTransform(made);
        lcms._cmsCloseProfile(profile);
        lcms._cmsCloseProfile(lab);
      });
    },
  };
}

/** cmsFLAGS_NOCACHE | cmsFLAGS_NOOPTIMIZE */
const EXACT = 0x0040 | 0x0100;
/** cmsInfoDescription */
const DESCRIPTION = 0;
