import type { BookPicture } from '../../shared/finding';
import { fittingProfile } from '../profiles';
import { defineRule, noOptions, type Verdict } from '../rule';
import { say } from '../say';
import { forTarget, keepsInks } from '../targets';
import { paperKindOfProfile, paperKindOfTarget } from './paper-kind';
import page from './README.md';

const messages = {
  paper:
    'This picture prints too {tone}, with its grey out of balance: its inks were separated for {made} paper (profile "{profile}"), and it is printed on {printed} paper{target}. Separate it again from its grey or RGB original for this paper.',
  axis: 'A print house that honours profiles prints this grey picture with a tint: R = G = B is not neutral in its profile "{profile}" (off by up to C* {chroma}). Convert it to a profile with a neutral grey axis, such as sRGB.',
  channels:
    'This picture may print lighter or darker than it looks here: it has one grey channel, and its profile "{profile}" is for RGB, which one program reads as equal red, green and blue (as here) and the next ignores. {way}',
  broken:
    'This picture may print {otherwise} than it looks here, since each program does as it likes with a profile that cannot be used. {text} Embed the profile it was made in, or none.',
} as const;

const GREY_PROFILE =
  'Embed a grey profile ("evengrey convert --to single-channel --profile FILE" does), or save it as rgb-neutral.';

/** A grey axis is off from here on: the limit at which a single picture counts as toned. */
const OFF = 1;

export default defineRule({
  id: 'profile-mismatch',
  description: 'A profile that does not fit the picture or the target.',
  severity: 'warning',
  scope: 'picture',
  needs: 'header',
  intents: ['grey', 'toned', 'colour'],
  options: noOptions,
  messages,
  page,
  *check({ pictures, targets }) {
    for (const picture of pictures) {
      if (picture.facts.unreadable) continue;
      const { profile, encoding, remarks } = picture.facts;
      const broken = remarks.find(({ code }) => code === 'bad-profile');
      if (broken) {
        const otherwise =
          picture.facts.space === 'grey' ? 'lighter or darker' : 'lighter, darker or in other colours';
        yield {
          picture,
          message: say(messages.broken, { otherwise, text: broken.text }),
          data: { what: 'broken' },
        };
      }
      if (!profile) continue;
      if (!broken && picture.facts.space === 'grey' && !fittingProfile(picture.facts))
        yield {
          picture,
          message: say(messages.channels, { profile: profile.description, way: GREY_PROFILE }),
          data: { what: 'channels', profile: profile.space },
        };
      const chroma = profile.greyAxisChroma ?? 0;
      if (picture.intent === 'grey' && encoding === 'rgb-neutral' && chroma > OFF)
        yield {
          picture,
          message: say(messages.axis, { profile: profile.description, chroma: chroma.toFixed(1) }),
          data: { what: 'grey-axis', chroma },
        };
      yield* forOtherPaper(picture, profile.description, targets);
    }
  },
});

function* forOtherPaper(
  picture: BookPicture,
  profile: string,
  targets: Parameters<typeof forTarget>[1],
): Iterable<Verdict> {
  const made = paperKindOfProfile(profile);
  if (picture.facts.space !== 'cmyk' || picture.facts.encoding === 'black-only' || !made) return;
  for (const target of picture.targets) {
    const printed = paperKindOfTarget(target);
    if (!keepsInks(target) || !printed || printed === made) continue;
    // Uncoated paper gains more, so a separation for it is lighter than coated paper wants.
    const tone = made === 'uncoated' ? 'light' : 'dark';
    yield {
      picture,
      message: say(messages.paper, { tone, made, printed, profile, target: forTarget(target, targets) }),
      data: { what: 'paper', made, printed, target: target.name },
    };
  }
}
