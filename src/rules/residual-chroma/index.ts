import type { BookPicture } from '../../shared/finding';
import { PAGE_EDGE, type PrintedScale, printedScale, uprightBox, uprightSize, whereabouts } from '../printed';
import { type Recommend, saveAs } from '../recommended';
import { defineRule, type Verdict } from '../rule';
import { say } from '../say';
import { millimetres, percent } from '../words';
import page from './README.md';
import { type Mark, visibleMarks } from './visible';

interface Options {
  limit: number;
}

const messages = {
  mark: 'A coloured mark is likely to be seen on the grey {where}: {width} x {height} pixels from x {x}, y {y}, about {size} across in print ({scale}), {distance} away from the grey around it in a*, b*. {more}Take the colour out there, or {whole}.',
  much: 'Left-over colour is likely to be seen on {share} of the picture, strongest {where}: {width} x {height} pixels from x {x}, y {y}, {distance} away from its own grey in a*, b* ({scale}). Take the colour out, or {whole}.',
  colour:
    'This picture prints in colour, though the settings mean it to be grey. Turn it into grey, or list it under "colour" in the settings\' "intent".',
} as const;

/** From here on it is no mark any more but the picture. */
const MUCH = 0.2;

export default defineRule<Options>({
  id: 'residual-chroma',
  description: 'Left-over colour on a grey picture that is likely to be seen at the printed size.',
  severity: 'warning',
  scope: 'picture',
  needs: 'pixels',
  intents: ['grey', 'line'],
  options: {
    type: 'object',
    additionalProperties: false,
    properties: {
      limit: {
        type: 'number',
        minimum: 0.5,
        default: 2.5,
        description:
          'Distance in a*, b* from which left-over colour on a large area is seen; small marks need more (see the page).',
      },
    },
  },
  messages,
  page,
  *check({ pictures, recommend }, { limit }) {
    for (const picture of pictures) {
      if (picture.facts.encoding === 'colour')
        yield {
          picture,
          message: say(messages.colour, {}),
          data: { share: picture.facts.chroma?.share ?? null },
        };
      else if (picture.facts.encoding !== 'rgb-toned') yield* marksOf(picture, limit, recommend);
    }
  },
});

function* marksOf(picture: BookPicture, limit: number, recommend: Recommend): Iterable<Verdict> {
  const { facts } = picture;
  const scale = printedScale(picture);
  const marks = visibleMarks(facts.chroma?.places ?? [], scale.perMm, limit);
  if (marks.length === 0) return;
  const [{ place, size, distance }] = marks;
  const share = facts.chroma!.share;
  const save = endedBy(picture, recommend);
  const box = uprightBox(place, facts);
  const words = {
    ...box,
    where: whereabouts(box, uprightSize(facts)),
    distance: Math.round(distance),
    scale: scaleWords(scale),
    whole: save
      ? `save the whole picture as ${save}`
      : 'turn the whole picture into grey again from its original',
  };
  yield {
    picture,
    message:
      share >= MUCH
        ? say(messages.much, { ...words, share: percent(share) })
        : say(messages.mark, { ...words, size: millimetres(size), more: moreWords(marks) }),
    data: {
      ...{ share, perMm: scale.perMm, scale: scale.from, places: marks.map(mark => mark.place) },
      ...(save && { save }),
    },
  };
}

/** An encoding that cannot hold colour ends it at once; one that can would not. */
function endedBy(picture: BookPicture, recommend: Recommend): string | null {
  const best = picture.intent === 'grey' ? saveAs(picture, recommend) : null;
  return best && !/four-channel|three-ink|rgb-toned/.test(best) ? best : null;
}

function scaleWords({ from }: PrintedScale): string {
  switch (from) {
    case 'placed':
      return 'at its placed size';
    case 'ppi':
      return "at the file's own ppi";
    default:
      return `taking the long edge to be ${PAGE_EDGE} mm`;
  }
}

function moreWords(marks: readonly Mark[]): string {
  const more = marks.length - 1;
  if (more === 0) return '';
  return more === 1 ? 'There is another such place. ' : `There are ${more} more such places. `;
}
