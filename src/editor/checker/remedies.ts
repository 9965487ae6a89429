import { defaultTarget, processes } from '../../print';
import { encodingChoices } from '../../remedy/choices';
import { type CandidateConverters, createConverters } from '../../remedy/converters';
import { greyMethods } from '../../remedy/grey/methods';
import { placingWords } from '../../remedy/plan/placing';
import { errorWords } from '../../report/proof';
import { changesOf } from '../../report/sheet/changes';
import { encodings } from '../../report/sheet/encoding';
import type { Recommendation } from '../../rules/recommended';
import type { CheckerAnswers } from '../../shared/checker-protocol';
import type { PictureReport } from '../../shared/finding';
import type { Encoding, Format } from '../../shared/picture';
import type { BeforeAndAfter, MethodPictures, Remedies } from '../../shared/remedies';
import type { RemedyEncoding, RemedyFormat } from '../../shared/remedy';
import type { LightId, Target } from '../../shared/target';
import { wishOf } from './convert';
import { forecastsOn } from './lone-picture';

/** What can be made of pictures, and what would come of it: shown, never written. Its converters rest while nobody asks. */
export class BookRemedies {
  #converters: CandidateConverters | undefined;

  constructor(private readonly converterFile: string) {}

  choices(known: { picture: PictureReport; recommendation: Recommendation | null } | null): Remedies {
    return {
      encodings: [...encodingChoices],
      methods: greyMethods.map(({ id, name, does }) => ({ id, name, does })),
      recommended: recommendedFor(known),
    };
  }

  /** @throws RemedyError and others whose message is for the user; the signal's reason when cancelled */
  async beforeAndAfter(
    { file, light, to, method, longEdge }: CheckerAnswers['candidate']['request'],
    { picture }: { picture: PictureReport },
    signal: AbortSignal,
  ): Promise<BeforeAndAfter> {
    const wish = wishOf({ to, method });
    const made = await this.#started().candidate({ file, wish, longEdge }, signal);
    const { raster, facts, told } = made;
    const after = { facts, ...forecastsOn(targetsOf(picture, light), facts) };
    const named = (id: Encoding) => ({ id, name: encodings[id].name });
    return {
      ...{ to, method, raster },
      told: [...told, ...placingWordsOf(picture, facts.format, to)],
      from: named(picture.facts.encoding),
      found: named(facts.encoding),
      proof: `What would be stored was judged as it is: ${facts.encoding}, ${errorWords(made)}.`,
      changes: changesOf(picture, after),
    };
  }

  methods(
    { file, longEdge }: CheckerAnswers['methods']['request'],
    signal: AbortSignal,
  ): Promise<MethodPictures> {
    const methods = greyMethods.map(({ id, method }) => ({ id, method }));
    return this.#started().methods({ file, methods, longEdge }, signal);
  }

  async close(): Promise<void> {
    await this.#converters?.close();
  }

  #started(): CandidateConverters {
    return (this.#converters ??= createConverters({ converterFile: this.converterFile }));
  }
}

/** What the layouts of its book that place the picture make of a result beside it. */
const placingWordsOf = ({ path, facts, placedAt = [] }: PictureReport, format: Format, to: RemedyEncoding) =>
  placingWords(placedAt, { path, inks: facts.space === 'cmyk' }, { format: format as RemedyFormat, to });

/** A picture in colour that is in no book has none of its own. */
function targetsOf({ targets }: PictureReport, light: LightId | null): Target[] {
  if (targets.length) return targets;
  return processes.map(({ id }) => defaultTarget(id)).map(target => (light ? { ...target, light } : target));
}

/** A tie of the chances may be wide, so none of these says more than that nothing is clearly better. */
const WHY: Record<Recommendation['why'], string> = {
  majority: 'most of this part of the book is stored so',
  even: 'by the forecast no other prints clearly less often with a visible tint',
  range:
    'by the forecast no other prints clearly less often with a visible tint, and others have a weaker black',
  read: 'prints of this house that were sent so have been read, and the others are less sure',
  frequent:
    'by the forecast no other prints clearly less often with a visible tint or with a deeper black, and none leaves less to convert',
};
const UNFORECAST = 'nothing is forecast without a process, and no other leaves less to convert';

export function recommendedFor(
  known: { picture: PictureReport; recommendation: Recommendation | null } | null,
): Remedies['recommended'] {
  const usual = { to: 'rgb-neutral' as const, why: 'nothing that is known speaks for another' };
  if (!known) return usual;
  const { picture, recommendation } = known;
  if (picture.intent === 'toned') return { to: 'rgb-toned', why: 'the settings say that its tone is meant' };
  const choice = encodingChoices.find(({ id }) => id === recommendation?.encoding);
  if (!choice || !recommendation) return usual;
  const guessed = recommendation.why === 'frequent' && !picture.targets.length;
  return { to: choice.id as RemedyEncoding, why: guessed ? UNFORECAST : WHY[recommendation.why] };
}
