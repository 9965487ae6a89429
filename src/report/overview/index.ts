import { facing } from '../../book/order';
import { processes } from '../../print';
import { encodingName } from '../../rules/words';
import type { BookReport, PictureReport } from '../../shared/finding';
import type { Doing, FacetId, Overview, OverviewPicture } from '../../shared/overview';
import type { Advice } from '../../shared/sheet';
import { closing } from '../counts';
import { adviceOn } from '../sheet/advice';
import { outlierWords } from '../sheet/outlier';
import { asksOf } from '../sheet/shared';
import { begin, verdict } from '../text/begin';
import { remarksOf } from '../text/remarks';
import { targetLines } from '../text/targets';
import { facetsOf } from './facets';

/** A value of `part` that stands for the book's own pictures. */
export const OWN_PART = '';

/**
 * A book as its one screen shows it.
 * @param spreads pictures that face each other, by their paths
 */
export function overviewOf(report: BookReport, spreads: readonly (readonly string[])[]): Overview {
  const pictures = report.pictures.map(picture => entryOf(picture, report));
  return {
    verdict: verdict(report),
    begin: begin(report),
    closing: closing(report.summary),
    targets: targetLines(report),
    shared: report.findings.map(({ rule, severity, message }) => ({ rule, severity, message })),
    remarks: remarksOf(report).flat(),
    facets: facetsOf(pictures, report, namesOf(report)),
    spreads: facing(report.pictures, spreads),
    pictures,
  };
}

export const doings: Record<Advice['kind'], Doing> = {
  send: 'send',
  convert: 'fix',
  mend: 'fix',
  ask: 'ask',
  leave: 'leave',
};

/** Rules with a finding on a picture, and those of the book's findings that ask for it to be changed. */
export function rulesOn(picture: PictureReport, { findings }: Pick<BookReport, 'findings'>): string[] {
  const asking = findings.filter(finding => finding.severity !== 'note' && asksOf(finding, picture));
  return [...new Set([...picture.findings, ...asking].map(({ rule }) => rule))];
}

function entryOf(picture: PictureReport, report: BookReport): OverviewPicture {
  const { path, facts, part, targets } = picture;
  const advice = adviceOn(picture, report.findings);
  const doing = doings[advice.kind];
  return {
    ...{ path, doing, advice },
    page: facts.page,
    content: facts.sha256.slice(0, 16),
    encoding: facts.encoding,
    outlier: outlierWords(picture, report.findings),
    has: {
      doing: [doing],
      rule: rulesOn(picture, report),
      encoding: [facts.encoding],
      part: [part ?? OWN_PART],
      target: targets.map(({ name }) => name),
    },
  };
}

const doingNames: Record<Doing, string> = {
  fix: 'fix',
  ask: 'ask the house',
  send: 'send',
  leave: 'not judged',
};

/** How each value is called. */
function namesOf({ targets }: BookReport): Record<FacetId, (id: string) => string> {
  const processName = (id: string) => processes.find(process => process.id === id)?.name ?? id;
  return {
    doing: id => doingNames[id as Doing],
    rule: id => id,
    encoding: id => encodingName(id as OverviewPicture['encoding']),
    part: id => (id === OWN_PART ? 'in no part' : id),
    target: id => {
      const target = targets.find(({ name }) => name === id);
      return target && target.process !== id ? `${id} (${processName(target.process)})` : processName(id);
    },
  };
}
