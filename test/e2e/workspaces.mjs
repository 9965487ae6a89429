// The folders that the editor suites open, made anew for every run. Nothing in them but what a suite needs to see.
import { execFileSync } from 'node:child_process';
import fs from 'node:fs/promises';
import path from 'node:path';
import sharp from 'sharp';

/** Makes every workspace under `dir` and returns their absolute paths by suite. */
export async function makeWorkspaces(dir) {
  await fs.rm(dir, { recursive: true, force: true });
  const made = {};
  for (const [name, make] of Object.entries({
    book,
    convert,
    fixes,
    layout,
    overview,
    review,
    translated,
    screen,
    'no-book': noBook,
    start,
    installed: book,
    spare,
  })) {
    made[name] = path.resolve(dir, name);
    await fs.mkdir(made[name], { recursive: true });
    await make(file => path.join(made[name], file));
  }
  return made;
}

/** A book for a print house that takes RGB: five pictures as it wants them, one of left-over colour, one of inks. */
async function book(at) {
  await fs.mkdir(at('pictures'));
  for (let n = 1; n <= 5; n++)
    await hills(n)
      .jpeg({ quality: 92 })
      .toFile(at(`pictures/plate-${n}.jpg`));
  await stained(hills(6)).png().toFile(at('pictures/plate-6.png'));
  await hills(7).toColourspace('cmyk').tiff({ compression: 'lzw' }).toFile(at('pictures/plate-7.tif'));
  const settings = { process: 'offset-coated', encodings: ['rgb-neutral', 'single-channel'] };
  await fs.writeFile(at('evengrey.json'), `${JSON.stringify(settings, null, 2)}\n`);
}

/** The same with a picture in colour, and a layout that places some of them. */
async function convert(at) {
  await book(at);
  await garden().jpeg({ quality: 95 }).toFile(at('pictures/garden.jpg'));
  await fs.writeFile(
    at('book.md'),
    '# A book\n\n![Inks](pictures/plate-7.tif)\n\n![Six](pictures/plate-6.png)\n\n![Garden](pictures/garden.jpg)\n',
  );
}

/** The same, laid out in Markdown, LaTeX and Typst: one picture is missing, three are placed by none. */
async function layout(at) {
  await book(at);
  // workspaces share a repository, whose journal of conversions in place knows results by their content: here is another
  await stained(hills(16)).png().toFile(at('pictures/plate-6.png'));
  await fs.mkdir(at('chapters'));
  await fs.writeFile(
    at('chapters/one.md'),
    '# One\n\n![One](../pictures/plate-1.jpg)\n\n![Six](../pictures/plate-6.png)\n\n![Nine](../pictures/plate-9.jpg)\n',
  );
  await fs.writeFile(
    at('plates.tex'),
    [
      '\\documentclass{book}',
      '\\usepackage{graphicx}',
      '\\graphicspath{{pictures/}}',
      '\\begin{document}',
      '\\includegraphics[width=50mm]{plate-7.tif}',
      '\\includegraphics[width=40mm]{plate-6}',
      '\\end{document}\n',
    ].join('\n'),
  );
  await fs.writeFile(at('cover.typ'), '#image("pictures/plate-2.jpg", width: 45mm)\n');
}

/**
 * The same, laid out in every language: each places a picture that lies elsewhere, and one whose path is right; a TIFF of
 * grey stands on a page for browsers.
 */
