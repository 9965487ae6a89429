import type { LightId } from '../shared/target';

export interface Light {
  id: LightId;
  name: string;
}

/** Viewing lights: CIE illuminants (CIE 015:2018). */
export const lights: readonly Light[] = [
  { id: 'D50', name: 'Daylight of a viewing booth (D50)' },
  { id: 'D65', name: 'Daylight from the north sky (D65)' },
  { id: 'A', name: 'Tungsten lamp (A)' },
  { id: 'FL2', name: 'Cool white fluorescent tube (FL2)' },
  { id: 'FL11', name: 'Three-band fluorescent tube (FL11)' },
  { id: 'LED-B1', name: 'White LED, about 2700 K (LED-B1)' },
  { id: 'LED-B2', name: 'White LED, about 3000 K (LED-B2)' },
  { id: 'LED-B3', name: 'White LED, about 4100 K (LED-B3)' },
  { id: 'LED-B4', name: 'White LED, about 5100 K (LED-B4)' },
  { id: 'LED-B5', name: 'White LED, about 6600 K (LED-B5)' },
];
