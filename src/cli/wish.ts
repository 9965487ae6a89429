// no-unit-test: test/cli/actions/convert.test.ts and test/cli/usage.test.ts run the built program with every option
import { formatOf } from '../remedy/format';
import { greyMethods, methodNamed } from '../remedy/grey/methods';
import { RemedyError } from '../remedy/remedy-error';
import type { GreyMethod, RemedyEncoding, RemedyFormat, RemedyWish, Tone } from '../shared/remedy';
import { Failure } from './failure';
import { known, meantOr } from './known';
import { greyProfileIn } from './profile';
import type { ConvertVerbOptions } from './verbs/convert';

const ENCODINGS: RemedyEncoding[] = ['rgb-neutral', 'single-channel', 'black-only', 'rgb-toned'];
const FORMATS: RemedyFormat[] = ['jpeg', 'tiff', 'png'];

/**
 * What the options ask of each picture, without a curve.
 * @throws Failure where an option is not known, or two contradict each other
 */
export async function wishOf(options: ConvertVerbOptions): Promise<RemedyWish> {
  if (options.to === undefined)
    throw new Failure(`--to: name what the pictures are to become: ${ENCODINGS.join(', ')}.`);
  const to = known('encoding', options.to, ENCODINGS, 'to') as RemedyEncoding;
  onlyFor(to, 'rgb-neutral', options.below, 'below');
  onlyFor(to, 'rgb-toned', options.tone, 'tone');
  onlyFor(to, 'single-channel', options.profile, 'profile');
  const bits = known('depth', options.bits, ['8', '16'], 'bits');
  const wish: RemedyWish = {
    to,
    grey: methodOf(options.method),
    below: options.below?.[0] ?? null,
    tone: toneOf(options.tone),
    curve: null,
    blackPoint: (known('way', options.blackPoint, ['scaled', 'kept'], 'black-point') ??
      'scaled') as RemedyWish['blackPoint'],
    bits: bits === undefined ? null : (Number(bits) as 8 | 16),
    format: (known('format', options.as, FORMATS, 'as') ?? null) as RemedyFormat | null,
    quality: options.quality ?? null,
    upright: options.upright ?? false,
    greyProfile: options.profile === undefined ? null : await greyProfileIn(options.profile),
  };
  if (wish.quality !== null && wish.format !== null && wish.format !== 'jpeg')
    throw new Failure(
      `--quality is that of a JPEG, and --as ${wish.format} asks for none: leave one of them out.`,
    );
  refuseContradiction(wish);
  return wish;
}

function onlyFor(to: RemedyEncoding, encoding: RemedyEncoding, value: unknown, option: string): void {
  if (value !== undefined && to !== encoding)
    throw new Failure(`--${option} goes with --to ${encoding} only. Leave it out, or convert to that.`);
}

function refuseContradiction(wish: RemedyWish): void {
  try {
    formatOf('tiff', wish, false);
  } catch (error) {
    throw error instanceof RemedyError ? new Failure(error.message) : error;
  }
}

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)$/;

/** Numbers between commas; null for anything else. */
function listOf(text: string, count: number): number[] | null {
  const parts = text.split(',').map(part => part.trim());
  return parts.length === count && parts.every(part => NUMBER.test(part)) ? parts.map(Number) : null;
}

function methodOf(word = 'lightness'): GreyMethod {
  const method = methodNamed(word);
  if (method) return method;
  const weights = listOf(word, 3);
  if (!weights) {
    const names = greyMethods.map(({ id }) => id);
    throw new Failure(
      `--method: "${word}" is neither a known method nor three weights such as 0.5,0.4,0.1. ${meantOr(word, names)}`,
    );
  }
  const [red, green, blue] = weights;
  if (red + green + blue <= 0)
    throw new Failure(
      `--method: the weights add up to ${red + green + blue}, so white would not stay white.`,
    );
  return { kind: 'mix', red, green, blue };
}

function toneOf(word = 'own'): Tone {
  if (word === 'own' || word === 'even') return { kind: word };
  const tone = listOf(word, 2);
  if (!tone || tone.some(value => Math.abs(value) > 60))
    throw new Failure(
      `--tone: "${word}" is neither "own" nor "even" nor a tint of two numbers up to 60, a* and b*, such as 1.5,6.`,
    );
  return { kind: 'stated', a: tone[0], b: tone[1] };
}
