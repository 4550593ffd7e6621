/** The whole house in space: what it adds to the findings of the typical frame. */
import { type Evaluation, evaluate, type Finding, wholeHouseChecks } from '@tautline/checks';
import { resolveShelter } from '@tautline/shelter';
import { type Clock, wallClock } from './clock.ts';
import type { Job, Jobs } from './long-work.ts';
import { type FixRequest, type PricedFix, type ToldFinding, toldFinding } from './result.ts';
import { fixesNow } from './work-out.ts';

/** Name of the job in the worker. */
export const wholeHouseJob = 'whole-house';

export interface WholeHouseInput {
  readonly shelter: string;
  /** Day that ages are counted to, ISO. */
  readonly on?: string;
}

export interface WholeHouse {
  /** Only those that the typical frame does not give. */
  readonly findings: readonly (Finding & ToldFinding)[];
  /** Everything that is not covered once the whole house was worked out. */
  readonly notChecked: Evaluation['notChecked'];
}

/**
 * Gives `WholeHouse`, or undefined for what cannot be resolved: the live tier says why. An analysis that takes longer
 * than the clock allows ends as not checked.
 */
export const wholeHouseBy =
  (clock: Clock): Job =>
  ([world], input, { cancelled, progress }): WholeHouse | undefined => {
    const { shelter: name, on } = input as WholeHouseInput;
    const { shelter } = world ? resolveShelter(name, world) : {};
    if (!shelter) return undefined;
    const { findings, notChecked } = evaluate(shelter, {
      tier: 'full',
      gusts: false,
      cancelled,
      progress,
      clock,
      ...(on === undefined ? {} : { on }),
    });
    const beyond = findings.filter(({ id }) => wholeHouseChecks.has(id));
    return { findings: beyond.map((one) => ({ ...one, ...toldFinding(one) })), notChecked };
  };

/** Name of the job that looks for fixes of a finding of the whole house. */
export const houseFixesJob = 'whole-house-fixes';

export interface HouseFixesInput extends FixRequest {
  readonly shelter: string;
}

/** Gives fixes (`PricedFix[]`), each tried on the whole house; none where the house cannot be worked out in time. */
export const houseFixesBy =
  (clock: Clock): Job =>
  ([world], input, { cancelled, progress }): readonly PricedFix[] => {
    const { shelter: name, ...request } = input as HouseFixesInput;
    const { shelter, problems } = world ? resolveShelter(name, world) : { problems: [] };
    if (!world || !shelter) return [];
    const { on } = request;
    progress(0, 'the whole house as it is');
    const evaluation = evaluate(shelter, {
      tier: 'full',
      gusts: false,
      beyond: false,
      cancelled,
      clock,
      ...(on === undefined ? {} : { on }),
    });
    progress(0.1, 'changes of it');
    return fixesNow(world, { shelter: name, problems, evaluation }, request, { cancelled, clock });
  };

/** What the language itself has done by the worker for long work; who bundles it adds more. */
// Marked, so that a bundle which only asks for the work leaves out what does it.
export const languageJobs: Jobs = /* @__PURE__ */ Object.fromEntries([
  [wholeHouseJob, /* @__PURE__ */ wholeHouseBy(wallClock)],
  [houseFixesJob, /* @__PURE__ */ houseFixesBy(wallClock)],
]);
