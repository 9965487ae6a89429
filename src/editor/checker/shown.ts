import { formatOf, pngWouldDo } from '../../remedy/format';
import { greyMethods } from '../../remedy/grey/methods';
import { luminanceStays } from '../../remedy/luminance';
import { plainWish } from '../../remedy/wish';
import { doings, rulesOn } from '../../report/overview';
import { adviceOn } from '../../report/sheet/advice';
import { basisWords } from '../../rules/targets';
import type { BookEntry } from '../../shared/checker-protocol';
import type { BookReport, Finding, PictureReport } from '../../shared/finding';
import type { Basis } from '../../shared/forecast';
import type { PlacedFinding } from '../../shared/layout-places';
import type { PictureFacts } from '../../shared/picture';
import type { RemedyEncoding, RemedyFormat } from '../../shared/remedy';
import type { ShownFinding } from '../../shared/sheet';

/** A finding is read alone in the editor: what its forecast rests on, told in a report's head, stands behind it. */
export function shown({ rule, severity, message, data }: Finding): ShownFinding {
  if (typeof data.basis !== 'string') return { rule, severity, message };
  const words = basisWords(data.basis as Basis);
  return { rule, severity, message: `${message} ${words[0].toUpperCase()}${words.slice(1)}.` };
}

/**
 * The findings on pictures by path, of all pages of each; pictures without any are left out.
 * @param recommended what a picture should be stored as
 */
export function findingsByPicture(
  pictures: readonly PictureReport[],
  recommended: (picture: PictureReport) => RemedyEncoding,
): Map<string, PlacedFinding[]> {
  const byPath = new Map<string, PlacedFinding[]>();
  const paged = new Set(pictures.flatMap(({ path, facts }) => (facts.page > 1 ? path : [])));
  for (const picture of pictures) {
    const { path, facts, findings } = picture;
    const onPage = findings.map(finding => {
      const { message, ...rest } = shown(finding);
      // of a file of several pages nothing is converted
      const fixed = paged.has(path) ? NOTHING : fixOf(picture, finding, recommended);
      return {
        ...{ ...rest, ...fixed },
        message: facts.page > 1 ? `Page ${facts.page}: ${message}` : message,
        ...(fixed.fix && !fixed.formatAlone && mayBeMeant(picture, finding)),
        ...rightName(picture, finding),
      };
    });
    if (onPage.length) byPath.set(path, [...(byPath.get(path) ?? []), ...onPage]);
  }
  return byPath;
}

type Fixed = Pick<PlacedFinding, 'fix' | 'fixAs' | 'formatAlone'>;

const NOTHING: Fixed = { fix: null, fixAs: null };

/** What to convert the picture to because of one finding: where the advice on it alone would be to convert. */
function fixOf(
  picture: PictureReport,
  finding: Finding,
  recommended: (picture: PictureReport) => RemedyEncoding,
): Fixed {
  const asks = (one: Finding) => adviceOn({ ...picture, findings: [one] }, []).kind === 'convert';
  if (asks(finding)) return fixOn(picture, recommended(picture));
  if (finding.rule !== 'format-not-placed') return NOTHING;
  return picture.findings.some(asks)
    ? fixOn(picture, recommended(picture))
    : inOtherFormat(picture, recommended);
}

/** A picture whose format alone is wrong keeps its encoding, where another format holds that. */
function inOtherFormat(
  picture: PictureReport,
  recommended: (picture: PictureReport) => RemedyEncoding,
): Fixed {
  const { facts, intent } = picture;
  // what is in colour, and what cannot be read, is saved by the program that it comes from
  if (facts.unreadable || facts.encoding === 'colour' || intent === 'colour') return NOTHING;
  const own = KEPT.find(encoding => encoding === facts.encoding);
  if (!own) return fixOn(picture, recommended(picture));
  const fixAs = formatUnlike(facts, own);
  return fixAs ? { fix: own, fixAs, formatAlone: true } : NOTHING;
}

/** Encodings that a PNG holds, too. */
const KEPT: readonly RemedyEncoding[] = ['rgb-neutral', 'single-channel', 'rgb-toned'];

/** Nobody said so yet of its tone, or of colour that is left over unless somebody wants it. */
function mayBeMeant(
  { facts, intentStated }: PictureReport,
  { rule }: Finding,
): Pick<PlacedFinding, 'meant'> | null {
  if (intentStated) return null;
  if (rule === 'residual-chroma') return { meant: facts.encoding === 'colour' ? 'colour' : 'toned' };
  return facts.encoding === 'rgb-toned' ? { meant: 'toned' } : null;
}

function rightName({ path }: PictureReport, { data }: Finding): Pick<PlacedFinding, 'rename'> | null {
  const { extension, right } = data;
  return typeof extension === 'string' && typeof right === 'string'
    ? { rename: `${path.slice(0, -extension.length)}${right}` }
    : null;
}

/** What to convert a picture to, and the format that the result has where that is another; null: nothing. */
export function fixOn({ facts }: PictureReport, to: RemedyEncoding): Pick<PlacedFinding, 'fix' | 'fixAs'> {
  return to === facts.encoding ? { fix: null, fixAs: null } : { fix: to, fixAs: formatUnlike(facts, to) };
}

const NAMES: Record<RemedyFormat, string> = { jpeg: 'JPEG', png: 'PNG', tiff: 'TIFF' };

/** The format of a result that layouts place, where it is not the picture's: few of them place a TIFF. */
function formatUnlike(facts: PictureFacts, to: RemedyEncoding): string | null {
  const wish = plainWish({ to, grey: greyMethods[0].method });
  const alone = formatOf(facts.format, wish, false);
  const format = pngWouldDo({ format: alone, to }) ? 'png' : alone;
  if (format === facts.format) return null;
  // whether a JPEG keeps its tones shows only when it is made
  const stays = luminanceStays(facts.format === 'jpeg', facts, wish);
  return stays === 'no' ? NAMES[format] : `${NAMES[format]} or ${NAMES.jpeg}`;
}

/** Every picture of a report in short, in its order. */
export const entriesOf = (report: BookReport): BookEntry[] =>
  report.pictures.map(picture => ({
    path: picture.path,
    page: picture.facts.page,
    encoding: picture.facts.encoding,
    doing: doings[adviceOn(picture, report.findings).kind],
    rules: rulesOn(picture, report),
  }));
