// no-unit-test: a list for the build; test/report/schemas.test.ts checks what stands in media/schemas
import { language } from '../book/settings/words';
import { waiversSchema } from '../book/waivers/schema';
import { compareReportSchema } from './compare/schema';
import { withoutFaults } from './editor-schema';
import { checkReportSchema } from './json/check-schema';
import { convertReportSchema, undoReportSchema } from './json/convert-schema';
import { forecastReportSchema } from './json/forecast-schema';

/** The JSON schemas that are shipped in `media/schemas`, by file name. Written by the build. */
export const schemas: Record<string, Record<string, unknown>> = {
  'evengrey.schema.json': language.settings,
  'evengrey.editor.schema.json': withoutFaults(language.settings),
  'house.schema.json': language.house,
  'waivers.schema.json': waiversSchema,
  'waivers.editor.schema.json': withoutFaults(waiversSchema),
  'check-report.schema.json': checkReportSchema,
  'compare-report.schema.json': compareReportSchema,
  'forecast-report.schema.json': forecastReportSchema,
  'convert-report.schema.json': convertReportSchema,
  'undo-report.schema.json': undoReportSchema,
};
