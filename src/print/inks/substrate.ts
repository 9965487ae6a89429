/**
 * Moves one tristimulus value to another paper and, where it is known, another darkest colour; all between in
 * proportion. With the darkest colour kept it is the backing correction of the CGATS Technical Reports,
 * X2 = [X1 (Xw2 - Xk) + Xk (Xw1 - Xw2)] / (Xw1 - Xk), which serves a change of paper as well.
 * Returns slope and intercept: X2 = slope X1 + intercept.
 */
export function rangeCorrection(paper: number, newPaper: number, darkest: number, newDarkest: number) {
  const slope = (newPaper - newDarkest) / (paper - darkest);
  return { slope, intercept: newDarkest - slope * darkest };
}
