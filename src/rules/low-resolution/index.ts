import { printedScale, uprightSize } from '../printed';
import { defineRule, everyIntent } from '../rule';
import { say } from '../say';
import page from './README.md';

interface Options {
  ppi: number;
  line: number;
}

const messages = {
  tones:
    'This picture prints soft: at its placed size it has {ppi} pixels an inch, and {wanted} are wanted. Place it no larger than {width} x {height} mm, or take it from a larger original; enlarging it adds no detail.',
  small:
    'This picture prints soft at any size that a book has: it has {pixels} pixels, at its placed size {ppi} an inch, and {wanted} are wanted. Take it from a larger original, or leave it out; enlarging it adds no detail.',
  line: 'The edges of this line art print in visible steps: at its placed size it has {ppi} pixels an inch, and {wanted} are wanted. Place it no larger than {width} x {height} mm, or scan it finer.',
} as const;

/** No picture of a book is smaller, mm. Own choice. */
const SMALLEST = 20;

export default defineRule<Options>({
  id: 'low-resolution',
  description: 'Too few pixels for the size at which a picture is placed.',
  severity: 'warning',
  scope: 'picture',
  needs: 'header',
  intents: everyIntent,
  options: {
    type: 'object',
    additionalProperties: false,
    properties: {
      ppi: {
        type: 'number',
        minimum: 1,
        default: 200,
        description: 'Pixels an inch at the placed size below which a picture is named.',
      },
      line: {
        type: 'number',
        minimum: 1,
        default: 600,
        description: 'The same for line art and one-bit pictures.',
      },
    },
  },
  messages,
  page,
  *check({ pictures }, options) {
    for (const picture of pictures) {
      const { facts, intent } = picture;
      const { perMm, from } = printedScale(picture);
      if (from !== 'placed' || facts.unreadable) continue;
      const line = intent === 'line' || facts.encoding === 'bilevel';
      const wanted = line ? options.line : options.ppi;
      const ppi = perMm * 25.4;
      if (ppi >= wanted) continue;
      const size = uprightSize(facts);
      const most = (pixels: number) => Math.floor((pixels / wanted) * 25.4);
      const [width, height] = [most(size.width), most(size.height)];
      const figures = { ppi: Math.round(ppi), wanted };
      yield {
        picture,
        message:
          Math.max(width, height) < SMALLEST
            ? say(messages.small, { ...figures, pixels: `${size.width} x ${size.height}` })
            : say(line ? messages.line : messages.tones, { ...figures, width, height }),
        data: { ppi, wanted },
      };
    }
  },
});
