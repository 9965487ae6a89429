// The floor: a child process that decodes a picture's stored channels with sharp, exactly, and does nothing else.
import sharp from 'sharp';

sharp.cache(false);
sharp.concurrency(1);

async function decode(file) {
  const picture = sharp(file, { ignoreIcc: true, autoOrient: false });
  const { space, depth } = await picture.metadata();
  if (space === 'cmyk') picture.pipelineColourspace('cmyk');
  await picture.toColourspace(space).raw({ depth }).toBuffer();
}

let last = Promise.resolve();
process.on('message', ({ id, file }) => {
  last = last.then(async () => {
    await decode(file);
    globalThis.gc?.();
    process.send({ id, ok: true });
  });
});
process.on('disconnect', () => process.exit(0));
process.send({ kind: 'ready' });
