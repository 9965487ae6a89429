// no-unit-test: words alone; test/report/text/forecast.test.ts and test/report/chart/index.test.ts read them
/** Why a readable picture has no forecast: it is in colour, or no pixel of it prints. */
export const nothingWords = (inColour: boolean): string =>
  inColour
    ? 'Nothing can be forecast: the picture is in colour, and greys alone are forecast.'
    : 'Nothing can be forecast: no pixel of the picture prints, since all of it is transparent.';
