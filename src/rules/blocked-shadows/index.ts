import type { BookPicture } from '../../shared/finding';
import type { Forecast } from '../../shared/forecast';
import type { Target } from '../../shared/target';
import { FEW, grouped, paths } from '../groups';
import { isOneTone } from '../one-tone';
import { defineRule, greyOrToned, type Verdict } from '../rule';
import { say } from '../say';
import { forecastsOf, forTarget, processName } from '../targets';
import { count, list, percent } from '../words';
import page from './README.md';

interface Options {
  share: number;
}

const messages = {
  one: 'About {own} of this picture loses its shading in print{target}: the file has shades there, and {process} prints them like its black (L* {black}). {plain}Open the deepest shadows, or accept them as black.',
  many: 'The deepest shadows close up in print{target}: in {some} of {all}, {own} of the area or more has shades in the file that {process} prints like its black (L* {black}). That is the process; open the shadows where they matter. Most: {names}.',
} as const;

/** A picture's shadows on one target; shares 0-1 of its area. */
interface Shadows {
  picture: BookPicture;
  target: Target;
  forecast: Forecast;
  /** Lost by the process: the file has shades there. */
  own: number;
  /** Prints as black too, but is the file's own. */
  plain: number;
}

export default defineRule<Options>({
  id: 'blocked-shadows',
  description: 'Shadows with shades in the file that the process prints as one black.',
  severity: 'note',
  scope: 'both',
  needs: 'forecast',
  intents: greyOrToned,
  options: {
    type: 'object',
    additionalProperties: false,
    properties: {
      share: {
        type: 'number',
        exclusiveMinimum: 0,
        maximum: 1,
        default: 0.1,
        description: 'Share of the area (0-1) that must lose its shading before it is told.',
      },
    },
  },
  messages,
  page,
  *check({ pictures, targets }, { share }) {
    for (const onTarget of grouped(pictures.flatMap(shadowsOf), s => s.target.name))
      yield* judgeTarget(onTarget, share, targets);
  },
});

function shadowsOf(picture: BookPicture): Shadows[] {
  const { tone, encoding } = picture.facts;
  if (!tone || encoding === 'bilevel' || isOneTone(tone)) return [];
  return forecastsOf(picture).map(({ target, forecast }) => {
    const { blockedShare, closedShare } = forecast.range;
    return { picture, target, forecast, own: closedShare, plain: blockedShare - closedShare };
  });
}

function* judgeTarget(all: Shadows[], share: number, targets: readonly Target[]): Iterable<Verdict> {
  const lost = all.filter(({ own }) => own >= share);
  if (lost.length === 0) return;
  const { target } = lost[0];
  const words = { target: forTarget(target, targets), process: processName(target) };
  if (lost.length > FEW && lost.length * 2 > all.length) {
    const names = paths(lost.sort((x, y) => y.own - x.own).map(({ picture }) => picture));
    yield {
      message: say(messages.many, {
        ...words,
        some: lost.length,
        all: count(all.length, 'picture'),
        own: percent(share),
        black: Math.round(Math.min(...lost.map(({ forecast }) => forecast.range.black))),
        names: list(names),
      }),
      data: { target: target.name, share, pictures: names },
    };
    return;
  }
  for (const { picture, forecast, own, plain } of lost)
    yield {
      picture,
      message: say(messages.one, {
        ...words,
        own: percent(own),
        black: Math.round(forecast.range.black),
        plain: plain >= 0.01 ? `Another ${percent(plain)} that prints so is the file's own black. ` : '',
      }),
      data: { target: target.name, share: own, own, plain, black: forecast.range.black },
    };
}