async function fixes(at) {
  await book(at);
  await stained(hills(18)).png().toFile(at('pictures/plate-6.png'));
  await hills(19).tiff({ compression: 'lzw' }).toFile(at('pictures/plate-8.tif'));
  await fs.mkdir(at('found/old'), { recursive: true });
  await hills(9).jpeg({ quality: 92 }).toFile(at('found/plate-9.jpg'));
  await hills(9).png().toFile(at('found/old/Plate-9.png'));
  const layouts = {
    'text.md': ['# Text', '', '![Nine](pictures/plate-9.jpg)', '', '![Six](pictures/plate-6.png)'],
    'page.html': [
      '<img alt="" src="pictures/plate-9.jpg">',
      '<img alt="" src="pictures/plate-8.tif">',
      '<img alt="" style="width: 60mm" src="pictures/plate-2.jpg">',
    ],
    'page.css': [
      '.nine { background: url("pictures/plate-9.jpg") }',
      '.three { background: url(pictures/plate-3.jpg) 0 0 / 70mm auto }',
    ],
    'plates.tex': [
      '\\documentclass{book}',
      '\\usepackage{graphicx}',
      '\\graphicspath{{pictures/}}',
      '\\begin{document}',
      '\\includegraphics[width=40mm]{plate-9}',
      '\\includegraphics[width=50mm]{plate-7.tif}',
      '\\end{document}',
    ],
    'cover.typ': [
      '#image("pictures/plate-9.jpg", width: 40mm)',
      '#image("pictures/plate-1.jpg", width: 50mm)',
    ],
    'book.adoc': [
      ':imagesdir: pictures',
      '',
      'image::plate-9.jpg[]',
      '',
      'image::plate-4.jpg[pdfwidth=80mm]',
    ],
  };
  for (const [name, lines] of Object.entries(layouts)) await fs.writeFile(at(name), `${lines.join('\n')}\n`);
}

/** The same for two print houses and in two parts, with two pictures that face each other. */
async function overview(at) {
  await book(at);
  const settings = {
    targets: {
      inside: { process: 'offset-coated' },
      cover: { process: 'inkjet' },
    },
    parts: { cover: { pictures: ['pictures/plate-5.jpg'], target: 'cover' } },
    spreads: [['pictures/plate-2.jpg', 'pictures/plate-7.tif']],
  };
  await fs.writeFile(at('evengrey.json'), `${JSON.stringify(settings, null, 2)}\n`);
}

/** A book on two processes: a large picture with something to find in it, its neighbour on the spread, one of inks. */
async function screen(at) {
  await fs.mkdir(at('pictures'));
  await hills(1).jpeg({ quality: 92 }).toFile(at('pictures/plate-1.jpg'));
  await finds().png().toFile(at('pictures/plate-2.png'));
  await hills(7).toColourspace('cmyk').tiff({ compression: 'lzw' }).toFile(at('pictures/plate-3.tif'));
  const settings = {
    targets: {
      book: { process: 'offset-uncoated', route: 'inks', inkLimit: 100 },
      dummy: { process: 'silver-halide' },
    },
    placements: { 'pictures/plate-2.png': { width: 120 } },
    spreads: [['pictures/plate-1.jpg', 'pictures/plate-2.png']],
  };
  await fs.writeFile(at('evengrey.json'), `${JSON.stringify(settings, null, 2)}\n`);
}

/**
 * R = G = B, 2400 x 1600: a scale of grey, and in it left-over colour at the upper left, black at the lower left, plain
 * white at the lower right, and in the middle lines of one pixel, which no smaller picture can show.
 */
function finds() {
  const [width, height] = [2400, 1600];
  const pixels = Buffer.alloc(width * height * 3);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      let grey = 90 + Math.round((x / width) * 120);
      if (y > 1200 && x < 800) grey = 4 + (x >> 6);
      if (y > 1200 && x > 1600) grey = 255;
      if (Math.abs(x - 1200) < 300 && Math.abs(y - 800) < 300) grey = x % 2 ? 200 : 40;
      const stain = y < 400 && x < 600;
      pixels.set([grey + (stain ? 14 : 0), grey, grey], (y * width + x) * 3);
    }
  return sharp(pixels, { raw: { width, height, channels: 3 } });
}

/** The pictures of a book and a layout that places three of them, without settings. */
async function start(at) {
  await convert(at);
  await fs.rm(at('evengrey.json'));
}

/**
 * A book in a repository of its own, on a branch: one picture spoilt, one renamed, one gone and one new since `main`, and
 * one put right that is not committed.
 */
async function review(at) {
  await book(at);
  const git = (...args) => execFileSync('git', args, { cwd: at('.'), env: committer });
  const commit = () => {
    git('add', '--all');
    git('commit', '--quiet', '-m', 'The book');
  };
  await fs.mkdir(at('.vscode'));
  await fs.writeFile(at('.vscode/settings.json'), '{ "git.enabled": true }\n');
  git('init', '--quiet', '--initial-branch=main');
  commit();
  git('checkout', '--quiet', '-b', 'work');
  await stained(hills(1)).jpeg({ quality: 92 }).toFile(at('pictures/plate-1.jpg'));
  git('mv', 'pictures/plate-2.jpg', 'pictures/plate-20.jpg');
  await fs.rm(at('pictures/plate-3.jpg'));
  await stained(hills(8)).png().toFile(at('pictures/plate-8.png'));
  commit();
  await hills(6).png().toFile(at('pictures/plate-6.png'));
}

