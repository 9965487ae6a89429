// no-unit-test: test/report/chart/index.test.ts draws a chart and knows it again
/** Class of the root of every chart that Evengrey draws. */
export const CHART = 'evengrey-forecast';

/** Whether a text that may be cut off begins as a chart of Evengrey's does. */
export const isChart = (text: string): boolean => new RegExp(`^<svg [^>]*class="${CHART}"`).test(text);
