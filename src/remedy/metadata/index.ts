// no-unit-test: a list of names
export { type Carried, carriedFrom } from './carried';
export { withRecord } from './record';
export { upright } from './upright';
