import type { BookPicture } from '../../shared/finding';
import { byPart, grouped, ofPart, oneByOne, paths } from '../groups';
import { fittingProfile, profileName, spaceName, untagged } from '../profiles';
import { asTaken, type Recommend } from '../recommended';
import { type BookView, defineRule, type Verdict } from '../rule';
import { say } from '../say';
import { isTaken, stays } from '../stays';
import { isPhotographic, processName } from '../targets';
import { count, list } from '../words';
import page from './README.md';

interface Options {
  rgb: 'odd' | 'always';
}

const messages = {
  grey: 'This picture may print lighter or darker than it looks here: it carries no profile, so the print house decides what its greys mean (here {assumed}). Embed a grey profile ({way}), or ask which one the house assumes.',
  greyOdd:
    'This picture may print lighter or darker than its neighbours: they carry {profiles}, and it carries no profile (here {assumed}). Embed the profile of its neighbours ({way}).',
  rgb: 'Most print houses take this picture for sRGB, since it carries no profile; one that does not prints it lighter or darker. Export it again with the profile it was made in.',
  rgbOdd:
    'This picture may print lighter or darker than its neighbours: they carry {profiles}, and it carries no profile, which most print houses take for sRGB. Export it again with the profile it was made in.',
  ink: 'What the print house makes of this picture is a guess: its ink values carry no profile, and {process} has no such inks, so somebody must choose how to turn them into greys (here {assumed}). Embed the profile of the press they were made for{save}.',
  many: 'The {space} pictures{part} may print lighter or darker than they look here: {untagged} of {all} carry no profile{profiles}, so the print house decides what their numbers mean (here {assumed}). Embed one profile in all of them{way}{save}, or ask which one the house assumes. {names}',
} as const;

export default defineRule<Options>({
  id: 'untagged',
  description: 'A picture without a profile where that can change its tones in print.',
  severity: 'note',
  scope: 'both',
  needs: 'header',
  intents: ['grey', 'toned', 'colour'],
  options: {
    type: 'object',
    additionalProperties: false,
    properties: {
      rgb: {
        enum: ['odd', 'always'],
        default: 'odd',
        description:
          '"odd": an RGB picture is named only where others of its part carry a profile; "always": wherever it carries none.',
      },
    },
  },
  messages,
  page,
  *check({ pictures, recommend, isWaived }, options) {
    const readable = pictures.filter(
      picture =>
        picture.facts.space !== null &&
        picture.facts.encoding !== 'bilevel' &&
        !picture.facts.unreadable &&
        isLeft(picture, recommend),
    );
    for (const part of byPart(readable))
      for (const alike of grouped(part, picture => picture.facts.space!))
        yield* judgeAlike(alike, options, { recommend, isWaived });
  },
});

/**
 * What becomes another file gets a profile then, where it is known how it is printed. Of inks both ways out are told here.
 */
const isLeft = (picture: BookPicture, recommend: Recommend): boolean =>
  picture.facts.space === 'cmyk' || !picture.targets.length ? isTaken(picture) : stays(picture, recommend);

/** Pictures of one part and one space. */
function* judgeAlike(
  alike: BookPicture[],
  options: Options,
  { recommend, isWaived }: Pick<BookView, 'recommend' | 'isWaived'>,
) {
  const { space } = alike[0].facts;
  // a profile for other channels is `profile-mismatch`'s matter, and no example to follow
  const tagged = alike.filter(({ facts }) => facts.space === 'lab' || fittingProfile(facts));
  let bare = alike.filter(({ facts }) => untagged(facts));
  if (space === 'rgb' && tagged.length === 0 && options.rgb === 'odd') return;
  // Ink values that go to the press as they are need no profile to say what they mean.
  if (space === 'cmyk') bare = bare.filter(picture => picture.targets.some(isPhotographic));
  // one grey profile that is unlike most is no example to follow
  const examples = space === 'grey' && tagged.length <= bare.length ? [] : tagged;
  const one = (picture: BookPicture): Verdict => ({
    picture,
    message: messageFor(picture, examples, recommend),
    data: { space, assumed: picture.facts.assumed },
  });
  const all = (pictures: readonly BookPicture[]): Verdict => {
    const names = paths(pictures);
    return {
      message: say(messages.many, {
        space: spaceName[space!],
        part: ofPart(alike[0]),
        untagged: names.length,
        all: count(paths(alike).length, 'picture'),
        assumed: assumption(pictures[0]),
        profiles: tagged.length > 0 ? `, the others ${listOfProfiles(tagged)}` : '',
        way: space === 'grey' ? ` (${BY_CONVERSION})` : ' where they are exported',
        save: space === 'cmyk' ? saveWithout(pictures[0], recommend, 'them') : '',
        names: tagged.length > 0 ? `They are ${list(names)}.` : '',
      }),
      data: { space, pictures: names },
    };
  };
  yield* oneByOne(bare, { one, all, isWaived });
}

const BY_CONVERSION = '"evengrey convert --to single-channel --profile FILE" does';
const BY_NEIGHBOUR = `${BY_CONVERSION}, where FILE can be one of them`;

const listOfProfiles = (tagged: readonly BookPicture[]): string =>
  list([...new Set(tagged.map(({ facts }) => profileName(facts)!))]);

function messageFor(picture: BookPicture, tagged: BookPicture[], recommend: Recommend): string {
  const assumed = assumption(picture);
  const profiles = listOfProfiles(tagged);
  switch (picture.facts.space) {
    case 'rgb':
      return tagged.length > 0 ? say(messages.rgbOdd, { profiles }) : say(messages.rgb, {});
    case 'cmyk':
      return say(messages.ink, {
        assumed,
        process: processName(picture.targets.find(isPhotographic)!),
        save: saveWithout(picture, recommend, 'it'),
      });
    default:
      return tagged.length > 0
        ? say(messages.greyOdd, { profiles, assumed, way: BY_NEIGHBOUR })
        : say(messages.grey, { assumed, way: BY_CONVERSION });
  }
}

/** Saving in other inks would not end it. */
function saveWithout(picture: BookPicture, recommend: Recommend, what: 'it' | 'them'): string {
  const target = picture.targets.find(isPhotographic)!;
  const recommendation = recommend(picture, target);
  const ends = recommendation?.encoding === 'rgb-neutral' || recommendation?.encoding === 'single-channel';
  return picture.intent === 'grey' && ends ? `, or save ${what} as ${asTaken(recommendation, target)}` : '';
}

/** The facts say it as a sentence of its own ("No profile: the greys were read as ..."); here it stands in brackets. */
function assumption({ facts }: BookPicture): string {
  const words = (facts.assumed ?? 'nothing is assumed').replace(/^No profile: /, '').replace(/\.$/, '');
  return words[0].toLowerCase() + words.slice(1);
}
