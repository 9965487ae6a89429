// no-unit-test: test/rules/odd-one-out/index.test.ts reads each of them
import type { Apart } from '../../print/apart';
import type { BookPicture } from '../../shared/finding';
import type { Target } from '../../shared/target';
import { type ApartOptions, towards } from '../apart';
import { ofPart, paths } from '../groups';
import type { Verdict } from '../rule';
import { say } from '../say';
import { forTarget, processName } from '../targets';
import { count, encodingName, inOrders, list } from '../words';
import { causeAmong, causeOf } from './cause';
import type { Pair } from './pairs';
import type { Print } from './prints';
import type { Odd } from './sets';

export const messages = {
  one: 'This picture is likely to stand out from its neighbours{where}: by {source} it is about {size} away in a*, b*{way} from most of {all}{part} that are {encoding} like it, {seen}. {cause}',
  many: 'The {all}{part} that are {encoding} are unlikely to match each other{where}: by {source} {odd} of them ({names}) are about {size} or more away in a*, b* from {others} others, which are alike. {cause}',
  none: 'The {all}{part} that are {encoding} are unlikely to match each other{where}: by {source} hardly two of them are alike ({names}). {cause}',
  few: 'The {all}{part} that are {encoding} are unlikely to match each other{where}: by {source} {one} is about {size} away in a*, b*{way} from {other}, {seen}. {cause}',
} as const;

/** What is said of pictures that are stored alike, on one target or, without one, of their files. */
export class Verdicts {
  constructor(
    private readonly prints: readonly Print[],
    private readonly targets: readonly Target[],
    private readonly options: ApartOptions,
  ) {}

  one({ picture, apart }: Odd, alike: readonly Print[]): Verdict {
    return {
      picture,
      message: say(messages.one, {
        ...this.words(),
        ...this.distance(apart),
        cause: causeOf([picture], pictured(alike)),
      }),
      data: this.data(measured(apart)),
    };
  }

  /** More than a few, or as many as the others: then it is the set that has no one tint. */
  many(odd: readonly Odd[], alike: readonly Print[]): Verdict {
    const names = paths(pictured(odd));
    const size = Math.min(...odd.map(({ apart }) => apart.size));
    return {
      message: say(messages.many, {
        ...this.words(),
        odd: odd.length,
        others: alike.length,
        size: size.toFixed(1),
        names: list(names),
        cause: causeOf(pictured(odd), pictured(alike)),
      }),
      data: this.data({ size, pictures: names }),
    };
  }

  none(): Verdict {
    const all = pictured(this.prints);
    return {
      message: say(messages.none, { ...this.words(), names: list(paths(all)), cause: causeAmong(all) }),
      data: this.data({ pictures: paths(all) }),
    };
  }

  few({ one, other, apart }: Pair): Verdict {
    const all = pictured(this.prints);
    return {
      message: say(messages.few, {
        ...this.words(),
        ...this.distance(apart),
        one: one.picture.path,
        other: other.picture.path,
        cause: causeAmong(all),
      }),
      data: this.data({ ...measured(apart), pictures: paths(all) }),
    };
  }

  private words() {
    const { prints, targets } = this;
    const [{ target, picture }] = prints;
    return {
      where: target ? ` on ${processName(target)}${forTarget(target, targets)}` : '',
      source: target ? 'the forecast' : 'the colours in the files',
      all: count(prints.length, 'picture'),
      part: ofPart(picture),
      encoding: [...new Set(prints.map(print => encodingName(print.picture.facts.encoding)))].join(' or '),
    };
  }

  private distance(apart: Apart) {
    const way = towards(apart);
    const seen = this.prints[0].target
      ? `which is seen side by side ${inOrders(apart.probability)}`
      : `and from about ${this.options.limit} on that is seen side by side`;
    return { size: apart.size.toFixed(1), way: way ? `, ${way},` : '', seen };
  }

  private data(more: Verdict['data']): Verdict['data'] {
    const { target } = this.prints[0];
    return { ...(target && { target: target.name }), all: this.prints.length, ...more };
  }
}

const measured = ({ difference, size, probability }: Apart) => ({ difference, size, probability });

const pictured = (prints: readonly Print[]): BookPicture[] => prints.map(({ picture }) => picture);
