// no-unit-test: test/cli/usage.test.ts runs the built program with every slip
import type { Overrides } from '../book/overrides';
import { lights, papers, processes } from '../print';
import type { LightId, PaperId, ProcessId, RouteId, Target } from '../shared/target';
import { Failure } from './failure';
import { known } from './known';
import type { ConditionOptions } from './options';

const routes: RouteId[] = ['rgb', 'separated', 'inks', 'black-plate', 'unknown'];

/** @throws Failure for a name that is not known, with the one that was probably meant */
export function conditionsOf({ process, paper, light }: ConditionOptions): Overrides {
  return {
    process: known('process', process, idsOf(processes)) as ProcessId | undefined,
    paper: known('paper', paper, idsOf(papers)) as PaperId | undefined,
    light: known('light', light, idsOf(lights)) as LightId | undefined,
  };
}

/** @throws Failure where a paper or a light is asked for and nobody said a process */
export function somethingToPrint(targets: readonly Target[], { paper, light }: Overrides): void {
  if (!targets.length && (paper || light))
    throw new Failure('Nobody said how this book is printed: name a process with --process too.');
}

export const routeOf = (route: string | undefined) => known('route', route, routes) as RouteId | undefined;

/** A process with inks that a separation is made for, on its usual paper. */
export function separatedForOf(process: string | undefined): Target['separatedFor'] {
  const inks = processes.filter(({ signal }) => signal === 'inks');
  const id = known('process', process, idsOf(inks), 'separated-for') as ProcessId | undefined;
  return id && { process: id, paper: inks.find(other => other.id === id)!.paper };
}

const idsOf = (list: readonly { id: string }[]) => list.map(({ id }) => id);
