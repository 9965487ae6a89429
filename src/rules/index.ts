import blockedShadows from './blocked-shadows';
import clipped from './clipped';
import encodingNotAccepted from './encoding-not-accepted';
import facingDifference from './facing-difference';
import formatNotPlaced from './format-not-placed';
import inkTotal from './ink-total';
import { type JudgeInput, type Judgement, judgeWith } from './judge';
import lightShift from './light-shift';
import likelyTint from './likely-tint';
import lowResolution from './low-resolution';
import mixedEncodings from './mixed-encodings';
import mixedProfiles from './mixed-profiles';
import narrowRange from './narrow-range';
import notFetched from './not-fetched';
import oddOneOut from './odd-one-out';
import profileMismatch from './profile-mismatch';
import residualChroma from './residual-chroma';
import type { Rule } from './rule';
import samePicture from './same-picture';
import toneMismatch from './tone-mismatch';
import unbalancedGrey from './unbalanced-grey';
import unevenCast from './uneven-cast';
import unreadable from './unreadable';
import untagged from './untagged';
import wrongExtension from './wrong-extension';

export type { JudgeInput, Judgement } from './judge';
export type { Rule } from './rule';
export { type RuleSettings, RuleSettingsError } from './settings';

/** Every rule, by id. */
export const rules: readonly Rule[] = [
  blockedShadows,
  clipped,
  encodingNotAccepted,
  facingDifference,
  formatNotPlaced,
  inkTotal,
  lightShift,
  likelyTint,
  lowResolution,
  mixedEncodings,
  mixedProfiles,
  narrowRange,
  notFetched,
  oddOneOut,
  profileMismatch,
  residualChroma,
  samePicture,
  toneMismatch,
  unbalancedGrey,
  unevenCast,
  unreadable,
  untagged,
  wrongExtension,
];

/** Every finding on a book. @throws RuleSettingsError, see `judgeWith`. */
export const judge = (input: JudgeInput): Judgement => judgeWith(rules, input);

/** The page of a rule, Markdown; null where there is no such rule. */
export const explain = (id: string): string | null => rules.find(rule => rule.id === id)?.page ?? null;
