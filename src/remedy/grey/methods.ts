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
    why: 'CIELAB L*, the usual choice',
    method: { kind: 'lightness' },
  },
  {
    id: 'luminance',
    name: 'Luminance',
    does: 'Strong colours become darker, blues and reds most',
    why: 'the sum of the encoded channels, as video makes its grey',
    method: { kind: 'luminance' },
  },
  ...greyPresets.map(preset => ({ ...preset, name: named(preset.id) })),
];

/** The method of that id; undefined where there is none. */
export const methodNamed = (id: string): GreyMethod | undefined =>
  greyMethods.find(each => each.id === id)?.method;