/** The same with a picture in colour, and two pictures that face each other: something of everything that pages show. */
async function translated(at) {
  await review(at);
  await garden().jpeg({ quality: 95 }).toFile(at('pictures/garden.jpg'));
  const settings = JSON.parse(await fs.readFile(at('evengrey.json'), 'utf8'));
  const spreads = [['pictures/garden.jpg', 'pictures/plate-1.jpg']];
  await fs.writeFile(at('evengrey.json'), `${JSON.stringify({ ...settings, spreads }, null, 2)}\n`);
}

/** Who commits, and nothing of the machine's own settings. */
const committer = {
  PATH: process.env.PATH,
  GIT_CONFIG_NOSYSTEM: '1',
  GIT_CONFIG_GLOBAL: '/dev/null',
  ...Object.fromEntries(
    ['AUTHOR', 'COMMITTER'].flatMap(who => [
      [`GIT_${who}_NAME`, 'Test'],
      [`GIT_${who}_EMAIL`, 'test@example.org'],
    ]),
  ),
};

/** Three hundred icons of some program: pictures, but nobody's book. */
async function noBook(at) {
  await fs.mkdir(at('icons'));
  const icon = await hills(1).resize(16, 16).png().toBuffer();
  for (let n = 0; n < 300; n++) await fs.writeFile(at(`icons/icon-${n}.png`), icon);
}

/** What the tests put in place of a book's pictures. */
async function spare(at) {
  await hills(7).tiff({ compression: 'lzw' }).toFile(at('neutral.tif'));
  await stained(hills(1)).jpeg({ quality: 92 }).toFile(at('stained.jpg'));
  const pages = await Promise.all([hills(3), hills(4)].map(page => page.png().toBuffer()));
  await sharp(pages, { join: { animated: true } })
    .tiff()
    .toFile(at('two-pages.tif'));
  // grain, since it takes a decoder its time: some tenths of a second
  const grain = { type: 'gaussian', mean: 128, sigma: 24 };
  const film = sharp({
    create: { width: 6000, height: 4000, channels: 3, background: '#808080', noise: grain },
  });
  await film.greyscale().jpeg({ quality: 95 }).toFile(at('large.jpg'));
}

/** A soft grey landscape of R = G = B, 480 x 320, different for every `n`. */
function hills(n) {
  const [width, height] = [480, 320];
  const pixels = Buffer.alloc(width * height * 3);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const ridge = Math.sin(x / (40 + 7 * n)) * 40 + height * 0.55;
      const value = y < ridge ? 235 - (y / ridge) * 90 : 110 - ((y - ridge) / (height - ridge)) * 85;
      const at = (y * width + x) * 3;
      pixels.fill(Math.round(value), at, at + 3);
    }
  return sharp(pixels, { raw: { width, height, channels: 3 } });
}

/** Sky, leaves, a brick wall and a face-coloured disc: every way to grey makes another picture of it. */
function garden() {
  const [width, height] = [900, 600];
  const pixels = Buffer.alloc(width * height * 3);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const wave = Math.round(10 * Math.sin(x / 9) * Math.sin(y / 7));
      let colour = [80 + y / 6, 140 + y / 7, 225];
      if (y > 330) colour = [60 + wave, 130 + wave, 45 + wave];
      if (x > 560 && y > 240)
        colour =
          (x + 60 * (Math.floor(y / 24) % 2)) % 120 < 5 || y % 24 < 4
            ? [190, 180, 170]
            : [165 + wave, 70 + wave, 50];
      if ((x - 260) ** 2 + (y - 300) ** 2 < 110 ** 2) colour = [226 - y / 20, 172 - y / 20, 145 - y / 20];
      pixels.set(colour.map(Math.round), (y * width + x) * 3);
    }
  return sharp(pixels, { raw: { width, height, channels: 3 } });
}

/** Left-over colour in one corner: a red stamp of 20 x 20 pixels. */
const stained = image =>
  image.composite([
    { input: { create: { width: 20, height: 20, channels: 3, background: '#b02020' } }, left: 20, top: 20 },
  ]);
