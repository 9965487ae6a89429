// no-unit-test: test/report/text/convert.test.ts reads its sentences
import type { Moved, RemedyProof } from '../shared/remedy';

type Found = Pick<RemedyProof, 'maxError' | 'meanError'> & { moved: Moved | null };

/** What a written file was found to be when it was read again. */
export const proofWords = (proof: Pick<RemedyProof, 'encoding'> & Found): string =>
  `Read again: ${proof.encoding}, ${errorWords(proof)}.`;

/** How far tones are off what was intended, and how far that is from the picture's own; its last sentence has no stop. */
export function errorWords({ maxError, meanError, moved }: Found): string {
  const off = `its lightness off by ${offWords(maxError, meanError)}`;
  return moved ? `${off}, from what was planned. ${movedWords(moved)}` : off;
}

/** Both in hundredths, of which the mean never says more than the most. */
function offWords(most: number, mean: number): string {
  if (most < 0.005) return 'less than L* 0.01';
  return `L* ${most.toFixed(2)} at most, ${mean < 0.005 ? 'less than 0.01' : mean.toFixed(2)} on average`;
}

function movedWords({ maxMove, meanMove, method, fit, blackPoint }: Moved): string {
  const by = [
    ...(method === null ? [] : [/^[a-z]/.test(method) ? `the method ${method}` : `the weights ${method}`]),
    ...(fit ? ['the curve'] : []),
    ...(blackPoint ? ['the scaling of the black point'] : []),
  ];
  return `On purpose ${by.join(' and ')} moved it by L* ${maxMove.toFixed(2)} at most, ${meanMove.toFixed(2)} on average, from the picture's own`;
}
