"""Makes the pictures of known channel values beside this script. Not part of the tests: run by hand when the set grows.

The writers are independent of the project and of the library it decodes with: tifffile 2026.3, Pillow 12.3,
imagecodecs 2026.3 (their own libtiff, libjpeg and libwebp), ImageMagick 6.9.11 (convert-im6), libavif 0.11 (avifenc).
The same formulas stand in ../known.ts.

    python3 -m venv v && v/bin/pip install pillow tifffile imagecodecs numpy && v/bin/python make.py
"""
import io, struct, subprocess, zlib
import numpy as np, tifffile, imagecodecs
from PIL import Image, PngImagePlugin

W, H = 20, 12


def pattern(channels, bits):
    """Every sample differs from its neighbours; all channels reach 0 (first pixel) and the largest value (last)."""
    full = 2**bits - 1
    y, x, c = np.mgrid[0:H, 0:W, 0:channels].astype(np.int64)
    a = (x * 7919 + y * 104729 + c * 3571) % (full + 1)
    a[0, 0] = 0
    a[-1, -1] = full
    a = a.astype(np.uint8 if bits <= 8 else np.uint16)
    return a[..., 0] if channels == 1 else a


def inks(full):
    """Eight flat blocks of 8 x 8: survives a JPEG at quality 100, and tells the inks apart."""
    blocks = [[0, 0, 0, 0], [0, 0, 0, 1], [1, 0, 0, 0], [0, 1, 0, 0], [0, 0, 1, 0], [.5, .4, .4, 0], [.2, .2, .2, .6], [1, 1, 1, 1]]
    a = np.zeros((16, 32, 4))
    for i, b in enumerate(blocks):
        a[(i // 4) * 8:(i // 4) * 8 + 8, (i % 4) * 8:(i % 4) * 8 + 8] = np.floor(np.array(b) * full + .5)
    return a.astype(np.uint8 if full == 255 else np.uint16)


def greys():
    """Eight flat blocks of 8 x 8 from 0 to 255."""
    a = np.zeros((16, 32), np.uint8)
    for i, v in enumerate([0, 1, 40, 100, 128, 200, 254, 255]):
        a[(i // 4) * 8:(i // 4) * 8 + 8, (i % 4) * 8:(i % 4) * 8 + 8] = v
    return a


def tiff(name, a, **k):
    tifffile.imwrite(name + '.tif', a, metadata=None, **k)


def convert(*args):
    subprocess.run(['convert-im6', *args], check=True)


def tiffs():
    for bits in (8, 16):
        b, g = str(bits), pattern(1, bits)
        tiff('grey' + b, g, photometric='minisblack')
        tiff('grey' + b + '-white0', g, photometric='miniswhite')
        tiff('grey' + b + '-alpha', pattern(2, bits), photometric='minisblack', extrasamples=['unassalpha'], planarconfig='contig')
        tiff('grey' + b + '-extra', pattern(2, bits), photometric='minisblack', extrasamples=['unspecified'], planarconfig='contig')
        tiff('rgb' + b, pattern(3, bits), photometric='rgb', byteorder='>')
        tiff('rgb' + b + '-alpha', pattern(4, bits), photometric='rgb', extrasamples=['unassalpha'])
        tiff('rgb' + b + '-extra', pattern(4, bits), photometric='rgb', extrasamples=['unspecified'])
        c = pattern(4, bits)
        tiff('cmyk' + b, c, photometric='separated')
        tiff('cmyk' + b + '-lzw', c, photometric='separated', compression='lzw', predictor=True)
        tiff('cmyk' + b + '-zip', c, photometric='separated', compression='zlib', predictor=True)
        tiff('cmyk' + b + '-planar', np.moveaxis(c, 2, 0).copy(), photometric='separated', planarconfig='separate')
        tiff('cmyk' + b + '-tiled', c, photometric='separated', tile=(16, 16))
        tiff('cmyk' + b + '-big', c, photometric='separated', bigtiff=True, byteorder='>')
        tiff('cmyk' + b + '-alpha', pattern(5, bits), photometric='separated', extrasamples=['unassalpha'])
        tiff('cmyk' + b + '-spot', pattern(5, bits), photometric='separated', extrasamples=['unspecified'])
        tiff('lab' + b, pattern(3, bits), photometric='cielab')
        tiff('icclab' + b, pattern(3, bits), photometric='icclab')
    names = b'Cyan\0Magenta\0Yellow\0Black\0Orange\0Green\0'
    tiff('cmyk8-6inks', pattern(6, 8), photometric='separated', extrasamples=['unspecified'] * 2,
         extratags=[(332, 'H', 1, 2, True), (333, 's', len(names), names, True), (334, 'H', 1, 6, True)])
    for name, photometric in (('grey-float', 'minisblack'), ('grey-float-white0', 'miniswhite')):
        tiff(name, (pattern(1, 16) / 65535).astype(np.float32), photometric=photometric)
    tiff('rgb-float', (pattern(3, 16) / 65535).astype(np.float32), photometric='rgb')
    # associated alpha: colour 200, 100, 50 under half coverage
    half = np.zeros((H, W, 4), np.uint8)
    half[...] = (100, 50, 25, 128)
    half[0, 0] = (255, 255, 255, 255)
    tiff('rgb8-associated', half, photometric='rgb', extrasamples=['assocalpha'])
    for bits in (2, 4):
        tiff(f'grey{bits}', pattern(1, bits), photometric='minisblack', bitspersample=bits)
    line = (pattern(1, 8) > 127)
    tiff('grey1', line, photometric='minisblack')
    tiff('grey1-white0', line, photometric='miniswhite')
    Image.fromarray(line).save('grey1-fax.tif', compression='group4')
    index = pattern(1, 8)
    table = np.zeros((3, 256), np.uint16)
    for i in range(256):
        table[:, i] = [i * 257, (255 - i) * 257, (i * 7 % 256) * 257]
    tiff('palette8', index, photometric='palette', colormap=table)
    tiff('palette8-grey', index, photometric='palette', colormap=np.repeat((np.arange(256) * 257).astype(np.uint16)[None], 3, 0))
    convert('palette16.png', '-compress', 'none', '-type', 'palette', 'palette4.tif')
    with tifffile.TiffWriter('pages.tif') as t:
        t.write(pattern(1, 8), photometric='minisblack', metadata=None)
        t.write(pattern(3, 16)[:6, :8].copy(), photometric='rgb', metadata=None)
        t.write(pattern(3, 8)[:4, :4].copy(), photometric='rgb', subfiletype=1, metadata=None)
        t.write(pattern(4, 8), photometric='separated', metadata=None)
    tiff('turned', pattern(1, 8), photometric='minisblack', resolution=(300, 240), resolutionunit='inch', extratags=[(274, 'H', 1, 6, True)])
    tiff('per-cm', pattern(1, 8), photometric='minisblack', resolution=(120, 120), resolutionunit='centimeter', compression='packbits')
    Image.fromarray(inks(255), 'CMYK').save('cmyk8-jpeg.tif', compression='jpeg', quality=100)
    Image.fromarray(np.dstack([greys()] * 3)).save('rgb8-jpeg.tif', compression='jpeg', quality=100)
    tiff('cmyk16-blocks', inks(65535), photometric='separated')


def jpegs():
    g = Image.fromarray(greys())
    g.save('grey.jpg', quality=100, dpi=(300, 300))
    Image.fromarray(np.dstack([greys()] * 3)).save('rgb-neutral.jpg', quality=100, subsampling=2)
    exif = Image.Exif()
    exif[274] = 8
    exif[282], exif[283], exif[296] = 240.0, 240.0, 2
    g.save('turned.jpg', quality=100, exif=exif, progressive=True)
    c = Image.fromarray(inks(255), 'CMYK')
    c.save('cmyk-adobe.jpg', quality=100, subsampling=0)
    adobe = open('cmyk-adobe.jpg', 'rb').read()
    # the same file without its Adobe marker: what was stored upside down now means ink as it stands
    at = adobe.index(b'\xff\xee')
    size = struct.unpack('>H', adobe[at + 2:at + 4])[0]
    direct = io.BytesIO()
    Image.fromarray(255 - inks(255), 'CMYK').save(direct, 'jpeg', quality=100, subsampling=0)
    d = direct.getvalue()
    at = d.index(b'\xff\xee')
    open('cmyk-unmarked.jpg', 'wb').write(d[:at] + d[at + 2 + size:])
    convert('cmyk16-blocks.tif', '-depth', '8', '-quality', '100', 'ycck.jpg')


def pngs():
    for bits in (8, 16):
        b = str(bits)
        for kind, n in (('grey', 1), ('rgb', 3), ('grey-alpha', 2), ('rgb-alpha', 4)):
            open(f'{kind}{b}.png', 'wb').write(imagecodecs.png_encode(pattern(n, bits)))
    for bits in (1, 2, 4):
        open(f'grey{bits}.png', 'wb').write(small_png(pattern(1, bits), bits))
    Image.fromarray(pattern(1, 8)).save('grey8-key.png', transparency=0)
    Image.fromarray(pattern(3, 8)).save('rgb8-key.png', transparency=(0, 0, 0))
    p = Image.fromarray(pattern(1, 8), 'P')
    p.putpalette([v for i in range(256) for v in (i, 255 - i, i * 7 % 256)])
    p.save('palette8.png', dpi=(300, 300))
    p.save('palette8-key.png', transparency=3)
    p.save('palette.gif')
    p.save('palette-key.gif', transparency=3)
    q = Image.fromarray(pattern(1, 8), 'P')
    q.putpalette([v for i in range(256) for v in (i, i, i)])
    q.save('palette8-grey.png')
    q.save('palette-grey.gif')
    s = Image.fromarray(pattern(1, 4), 'P')
    s.putpalette([v for i in range(16) for v in (i * 17, 255 - i * 17, 100)])
    s.save('palette16.png', bits=4)
    Image.fromarray(pattern(1, 8)).save('grey8-profile.png', icc_profile=b'not a profile, but forty bytes of something')


def small_png(a, bits):
    """PNG by hand: Pillow cannot write two and four bits of grey."""
    rows = b''
    for row in a:
        s = ''.join(format(int(v), f'0{bits}b') for v in row)
        s += '0' * (-len(s) % 8)
        rows += b'\0' + int(s, 2).to_bytes(len(s) // 8, 'big')
    chunk = lambda t, d: struct.pack('>I', len(d)) + t + d + struct.pack('>I', zlib.crc32(t + d))
    head = struct.pack('>IIBBBBB', a.shape[1], a.shape[0], bits, 0, 0, 0, 0)
    return b'\x89PNG\r\n\x1a\n' + chunk(b'IHDR', head) + chunk(b'IDAT', zlib.compress(rows)) + chunk(b'IEND', b'')


def others():
    Image.fromarray(pattern(1, 8)).save('grey.webp', lossless=True)
    Image.fromarray(pattern(3, 8)).save('rgb.webp', lossless=True)
    Image.fromarray(pattern(4, 8)).save('rgb-alpha.webp', lossless=True, exact=True)
    avif = lambda *args: subprocess.run(['avifenc', '-j', '1', *args], check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    avif('-l', 'rgb8.png', 'rgb.avif')
    avif('-l', 'rgb-alpha8.png', 'rgb-alpha.avif')
    avif('-l', '-y', '400', 'grey8.png', 'mono.avif')
    avif('-l', '--irot', '1', 'rgb8.png', 'rotated.avif')
    avif('-d', '10', '-y', '400', '--min', '0', '--max', '0', 'grey16.png', 'mono10.avif')
    convert('rgb8.png', 'picture.bmp')
    convert('rgb8.png', 'picture.psd')
    convert('rgb8.png', 'picture.jp2')
    convert('rgb8.png', '-resize', '64x64!', 'picture.heic')
    convert('rgb8.png', 'picture.ppm')


pngs()
tiffs()
jpegs()
others()
