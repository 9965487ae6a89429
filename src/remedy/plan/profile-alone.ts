// no-unit-test: test/remedy/plan/index.test.ts plans by it
import { untagged } from '../../rules/profiles';
import type { RemedyWish } from '../../shared/remedy';
import { luminanceStays } from '../luminance';
import { storedAs } from './format';
import type { Asked, Place } from './types';

/**
 * Whether a picture that is right already is to get a profile before it lies among results that carry one: a set that is
 * made is to be even. Only where nothing else of it changes, neither its pixels nor its format.
 */
export function lacksProfileAlone(asked: Asked, wish: RemedyWish, place: Place): boolean {
  const [facts] = asked.pages;
  const { to } = wish;
  if (place.kind !== 'folder' || facts.encoding !== to || !untagged(facts) || facts.palette) return false;
  if (to !== 'rgb-neutral' && to !== 'single-channel') return false;
  if (facts.format === 'jpeg') return luminanceStays(asked.luminance, facts, wish) === 'surely';
  const { format, bits } = storedAs(asked, wish, place);
  return format === facts.format && bits === facts.bits;
}
