import type { GreyMethod } from '../../shared/remedy';
import { greyPresets } from './presets';

/** A way from colour to grey, as a person chooses it. */
export interface NamedMethod {
  id: string;
  name: string;
  /** What it does, as a list shows it. */
  does: string;
  /** Why it does that. */
  why: string;
  method: GreyMethod;
}

/** `darker-sky` as words. */
const named = (id: string) => id[0].toUpperCase() + id.slice(1).replaceAll('-', ' ');

/** Every way that has a name, the usual one first. */
export const greyMethods: readonly NamedMethod[] = [
  {
    id: 'lightness',
    name: 'Lightness',
    does: 'Every tone becomes as light as its colour looks, so that tones stay in order',
    why: 'CIELAB L*, which is luminance on an even scale: the usual choice',
    method: { kind: 'lightness' },
  },
  {
    id: 'luma',
    name: 'Luma',
    does: 'Strong colours become darker, blues and reds most, so that tones can change their order',
    why: 'the weights of ITU-R BT.709 on the stored values, as video makes its grey',
    method: { kind: 'luma' },
  },
  ...greyPresets.map(preset => ({ ...preset, name: named(preset.id) })),
];

/** Another word for the same: L* says luminance on an even scale, so that either gives the same tones. */
const SAME_AS: Record<string, string> = { luminance: 'lightness' };

/** The method of that id; undefined where there is none. */
export const methodNamed = (id: string): GreyMethod | undefined =>
  greyMethods.find(each => each.id === (SAME_AS[id] ?? id))?.method;
