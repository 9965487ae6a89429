import path from 'node:path';
import { kindOf, takes, toolOf } from '../../layout';
import type { Format } from '../../shared/picture';
import type { RemedyFormat, RemedyWish } from '../../shared/remedy';
import { storedAs, storedAsPng } from './format';
import { folded, isNamedAs, resultName } from './names';
import { type Lines, needsPng } from './placing';
import { lacksProfileAlone } from './profile-alone';
import { irreplaceable, unusable } from './refusal';
import { afterReplacement, needsNothing } from './skips';
import type { Asked, Copy, Decision, Order, Place } from './types';
import { wishKey } from './wish-key';

/**
 * What is to be done with each picture, in their order. Two pictures never get one result: the first by path has the
 * name, also where only some file systems would take the two names for one, so that a book comes out alike everywhere.
 * @param all sorted by path, each file once
 */
export function plan(all: readonly Asked[], wish: RemedyWish, place: Place, lines: Lines): Decision[] {
  const key = wishKey(wish);
  const takenBy = new Map<string, string>();
  return all.map((asked): Decision => {
    const again = place.kind === 'in-place' ? afterReplacement(asked, key) : null;
    if (again) return { asked, ...again };
    const broken = unusable(asked.pages);
    if (broken) return { asked, do: 'refuse', reason: broken };
    const nothing = needsNothing(
      asked,
      isToBePng(asked, wish, place, lines) ? { ...wish, format: 'png' } : wish,
    );
    const bare = lacksProfileAlone(asked, wish, place);
    const copy = nothing?.isRight && !bare ? copyOf(asked, wish, place, nothing.reason) : null;
    if (nothing && !copy && !bare) {
      const { reason, loses } = nothing;
      return { asked, do: 'skip', reason, loses };
    }
    const kept = place.kind === 'in-place' ? irreplaceable(asked, wish) : null;
    if (kept) return { asked, do: 'refuse', reason: kept };
    const decision: Decision = copy
      ? { asked, do: 'copy', order: copy }
      : { asked, do: 'convert', order: orderFor(asked, wish, place, lines) };
    const name = folded(decision.order.output);
    const other = takenBy.get(name);
    // in place every picture keeps the name it has
    if (other !== undefined && place.kind !== 'in-place')
      return {
        asked,
        do: 'refuse',
        reason: `Its result would have the same name as that of "${other}". Rename one of the two.`,
      };
    takenBy.set(name, asked.path);
    return decision;
  });
}

/** Whether a picture needs another format, right or not: a line that places it surely cannot, or it is meant by its name. */
function isToBePng({ path, link, named }: Asked, wish: RemedyWish, place: Place, lines: Lines): boolean {
  if (place.kind !== 'beside' || wish.format !== null || wish.to === 'black-only') return false;
  return lines.of({ path, link }).some(({ file }) => {
    const kind = kindOf(file)!;
    return !takes(kind, path) && (named || toolOf(kind).alone);
  });
}

function orderFor(asked: Asked, wish: RemedyWish, place: Place, lines: Lines): Order {
  const stored = storedAs(asked, wish, place);
  const told = [...recordTold(asked), ...namesTold(asked, place)];
  const order = { ...stored, told, ...namesOf(asked, stored, place) };
  const png = storedAsPng(asked, stored);
  if (!png || place.kind === 'in-place') return order;
  const { toldSince, ...storedSo } = png;
  const names = namesOf(asked, storedSo, place);
  const why = needsPng(lines.of(asked), lines.at(names.output));
  return why === null ? order : { ...storedSo, ...names, told: [...told, toldSince(why)] };
}

function namesOf(
  { path: at, file }: Asked,
  { format, wish }: Pick<Order, 'format' | 'wish'>,
  place: Place,
): Pick<Order, 'output' | 'shown'> {
  if (place.kind === 'in-place') return { output: file, shown: at };
  const name = resultName(path.basename(file), format, place.kind === 'beside' ? wish.to : null);
  const mirrored = path.posix.join(path.posix.dirname(at), name);
  if (place.kind === 'beside') return { output: path.join(path.dirname(file), name), shown: mirrored };
  return { output: path.join(place.folder, mirrored), shown: path.posix.join(place.shown, mirrored) };
}

/** Null: results have no folder of their own, so it lies among them already. @param reason why it stays as it is */
function copyOf(asked: Asked, wish: RemedyWish, place: Place, reason: string): Copy | null {
  if (place.kind !== 'folder') return null;
  const [{ encoding, format }] = asked.pages;
  const name = path.basename(asked.path);
  const isMisnamed = isWritten(format) && !isNamedAs(name, format);
  const named = isMisnamed ? resultName(name, format, null) : name;
  const mirrored = path.posix.join(path.posix.dirname(asked.path), named);
  return {
    output: path.join(place.folder, mirrored),
    shown: path.posix.join(place.shown, mirrored),
    told: [
      ...(encoding === wish.to ? [] : [reason]),
      ...(isMisnamed
        ? [`It is a ${format.toUpperCase()} by its content, and lies there under a name that says so.`]
        : []),
      ...namesTold(asked, place),
    ],
  };
}

const isWritten = (format: Format): format is RemedyFormat =>
  format === 'jpeg' || format === 'tiff' || format === 'png';

function namesTold({ link, otherNames, namesMeant }: Asked, place: Place): string[] {
  const told = link === null ? [] : [`"${link}" is a link to it.`];
  if (place.kind !== 'in-place') return told;
  const apart = 'Undoing does not join them again.';
  if (otherNames > 0)
    told.push(`The file has other names too (hard links): under those it stays as it was. ${apart}`);
  if (namesMeant > 1)
    told.push(
      `Other pictures here are names of the same file (hard links): each becomes one of its own. ${apart}`,
    );
  return told;
}

/** That a picture is itself the result of a conversion, as its own record says: in a copy of a book it is not noticed otherwise. */
function recordTold({ remedied, replacedBy }: Asked): string[] {
  if (remedied === null) return [];
  const again =
    'By its own record it was converted before, and a conversion of a conversion loses more than one of the original.';
  return [
    replacedBy === null
      ? `${again} Its original is not kept here: convert that, where you have it.`
      : `${again} Its original is kept: bring it back first ("--undo").`,
  ];
}
