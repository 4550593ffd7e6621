/** What a change of the texts means for the shelters they describe. */
import { anythingDiffers, type Changes, changesOf, designDiffers } from './changes.ts';
import {
  type CostSide,
  costOf,
  type Governing,
  governingOf,
  type MaterialChange,
  materialChanges,
} from './figures.ts';
import { type AcceptanceChange, acceptanceChanges, type FindingChange, findingChanges } from './findings.ts';
import { type Pair, pairShelters } from './pairs.ts';
import { type PartChange, partChanges } from './parts.ts';
import type { FirstFailure, RenamedFiles, Reviewed, Revision } from './revision.ts';

/** A figure before and after; a side is absent where it could not be worked out. */
export interface Sides<T> {
  readonly before?: T;
  readonly after?: T;
}

export interface ShelterReview {
  readonly name: string;
  readonly file: string;
  readonly kind: Reviewed['kind'];
  /**
   * `unchanged`: nothing it says or stands on differs. `no design change`: remarks, dates, claims or prices
   * differ. `changed`: its parts, its site or its stock differ.
   */
  readonly change: 'added' | 'removed' | 'changed' | 'no design change' | 'unchanged';
  /** Its name or file before, where it had another. */
  readonly renamedFrom?: string;
  readonly movedFrom?: string;
  readonly facts: Omit<Changes, 'buying'>;
  readonly parts: readonly PartChange[];
  readonly findings: readonly FindingChange[];
  readonly acceptances: readonly AcceptanceChange[];
  readonly governing: Sides<Governing>;
  readonly firstFailure: Sides<FirstFailure>;
  readonly cost: Sides<CostSide>;
  readonly materials: readonly MaterialChange[];
  /** Why a side could not be worked out. */
  readonly problems: Sides<readonly string[]>;
  /** The shelters themselves, for drawings. */
  readonly pair: Pair<Reviewed>;
}

export interface Review {
  readonly before: string;
  readonly after: string;
  /** In the order of the later revision, what has gone last. */
  readonly shelters: readonly ShelterReview[];
}

/**
 * Compares two revisions. Shelters are followed through renamed files and names. Sides without an evaluation
 * are compared by what they say alone, which is right where nothing they follow from differs. Pure.
 */
export function reviewOf(before: Revision, after: Revision, renamed: RenamedFiles = new Map()): Review {
  const pairs = pairShelters(before.shelters, after.shelters, renamed);
  return {
    before: before.label,
    after: after.label,
    shelters: pairs.map((pair) => shelterReview(pair)),
  };
}

const none: Omit<Changes, 'buying'> = { design: [], site: [], stock: [], claims: [], keeping: [] };

function shelterReview(pair: Pair<Reviewed>): ShelterReview {
  const { before, after } = pair;
  const shown = (after ?? before)!;
  const changes = before && after ? changesOf(before, after) : undefined;
  // Nothing can be said to have come or gone where one side could not be worked out.
  const comparable = !before || !after || (before.evaluation && after.evaluation);
  return {
    name: shown.name,
    file: shown.file,
    kind: shown.kind,
    change: changeOf(pair, changes),
    ...(before && after && before.name !== after.name ? { renamedFrom: before.name } : {}),
    ...(before && after && before.file !== after.file ? { movedFrom: before.file } : {}),
    facts: changes ? factsOf(changes) : none,
    parts: partChanges(before?.evaluation?.shelter, after?.evaluation?.shelter),
    findings:
      after && comparable
        ? findingChanges(before?.evaluation?.findings ?? [], after.evaluation?.findings ?? [])
        : [],
    acceptances: after && comparable ? acceptanceChanges(before?.evaluation, after.evaluation) : [],
    governing: sides(pair, (one) => one.evaluation && governingOf(one.evaluation.findings)),
    firstFailure: sides(pair, (one) => one.firstFailure),
    cost: sides(pair, (one) => costOf(one.materials)),
    materials:
      before?.materials && after?.materials ? materialChanges(before.materials, after.materials) : [],
    problems: sides(pair, (one) => (one.problems.length === 0 ? undefined : one.problems)),
    pair,
  };
}

function changeOf({ before, after }: Pair, changes: Changes | undefined): ShelterReview['change'] {
  if (!before) return 'added';
  if (!after) return 'removed';
  if (changes && designDiffers(changes)) return 'changed';
  return changes && anythingDiffers(changes) ? 'no design change' : 'unchanged';
}

const factsOf = ({ design, site, stock, claims, keeping }: Changes): Omit<Changes, 'buying'> => ({
  design,
  site,
  stock,
  claims,
  keeping,
});

function sides<T>(pair: Pair<Reviewed>, of: (one: Reviewed) => T | undefined): Sides<T> {
  const before = pair.before && of(pair.before);
  const after = pair.after && of(pair.after);
  return {
    ...(before === undefined ? {} : { before }),
    ...(after === undefined ? {} : { after }),
  };
}
