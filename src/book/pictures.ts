import type { BookPicture } from '../shared/finding';
import type { PictureFacts } from '../shared/picture';
import type { Target } from '../shared/target';
import { matcher } from './discovery/globs';
import type { Settings } from './settings/settings';

/** What the settings say of a picture; everything of a `BookPicture` but what was read and forecast. */
export type Standing = Pick<
  BookPicture,
  'intent' | 'intentStated' | 'part' | 'targets' | 'placed' | 'reference'
>;

/** Finds a picture's intent, part, targets and printed size by its path. */
export function standings(settings: Settings): (path: string) => Standing {
  const intents = settings.intents.map(group => ({ ...group, names: matcher(group.pictures) }));
  const parts = settings.parts.map(part => ({ ...part, names: matcher(part.pictures) }));
  const placements = settings.placements.map(placement => ({
    ...placement,
    names: matcher([placement.picture]),
  }));
  const claimed = new Set(parts.flatMap(part => part.targets ?? []));
  const rest = settings.targets.filter(target => !claimed.has(target.name));
  const ofNoPart = rest.length ? rest : settings.targets;
  const ofPart = (names: string[] | null): Target[] => {
    const chosen = settings.targets.filter(target => names?.includes(target.name));
    return chosen.length ? chosen : settings.targets;
  };
  return path => {
    const intent = intents.find(group => group.names(path));
    const part = parts.find(p => p.names(path));
    // a size written for the very path goes before one for many
    const placed =
      placements.find(placement => placement.picture === path) ?? placements.find(p => p.names(path));
    return {
      intent: intent?.intent ?? 'grey',
      intentStated: intent !== undefined,
      part: part?.name ?? null,
      targets: part ? ofPart(part.targets) : ofNoPart,
      reference: intent?.reference ?? null,
      placed: placed ? { width: placed.width, height: placed.height } : null,
    };
  };
}

/** One entry a page, without forecasts. */
export function bookPictures(
  path: string,
  pages: readonly PictureFacts[],
  standing: Standing,
): BookPicture[] {
  return pages.map(facts => ({ path, facts, ...standing, ...meantBy(facts, standing), forecasts: [] }));
}

/** A tone that a conversion gave on purpose is meant, unless the settings say otherwise. */
function meantBy({ remedied }: PictureFacts, { intentStated }: Standing): Partial<Standing> {
  return remedied?.toned && !intentStated ? { intent: 'toned', intentStated: true } : {};
}
