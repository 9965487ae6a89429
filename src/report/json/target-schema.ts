// no-unit-test: test/report/json/index.test.ts validates reports against it, test/report/schemas.test.ts the schema itself
import { ROUTES } from './forecast-schema';
import { ENCODINGS, list, number, object, orNull, text, words } from './schema-parts';

export const target = object({
  name: text('As the settings name it'),
  process: text('Process by its id'),
  paper: {
    description: 'Paper by its id, or its measured white',
    anyOf: [{ type: 'string' }, { type: 'object' }],
  },
  light: text('Light by its id'),
  route: words('What the print house does with the numbers', [...ROUTES, 'unknown']),
  encodings: orNull(list(words('', ENCODINGS)), 'Encodings that are taken; null: nobody said'),
  inkLimit: orNull(number('Percent'), "Total ink limit; null: the process's own"),
  profile: orNull(text(), 'Profile, relative to the root'),
  record: orNull(text(), 'Record, relative to the root'),
});
