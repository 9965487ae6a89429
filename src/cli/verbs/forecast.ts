// no-unit-test: declares options; test/cli runs the built program
import { Command, Option } from 'commander';
import { conditionHelp, conditionOptions, formatOption, numbers, outputOption, wholeFrom } from '../options';

export interface ForecastVerbOptions {
  format: 'text' | 'json' | 'svg';
  output?: string;
  settings?: string;
  process?: string;
  paper?: string;
  light?: string;
  route?: string;
  separatedFor?: string;
  ink?: number[];
  rgb?: number[];
  grey?: number[];
  page?: number;
}

export function forecastVerb(): Command {
  const verb = new Command('forecast')
    .description(
      'Says how a picture, or a grey of stated values, is expected to print: tint, its chances, black and paper.',
    )
    .argument('[picture]', 'a picture; left out: one of --ink, --rgb, --grey')
    .addOption(new Option('--ink <c,m,y,k>', 'inks in percent, sent as they are').argParser(numbers(4, 100)))
    .addOption(
      new Option('--rgb <r,g,b>', 'red, green, blue from 0 to 255 (sRGB)').argParser(numbers(3, 255)),
    )
    .addOption(new Option('--grey <v>', 'one grey from 0 (black) to 255').argParser(numbers(1, 255)))
    .addOption(
      new Option('--page <n>', 'page of a picture with several; left out: the first').argParser(wholeFrom(1)),
    );
  const conditions = {
    process: "left out: as the picture's book says, else all of them",
    paper: 'left out: as the book says, else the usual one of the process',
    light:
      '"all" for all of them; left out: as the book says, else all for one process, D50 for a text on all processes',
  };
  for (const option of conditionOptions(conditions)) verb.addOption(option);
  return verb
    .addOption(
      new Option(
        '--settings <file>',
        'how it is printed, from this file; left out: of a picture the evengrey.json of its book, unless --process is named',
      ),
    )
    .addOption(
      new Option(
        '--route <id>',
        'what the print house does with the numbers; left out: as the book says, else as is usual',
      ),
    )
    .addOption(
      new Option(
        '--separated-for <id>',
        'the process that four-ink separations are made for, where it is the wrong one',
      ),
    )
    .addOption(formatOption(['text', 'json', 'svg']))
    .addOption(outputOption())
    .addHelpText(
      'after',
      `
Examples:
  evengrey forecast --process offset-coated --light D50 --ink 0,0,0,50
  evengrey forecast --grey 128 --light A
  evengrey forecast my-book/plate.tif
  evengrey forecast my-book/plate.tif --process silver-halide
  evengrey forecast --grey 128 --process inkjet --format svg --output grey.svg
A chart in a book's folder counts as one of its pictures: keep it elsewhere.`,
    )
    .addHelpText('after', conditionHelp)
    .action(async (picture: string | undefined, options: ForecastVerbOptions) => {
      const { forecast } = await import('../actions/forecast');
      process.exitCode = await forecast(picture, options);
    });
}
