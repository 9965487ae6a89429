// no-unit-test: names and numbers of a standard
/** Tags of TIFF 6.0, EXIF 2.32 and their registered additions, by what becomes of them. */

export const Tag = {
  newSubfile: 254,
  description: 270,
  orientation: 274,
  xResolution: 282,
  yResolution: 283,
  resolutionUnit: 296,
  software: 305,
  artist: 315,
  subDirectories: 330,
  xmp: 700,
  copyright: 33432,
  iptc: 33723,
  resources: 34377,
  exif: 34665,
  gps: 34853,
  layers: 37724,
  interop: 40965,
  componentsConfiguration: 0x9101,
  compressedBits: 0x9102,
  makerNote: 0x927c,
  userComment: 0x9286,
  colorSpace: 0xa001,
  pixelXDimension: 0xa002,
  pixelYDimension: 0xa003,
  gamma: 0xa500,
  chromaPosition: 531,
  interopIndex: 1,
} as const;

/**
 * How the pixels lie in the file and what colours their numbers mean: all of it is written anew, or was true of the old
 * numbers only (TIFF 6.0 sections 3-8, 12-23; the first directory of EXIF).
 */
const PIXELS = [
  254, 255, 256, 257, 258, 259, 262, 263, 264, 265, 266, 273, 277, 278, 279, 280, 281, 284, 288, 289, 290,
  291, 292, 293, 300, 301, 317, 318, 319, 320, 321, 322, 323, 324, 325, 326, 327, 328, 332, 333, 334, 336,
  337, 338, 339, 340, 341, 342, 343, 344, 345, 346, 347, 351, 512, 513, 514, 515, 517, 518, 519, 520, 521,
  529, 530, 532, 559, 32995, 32996, 32997, 32998, 34675,
];
/** Carried by other ways: density, orientation, packets and pointers. */
const ELSEWHERE: number[] = [
  Tag.subDirectories,
  Tag.xmp,
  Tag.iptc,
  Tag.resources,
  Tag.exif,
  Tag.gps,
  Tag.interop,
];
const OLD_PIXELS = new Set<number>([...PIXELS, Tag.layers]);
const NOT_CARRIED = new Set([...OLD_PIXELS, ...ELSEWHERE]);

/** Tags of a camera's raw file (the range that the open raw format took): they would make a plain TIFF a raw one. */
export const isRaw = (id: number): boolean => (id >= 50706 && id <= 51200) || (id >= 33421 && id <= 33422);

/** Whether a tag is of no use without the old pixels. */
export const isOfOldPixels = (id: number): boolean => OLD_PIXELS.has(id) || isRaw(id);

/** Whether a tag of the first directory goes along as it is. */
export const isCarried = (id: number): boolean => !NOT_CARRIED.has(id) && !isRaw(id);
