// no-unit-test: declares options; test/cli runs the built program
import { Command, InvalidArgumentError, Option } from 'commander';
import { greyMethods } from '../../remedy/grey/methods';
import { wrap } from '../../report/text/wrap';
import { formatOption, numbers, outputOption, wholeFrom } from '../options';

export interface ConvertVerbOptions {
  to?: string;
  out?: string;
  inPlace?: boolean;
  undo?: boolean;
  dryRun?: boolean;
  candidates?: string;
  as?: string;
  bits?: string;
  quality?: number;
  method?: string;
  below?: number[];
  tone?: string;
  fit?: string;
  counterTint?: string;
  against?: string;
  strength?: number[];
  blackPoint?: string;
  profile?: string;
  upright?: boolean;
  relink?: boolean;
  all?: boolean;
  jobs?: number;
  format: 'text' | 'json';
  output?: string;
}

export function convertVerb(): Command {
  return new Command('convert')
    .description(
      'Converts pictures to the encoding that prints evenly: writes new files, reads them again to prove them, and loses nothing.',
    )
    .argument('<pictures...>', 'pictures, or folders with pictures of the book')
    .addOption(new Option('--to <encoding>', 'rgb-neutral, single-channel, black-only or rgb-toned'))
    .addOption(new Option('--out <folder>', 'write into this folder; left out: beside the pictures'))
    .addOption(new Option('--in-place', 'put the results in the place of the pictures; originals are kept'))
    .addOption(
      new Option(
        '--undo',
        'bring back what --in-place replaced, bit for bit, and the lines that --relink changed',
      ),
    )
    .addOption(new Option('--dry-run', 'say what would be done, and write nothing'))
    .addOption(
      new Option('--candidates <page>', 'convert nothing: show all methods on one picture, in an HTML page'),
    )
    .addOption(
      new Option(
        '--as <format>',
        'jpeg, tiff or png; left out: as the picture where that rounds nothing anew, else tiff',
      ),
    )
    .addOption(new Option('--bits <n>', '8 or 16 bits a channel; left out: as the picture'))
    .addOption(
      new Option(
        '--quality <n>',
        'code JPEG anew, at this quality, 1 to 100; left out: only where it must, at 100',
      ).argParser(wholeUpTo(100)),
    )
    .addOption(
      new Option(
        '--method <name>',
        'how colour becomes grey: a way below, or weights R,G,B; left out: lightness',
      ),
    )
    .addOption(
      new Option('--below <c>', 'remove only colour of less chroma than this (rgb-neutral)').argParser(
        numbers(1, 200),
      ),
    )
    .addOption(new Option('--tone <tone>', 'of rgb-toned: own, even, or a*,b* such as 1.5,6; left out: own'))
    .addOption(
      new Option(
        '--fit <target>',
        'fit the tones to what a target of the book, or a process, can print; the curve is shown',
      ),
    )
    .addOption(
      new Option(
        '--counter-tint <target>',
        'answer the tint that the prints of a target had, by its record (rgb-toned)',
      ),
    )
    .addOption(
      new Option(
        '--against <what>',
        "what is answered: print, the tint of the print; paper, that and the paper's own; left out: print",
      ),
    )
    .addOption(
      new Option('--strength <s>', 'of --fit and --counter-tint, 0 to 1; left out: 1').argParser(
        numbers(1, 1),
      ),
    )
    .addOption(
      new Option(
        '--black-point <how>',
        'of black ink alone: scaled, full black ink becomes black and back; kept, L* stays; of several inks L* stays; left out: scaled',
      ),
    )
    .addOption(
      new Option(
        '--profile <file>',
        'grey ICC profile to embed, or a picture that carries it (single-channel)',
      ),
    )
    .addOption(new Option('--upright', 'turn the pixels upright; left out: the orientation tag is kept'))
    .addOption(
      new Option('--relink', 'have the layouts of the book (Markdown, LaTeX, HTML, ...) place the results'),
    )
    .addOption(
      new Option(
        '--all',
        'of a folder also pictures in colour, of a strong tone or of one bit that nobody said are to be grey',
      ),
    )
    .addOption(new Option('--jobs <n>', 'pictures converted at a time').argParser(wholeFrom(1)))
    .addOption(formatOption())
    .addOption(outputOption())
    .addHelpText(
      'after',
      `
In a folder those stay as they are whose colour or strong tone may be meant, and
line art of one bit: name the picture itself, say in evengrey.json what it is
meant to be, or add --all.
A JPEG stays one where only colour goes or comes: R = G = B to one grey channel
and back, greys read as sRGB. Its lightness then stays as it is coded, to the
number. Any other result would be rounded anew by up to about L* 1, and becomes
a TIFF; --as jpeg, --quality or --in-place write a JPEG all the same, and the
report says by how much it was rounded.
A result is called by its picture and its encoding: plate.rgb-neutral.tif. Where
the format changes, the old extension stays: plate.png.rgb-neutral.tif. With
--out, names stay and folders are those of the book, and what is right already
is copied, so that the folder is the whole set; what is not in it is named last.
Nothing is written over but our own earlier result of the same picture, and no
picture without --in-place: its original then goes into git's own folder, or
into .evengrey, and stays there until you delete it, which ends --undo.
Done a second time, it does nothing.
With --relink a result that would be a TIFF is a PNG where a layout's tool takes
no TIFF (browsers, pdfTeX, Typst). For black ink alone there is no such format:
a line that can place none stays as it is, and is told. A picture that no line
places any more is named by its result in evengrey.json, too; patterns there are
told and stay, and waivers of it, which then waive nothing, are told.
--undo also has layouts and settings name the originals again, where a line
still says what --relink wrote there; results beside the originals stay.
Exit codes: 0 all done, or nothing to do; 1 some pictures could not be
converted or brought back, a result is not what was asked, or lines were left
as they are; 2 usage, settings, a full disk, or originals that are not kept any
more; 130 or 143 stopped by a signal, with a report of what was done.
Examples:
  evengrey convert my-book --to rgb-neutral --dry-run
  evengrey convert my-book/plates --to black-only --as tiff --out for-the-press
  evengrey convert my-book/plate.tif --to single-channel --in-place
  evengrey convert my-book --undo
  evengrey convert my-book/plate.tif --candidates ways.html

Ways from colour to grey, by what they do; the mixes after the first two change
the order of tones on purpose ("luminance" is another word for lightness):
${ways()}`,
    )
    .action(async (pictures: string[], options: ConvertVerbOptions) => {
      const { convert } = await import('../actions/convert');
      process.exitCode = await convert(pictures, options);
    });
}

function ways(): string {
  const longest = Math.max(...greyMethods.map(({ id }) => id.length));
  const hang = longest + 4;
  return greyMethods
    .map(({ id, does }) =>
      wrap(does, 80 - hang)
        .map((line, at) => `  ${(at === 0 ? id : '').padEnd(longest)}  ${line}`)
        .join('\n'),
    )
    .join('\n');
}

const wholeUpTo = (most: number) => (value: string) => {
  if (!/^\d+$/.test(value) || Number(value) < 1 || Number(value) > most)
    throw new InvalidArgumentError(`It must be a whole number from 1 to ${most}.`);
  return Number(value);
};
