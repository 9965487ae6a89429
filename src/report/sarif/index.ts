import { version } from '../../../package.json';
import type { BookReport } from '../../shared/finding';
import { askedBy, askedWords } from '../asked';
import { blankAt } from '../blank-at';
import { canonical } from '../json/number';
import type { Place } from '../place';
import { slipsApart } from '../slips';
import { everyFinding, everyWaived, type Told } from '../told';
import type { Trouble } from '../trouble';
import { Artifacts, BASE } from './artifacts';
import { FINGERPRINT, fingerprintsOf } from './fingerprint';
import { descriptorOf } from './rule';

const SCHEMA = 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json';

/**
 * The report of a check as SARIF 2.1.0 (OASIS, Static Analysis Results Interchange Format): worst first, no absolute
 * paths, no times, the same to the byte for the same book.
 */
export function bookSarif(report: BookReport, place: Place, troubles: readonly Trouble[] = []): string {
  const told = [...everyFinding(report), ...everyWaived(report)];
  const fingerprints = fingerprintsOf(told);
  const ids = [...new Set(told.map(({ finding }) => finding.rule))].sort();
  const artifacts = new Artifacts(place);
  const { slips, notices } = slipsApart(report, place);
  const results = told.map(({ finding, picture }, i) => ({
    ruleId: finding.rule,
    ruleIndex: ids.indexOf(finding.rule),
    level: finding.severity,
    ...placed({ finding, picture }, report, artifacts),
    partialFingerprints: { [FINGERPRINT]: fingerprints[i] },
    ...('reason' in finding && { suppressions: [suppression(finding.reason)] }),
    properties: { data: canonical(finding.data) },
  }));
  const run = {
    tool: { driver: { name: 'Evengrey', version, semanticVersion: version, rules: ids.map(descriptorOf) } },
    // several books of a repository are several analyses: one must not end the findings of another
    automationDetails: { id: `evengrey/${place.folder}` },
    originalUriBaseIds: {
      [BASE]: { description: { text: 'The root of the repository, or of the book where there is none.' } },
    },
    invocations: [
      {
        executionSuccessful: !troubles.length,
        toolExecutionNotifications: [
          ...troubles.map(({ message, at }) => ({
            level: 'error',
            message: { text: literal(message) },
            ...(at && { locations: [artifacts.text(at)] }),
          })),
          ...slips.map(({ slip, at }) => ({
            level: 'warning',
            message: { text: literal(slip.message) },
            ...(at && { locations: [artifacts.text(at)] }),
          })),
          ...notices.map(notice => ({ level: 'note', message: { text: literal(notice) } })),
        ],
      },
    ],
    artifacts: artifacts.list,
    results,
  };
  return `${JSON.stringify({ $schema: SCHEMA, version: '2.1.0', runs: [run] }, null, 2)}\n`;
}

/**
 * What a result says, and of what: a finding about the book also of every picture that it asks to be changed; of a picture
 * that is not there at the line that places it, and also of where it would lie.
 */
function placed({ finding, picture }: Told, { pictures }: BookReport, artifacts: Artifacts) {
  const blank = picture && blankAt(picture);
  const asked = picture ? [] : askedBy(finding, pictures);
  const related = blank ? [picture] : asked;
  return {
    message: { text: literal(finding.message + askedWords(finding, asked)) },
    locations: [blank ? artifacts.layout(blank) : picture ? artifacts.picture(picture) : artifacts.book()],
    ...(related.length && { relatedLocations: related.map(one => artifacts.picture(one)) }),
  };
}

/** A waiver: somebody decided, outside the picture, to live with it. */
const suppression = (reason: string) => ({
  kind: 'external',
  status: 'accepted',
  ...(reason && { justification: reason }),
});

/** SARIF reads {0} in a message as a place to fill in; braces of a file's name are doubled (section 3.11.5). */
const literal = (text: string) => text.replace(/[{}]/g, '$&$&');
