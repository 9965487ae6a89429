// no-unit-test: names only; every test under test/layout reads through it
export { handsOn, isAbout, kindOf } from './kinds';
export { lineFinder } from './lines';
export { GENERATOR, isOwnPage } from './own-page';
export { type ParseOptions, parseLayout, references } from './parse';
export { pathFrom, pathWritten, relink } from './relink';
export { candidates, normalised, type Resolution, resolve, type Surroundings } from './resolve';
export { jpegKeepsInks, shows, takes, toolOf } from './takes';
export type { Include, Inherited, LayoutKind, LayoutSize, Reference, Source } from './types';
