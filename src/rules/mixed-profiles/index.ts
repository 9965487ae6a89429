import type { BookPicture } from '../../shared/finding';
import type { Space } from '../../shared/picture';
import { byPart, grouped, ofPart, paths } from '../groups';
import { fittingProfile, profileName, spaceName } from '../profiles';
import { defineRule, greyOrToned, noOptions } from '../rule';
import { say } from '../say';
import { stays } from '../stays';
import { shiftUnread } from '../unread-profile';
import { list } from '../words';
import page from './README.md';

const messages = {
  mixed:
    'Pictures that look equally light on screen may print unequally: the {space} pictures{part} are read by {number} different profiles, {profiles}. {unread}{way}',
} as const;

export default defineRule({
  id: 'mixed-profiles',
  description: 'Several profiles among the pictures of one part.',
  severity: 'note',
  scope: 'book',
  compares: true,
  needs: 'header',
  intents: greyOrToned,
  options: noOptions,
  messages,
  page,
  *check({ pictures, recommend }) {
    const named = pictures.filter(
      picture =>
        picture.facts.space !== null &&
        !picture.facts.unreadable &&
        profileName(picture.facts) !== null &&
        stays(picture, recommend),
    );
    for (const part of byPart(named))
      for (const space of grouped(part, picture => picture.facts.space!)) {
        const groups = grouped(space, picture => profileName(picture.facts)!).sort(
          (x, y) => y.length - x.length,
        );
        if (groups.length < 2) continue;
        const names = groups.map(group => profileName(group[0].facts)!);
        yield {
          message: say(messages.mixed, {
            space: spaceName[space[0].facts.space!],
            part: ofPart(space[0]),
            number: groups.length,
            profiles: list(
              groups.map((group, i) => `${names[i]} (${counted(group)})`),
              5,
            ),
            unread: unreadWords(space),
            way: wayOut(space[0].facts.space!, groups[0].length > groups[1].length ? names[0] : null),
          }),
          data: {
            space: space[0].facts.space,
            groups: groups.map((group, i) => ({ profile: names[i], pictures: paths(group) })),
          },
        };
      }
  },
});

/** From here on it is told what becomes of pictures whose profile is not read, L*. Own choice. */
const TOLD = 3;

/** What a print house makes of them that reads no profiles: of the picture that moves most. */
function unreadWords(pictures: readonly BookPicture[]): string {
  const shifts = pictures.map(({ path, facts }) => ({ path, shift: shiftUnread(facts) }));
  const { path, shift } = shifts.reduce((most, each) =>
    Math.abs(each.shift) > Math.abs(most.shift) ? each : most,
  );
  if (Math.abs(shift) < TOLD) return '';
  return `Where profiles are not read, ${path} prints ${shift > 0 ? 'lighter' : 'darker'} by up to about L* ${Math.abs(shift).toFixed(0)}. `;
}

/** How many pictures a profile is read for, and how many of them do not say so themselves. */
function counted(group: readonly BookPicture[]): string {
  const bare = group.filter(({ facts }) => fittingProfile(facts) === null).length;
  if (!bare) return `${group.length}`;
  const of = bare < group.length ? `${bare} of them ` : '';
  return `${group.length}, ${of}taken for it, since ${bare === 1 ? 'it carries' : 'they carry'} none`;
}

/** What really ends it. `most`: the profile of most of them, if one is. */
function wayOut(space: Space, most: string | null): string {
  if (space === 'grey')
    return 'Convert all of them to one: "evengrey convert --to single-channel --profile FILE" does, into the grey profile of FILE, which can be one of these pictures.';
  const fewest = most ? `${most} leaves the fewest to export` : 'the work is the same whichever it is';
  return `Convert all of them to one in the program that exported them; ${fewest}. "evengrey convert" leaves a picture that is stored as asked in the profile that it has.`;
}
