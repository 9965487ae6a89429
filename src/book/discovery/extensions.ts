/**
 * Names that a picture may have. Those that cannot be read are here too: a picture that is left out in silence would
 * go to print unseen.
 */
export const extensions: ReadonlySet<string> = new Set(
  'jpg jpeg jpe jfif png tif tiff webp avif gif psd psb bmp dib heic heif hif jp2 j2k jpf jpx jpc svg'.split(
    ' ',
  ),
);

export function namesPicture(path: string): boolean {
  const dot = path.lastIndexOf('.');
  return dot > path.lastIndexOf('/') && extensions.has(path.slice(dot + 1).toLowerCase());
}
