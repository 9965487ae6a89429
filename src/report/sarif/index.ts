import { version } from '../../../package.json';
import type { BookReport } from '../../shared/finding';
import { canonical } from '../json/number';
import type { Place } from '../place';
import { everyFinding } from '../told';
import { Artifacts, BASE } from './artifacts';
import { FINGERPRINT, fingerprintsOf } from './fingerprint';
import { descriptorOf } from './rule';

const SCHEMA = 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json';

/**
 * The report of a check as SARIF 2.1.0 (OASIS, Static Analysis Results Interchange Format): worst first, no absolute
 * paths, no times, the same to the byte for the same book.
 */
export function bookSarif(report: BookReport, place: Place): string {
  const told = everyFinding(report);
  const fingerprints = fingerprintsOf(told);
  const ids = [...new Set(told.map(({ finding }) => finding.rule))].sort();
  const artifacts = new Artifacts(place);
  const results = told.map(({ finding: { rule, severity, message, data }, picture }, i) => ({
    ruleId: rule,
    ruleIndex: ids.indexOf(rule),
    level: severity,
    message: { text: literal(message) },
    locations: [picture ? artifacts.picture(picture) : artifacts.book()],
    partialFingerprints: { [FINGERPRINT]: fingerprints[i] },
    properties: { data: canonical(data) },
  }));
  const run = {
    tool: { driver: { name: 'Evengrey', semanticVersion: version, rules: ids.map(descriptorOf) } },
    // several books of a repository are several analyses: one must not end the findings of another
    automationDetails: { id: `evengrey/${place.folder}` },
    originalUriBaseIds: {
      [BASE]: { description: { text: 'The root of the repository, or of the book where there is none.' } },
    },
    invocations: [
      {
        executionSuccessful: true,
        toolExecutionNotifications: report.notices.map(notice => ({
          level: 'note',
          message: { text: literal(notice) },
        })),
      },
    ],
    artifacts: artifacts.list,
    results,
  };
  return `${JSON.stringify({ $schema: SCHEMA, version: '2.1.0', runs: [run] }, null, 2)}\n`;
}

/** SARIF reads {0} in a message as a place to fill in; braces of a file's name are doubled (section 3.11.5). */
const literal = (text: string) => text.replace(/[{}]/g, '$&$&');
