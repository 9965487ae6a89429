// no-unit-test: test/cli/actions/convert.test.ts runs the built program with and without a record
import type { Settings } from '../book/settings/settings';
import { defaultTarget, processes } from '../print';
import { counterTint } from '../remedy/tone/counter-tint';
import { fitCurve } from '../remedy/tone/fit';
import { shownCurve } from '../remedy/tone/shown';
import type { Fitting } from '../shared/conversion';
import type { RemedyWish } from '../shared/remedy';
import type { ProcessId, Target } from '../shared/target';
import { Failure } from './failure';
import { known, meantOr } from './known';
import type { ConvertVerbOptions } from './verbs/convert';

/**
 * The wish with its tones fitted and its tint answered, as the options ask. One curve and one tint for all pictures:
 * they are to go together, and a picture named by itself is to come out as it does among others.
 * @throws Failure where the target is not known, RemedyError where it has no record to answer
 */
export function fitted(
  wish: RemedyWish,
  options: ConvertVerbOptions,
  settings: Pick<Settings, 'targets'>,
): { wish: RemedyWish; fitting: Fitting } {
  const { fit: fitTo, counterTint: counterOf, against } = options;
  refuseIdle(options);
  const strength = options.strength?.[0] ?? 1;
  const fitting: Fitting = { fit: null, counterTint: null };
  const asked = { ...wish };
  if (fitTo !== undefined) {
    const target = targetNamed('fit', fitTo, settings.targets);
    const { curve, tones, told } = fitCurve(target, wish.to, { shadows: strength, lighten: strength }, null);
    asked.curve = curve;
    fitting.fit = {
      target: target.name,
      process: target.process,
      strength,
      moves: curve !== null,
      tones: shownCurve(curve, tones),
      told,
    };
  }
  if (counterOf !== undefined) {
    const what = (known('thing to answer', against, ['print', 'paper'], 'against') ?? 'print') as
      | 'print'
      | 'paper';
    const target = targetNamed('counter-tint', counterOf, settings.targets);
    const { tone, told } = counterTint(target, {
      strength,
      against: what === 'print' ? 'print' : 'print and paper',
    });
    asked.tone = tone;
    fitting.counterTint = { target: target.name, against: what, strength, a: tone.a, b: tone.b, told };
  }
  return { wish: asked, fitting };
}

function refuseIdle({ fit, counterTint, against, strength, tone, to }: ConvertVerbOptions): void {
  if (counterTint !== undefined && to !== 'rgb-toned')
    throw new Failure('--counter-tint goes with --to rgb-toned only: the result has a tint on purpose.');
  if (counterTint !== undefined && tone !== undefined)
    throw new Failure('--tone and --counter-tint contradict each other: leave one of them out.');
  if (against !== undefined && counterTint === undefined)
    throw new Failure('--against goes with --counter-tint only. Leave it out, or name a target there.');
  if (strength !== undefined && fit === undefined && counterTint === undefined)
    throw new Failure('--strength goes with --fit or --counter-tint only. Leave it out.');
}

/** A target of the book, or a process as it is by default. */
function targetNamed(option: string, name: string, targets: readonly Target[]): Target {
  const target = targets.find(each => each.name === name);
  if (target) return target;
  if (processes.some(({ id }) => id === name)) return defaultTarget(name as ProcessId);
  const names = [...targets.map(each => each.name), ...processes.map(({ id }) => id)];
  throw new Failure(
    `--${option}: "${name}" is neither a target of the book nor a process. ${meantOr(name, names)}`,
  );
}
