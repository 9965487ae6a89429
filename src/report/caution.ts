// no-unit-test: words alone; the tests of every format read them
/** What goes with every report that rests on forecasts. */
export const CAUTION =
  "A forecast is no proof: have a test print made before the run, and let the print house's own advice go first.";
