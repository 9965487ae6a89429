// no-unit-test: test/report/text/convert.test.ts reads its sentences
import type { RemedyProof } from '../shared/remedy';

/** What a written file was found to be when it was read again. */
export const proofWords = (proof: Pick<RemedyProof, 'encoding' | 'maxError' | 'meanError'>): string =>
  `Read again: ${proof.encoding}, ${errorWords(proof)}.`;

/** How far tones are off what was intended. */
export const errorWords = ({ maxError, meanError }: Pick<RemedyProof, 'maxError' | 'meanError'>): string =>
  `its lightness off by L* ${maxError.toFixed(2)} at most, ${meanError.toFixed(3)} on average`;
