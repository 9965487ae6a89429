// no-unit-test: part of the tests
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import sharp from 'sharp';
import { need } from '../../tools/need';

/** Runs exiftool (Debian's), another program's reading and writing of the same standards. */
export const exiftool = (...args: string[]): string =>
  execFileSync(need('/usr/bin/exiftool', 'libimage-exiftool-perl'), args, {
    encoding: 'utf8',
    maxBuffer: 2 ** 26,
    stdio: ['ignore', 'pipe', 'ignore'],
  });

export const SOURCES = ['jpeg', 'png', 'tiff', 'webp', 'avif'] as const;
export type SourceFormat = (typeof SOURCES)[number];

const EXIF = [
  '-IFD0:ImageDescription=A gate in the wall',
  '-IFD0:Artist=Nobody Atall',
  '-IFD0:Copyright=(c) none',
  '-IFD0:Make=Box',
  '-IFD0:Model=Pinhole',
  '-IFD0:Software=Darkroom',
  '-IFD0:ModifyDate=2020:01:02 03:04:05',
  '-IFD0:XPTitle=Titel ü',
  '-IFD0:Orientation#=6',
  '-IFD0:XResolution=240',
  '-IFD0:YResolution=240',
  '-IFD0:ResolutionUnit=inches',
  '-ExifIFD:DateTimeOriginal=2020:01:02 03:04:05',
  '-ExifIFD:ExposureTime=1/125',
  '-ExifIFD:FNumber=5.6',
  '-ExifIFD:ISO=400',
  '-ExifIFD:LensModel=50mm',
  '-ExifIFD:UserComment=Grüße',
  '-ExifIFD:ColorSpace=Adobe RGB',
  '-ExifIFD:ExifImageWidth=1',
  '-ExifIFD:ExifImageHeight=1',
  '-GPSLatitude=48.1',
  '-GPSLatitudeRef=N',
  '-GPSLongitude=11.5',
  '-GPSLongitudeRef=E',
  '-GPSAltitude=520',
  '-InteropIndex=R03',
];
const IPTC = [
  '-IPTC:CodedCharacterSet=UTF8',
  '-IPTC:Headline=Gate',
  '-IPTC:Keywords=wall',
  '-IPTC:Keywords=gate',
  '-IPTC:Caption-Abstract=Ein Tor ö',
  '-IPTC:City=Nowhere',
];
const XMP = [
  '-XMP-dc:Title=Gate',
  '-XMP-dc:Title-de=Tor',
  '-XMP-dc:Subject=wall',
  '-XMP-dc:Subject=gate & post',
  '-XMP-dc:Format=image/x',
  '-XMP-xmp:Rating=4',
  '-XMP-photoshop:ColorMode=CMYK',
  '-XMP-tiff:Orientation#=6',
  '-XMP-exif:ColorSpace#=2',
  '-XMP-xmpMM:DocumentID=abc',
  '-XMP-xmpMM:InstanceID=def',
  '-XMP-xmpMM:HistoryAction=created',
  '-XMP-xmpMM:HistorySoftwareAgent=Paint',
];
const OWN: Partial<Record<SourceFormat, string[]>> = {
  jpeg: ['-Comment=hello', '-JFIF:XResolution=240', '-JFIF:YResolution=240', '-JFIF:ResolutionUnit=inches'],
  png: [
    '-PNG:Title=Title of its own',
    '-PNG:Comment=hello',
    '-PNG:Author=Nobody Atall',
    '-PNG-pHYs:PixelsPerUnitX=9449',
    '-PNG-pHYs:PixelsPerUnitY=9449',
    '-PNG-pHYs:PixelUnits=meters',
  ],
};

/** A small picture of each format that holds all kinds of metadata, written by exiftool. @returns their paths */
export async function taggedPictures(folder: string): Promise<Record<SourceFormat, string>> {
  const files = {} as Record<SourceFormat, string>;
  for (const format of SOURCES) {
    const file = path.join(folder, `tagged.${format}`);
    const plain = sharp({ create: { width: 40, height: 30, channels: 3, background: '#875' } });
    fs.writeFileSync(file, await plain[format](format === 'tiff' ? { compression: 'lzw' } : {}).toBuffer());
    exiftool('-q', '-m', '-overwrite_original', ...EXIF, ...IPTC, ...XMP, ...(OWN[format] ?? []), file);
    files[format] = file;
  }
  return files;
}

/** Every tag by group and name, structures whole. */
export const tagsOf = (files: readonly string[]): Record<string, unknown>[] =>
  JSON.parse(exiftool('-j', '-G1', '-a', '-struct', ...files));
