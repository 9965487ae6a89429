// The floor of a conversion: a process that decodes a picture's stored channels with sharp and encodes them again, and
// does nothing else. `node recode.mjs FILE FORMAT`; JPEG as the bench's pictures are coded.
import sharp from 'sharp';

sharp.cache(false);
sharp.concurrency(1);

const [file, format] = process.argv.slice(2);
const settings = {
  jpeg: { quality: 92, chromaSubsampling: '4:2:0' },
  png: {},
  tiff: { compression: 'deflate', predictor: 'horizontal' },
};
const picture = sharp(file, { ignoreIcc: true, autoOrient: false });
const { space } = await picture.metadata();
if (space === 'cmyk') picture.pipelineColourspace('cmyk');
await picture.toColourspace(space).toFormat(format, settings[format]).toBuffer();
