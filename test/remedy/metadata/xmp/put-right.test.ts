import assert from 'node:assert/strict';
import { packetText } from '../../../../src/remedy/metadata/xmp/properties';
import { putRight } from '../../../../src/remedy/metadata/xmp/put-right';
import { stored } from '../../file/stored';
import { description, packetOf } from './packets';

const OLD = description(
  'tiff:Orientation="6" tiff:XResolution="72/1" tiff:BitsPerSample="16" exif:ColorSpace="2" exif:PixelXDimension="1" photoshop:ColorMode="9" photoshop:ICCProfile="Old" xmpMM:InstanceID="x" xmpMM:DocumentID="y" dc:format="image/x"',
  '<xmp:Thumbnails><rdf:Alt/></xmp:Thumbnails><dc:source>stays</dc:source>',
);
const attributes = (text: string) =>
  Object.fromEntries(
    [...text.matchAll(/((?:tiff|exif|photoshop|xmpMM|dc):\w+)="([^"]*)"/g)].map(m => [m[1], m[2]]),
  );

describe('putRight', () => {
  it('says what is true of the written file and leaves the rest', () => {
    const packet = packetOf(OLD);
    putRight(packet, stored('cmyk'), 'tiff', 8, { x: [300, 1], y: [300, 1], unit: 'inch' });
    const text = packetText(packet);
    assert.deepEqual(attributes(text), {
      'tiff:Orientation': '8',
      'tiff:XResolution': '300/1',
      'exif:ColorSpace': '65535',
      'exif:PixelXDimension': '67',
      'photoshop:ColorMode': '4',
      'xmpMM:DocumentID': 'y',
      'dc:format': 'image/tiff',
    });
    assert.doesNotMatch(text, /Thumbnails/);
    assert.match(text, /<dc:source>stays<\/dc:source>/);
  });

  it('says nothing of a density that the file has not', () => {
    const packet = packetOf(OLD);
    putRight(packet, stored('rgb'), 'jpeg', 1, null);
    const said = attributes(packetText(packet));
    assert.deepEqual(
      [said['tiff:XResolution'], said['exif:ColorSpace'], said['dc:format']],
      [undefined, '1', 'image/jpeg'],
    );
  });
});
