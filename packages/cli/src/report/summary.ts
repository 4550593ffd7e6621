import { type Finding, measuredText, messageText } from '@tautline/checks';
import type { Place, Position } from '@tautline/language';
/** What every format of `check` says: plain data, places from 1, paths with forward slashes. */
import type { KindName, System } from '@tautline/quantity';
import { type Assumed, assumedText, unitsOf } from '@tautline/shelter';
import { shownPath } from '../files.ts';
import type { PlacedProblem, RangeShown, Verdict, Verdicts } from '../verdicts.ts';

export interface ShownRange {
  readonly start: { readonly line: number; readonly column: number };
  readonly end: { readonly line: number; readonly column: number };
}

export interface ShownFinding {
  readonly id: string;
  readonly verdict: Finding['verdict'];
  readonly severity: Finding['severity'];
  readonly message: string;
  readonly file: string;
  readonly range?: ShownRange;
  readonly part: string;
  readonly utilisation?: number;
  readonly demand?: { readonly value: number; readonly unit: string; readonly shown: string };
  readonly capacity?: { readonly value: number; readonly unit: string; readonly shown: string };
  readonly loadCase?: string;
  readonly source: string;
  readonly accepted?: string;
}

export interface ShownShelter {
  readonly name: string;
  /** A shelter or variant, or several side by side. */
  readonly kind: 'shelter' | 'range';
  readonly file: string;
  /** False when the text is wrong in a way that leaves nothing to judge; the problems say why. */
  readonly workedOut: boolean;
  readonly findings: readonly ShownFinding[];
  readonly assumed: readonly {
    readonly part: string;
    readonly fact: string;
    readonly value: string;
    readonly why: string;
  }[];
  readonly notChecked: readonly { readonly id: string; readonly reason: string }[];
  /** Only when asked for, for it differs from run to run. */
  readonly stages?: readonly { readonly stage: string; readonly seconds: number; readonly ranOut?: number }[];
}

export interface ShownProblem {
  readonly id: string;
  readonly severity: 'error' | 'warning';
  readonly message: string;
  readonly file: string;
  readonly range: ShownRange;
}

export interface CheckSummary {
  readonly files: number;
  readonly shelters: readonly ShownShelter[];
  readonly problems: readonly ShownProblem[];
}

export interface SummaryWishes {
  readonly system?: System | undefined;
  readonly timings?: boolean;
}

/** Everything in the units asked for, or each shelter in its own. */
export function summarise(verdicts: Verdicts, { system, timings = false }: SummaryWishes = {}): CheckSummary {
  return {
    files: verdicts.workspace.files.filter((file) => file.asked).length,
    shelters: [
      ...verdicts.shelters.map((verdict) =>
        shownShelter(verdict, system ?? unitsOf(verdict.loaded.world), timings),
      ),
      ...verdicts.ranges.map((range) => shownRangeOf(range, system ?? unitsOf(range.loaded.world))),
    ],
    problems: verdicts.problems.map(shownProblem),
  };
}

/** Shelters side by side, told as a shelter is. */
function shownRangeOf({ loaded, verdict, findings }: RangeShown, system: System): ShownShelter {
  return {
    name: loaded.name,
    kind: 'range',
    file: shownPath(loaded.uri),
    workedOut: true,
    findings: findings.map(({ finding, place }) => shownFinding(finding, place, loaded.uri, system)),
    assumed: verdict.assumed.map((assumed) => shownAssumed(assumed, system)),
    notChecked: verdict.notChecked,
  };
}

function shownAssumed(assumed: Assumed, system: System) {
  const { part, fact, why } = assumed;
  const value = assumedText(assumed, (si, kind) => measuredText({ value: si, kind }, system));
  return { part, fact, value, why };
}

function shownShelter(verdict: Verdict, system: System, timings: boolean): ShownShelter {
  const stages = timings ? verdict.evaluation?.stages : undefined;
  return {
    name: verdict.loaded.name,
    kind: 'shelter',
    file: shownPath(verdict.loaded.uri),
    workedOut: verdict.evaluation !== undefined,
    findings: verdict.findings.map(({ finding, place }) =>
      shownFinding(finding, place, verdict.loaded.uri, system),
    ),
    assumed: verdict.assumed.map(({ assumed }) => shownAssumed(assumed, system)),
    notChecked: verdict.evaluation?.notChecked ?? [],
    ...(stages === undefined
      ? {}
      : { stages: stages.map((stage) => ({ ...stage, seconds: Number(stage.seconds.toFixed(3)) })) }),
  };
}

function shownFinding(finding: Finding, place: Place | undefined, uri: string, system: System): ShownFinding {
  const { utilisation, demand, capacity, loadCase, accepted } = finding;
  return {
    id: finding.id,
    verdict: finding.verdict,
    severity: finding.severity,
    message: messageText(finding.message, system),
    file: shownPath(place?.uri ?? uri),
    ...(place === undefined ? {} : { range: shownRange(place.from, place.to) }),
    part: finding.part,
    ...(utilisation === undefined ? {} : { utilisation: rounded(utilisation) }),
    ...(demand === undefined ? {} : { demand: { ...siOf(demand), shown: measuredText(demand, system) } }),
    ...(capacity === undefined
      ? {}
      : { capacity: { ...siOf(capacity), shown: measuredText(capacity, system) } }),
    ...(loadCase === undefined ? {} : { loadCase }),
    source: finding.source,
    ...(accepted === undefined ? {} : { accepted: accepted.because }),
  };
}

/** Value in the SI unit of its kind. */
function siOf(measured: { value: number; kind: KindName }): { value: number; unit: string } {
  return { value: rounded(measured.value), unit: siUnits[measured.kind] ?? '1' };
}

const siUnits: Readonly<Record<string, string>> = {
  length: 'm',
  thickness: 'm',
  'film-thickness': 'm',
  area: 'm2',
  volume: 'm3',
  angle: 'rad',
  slope: 'rad',
  mass: 'kg',
  force: 'N',
  moment: 'N.m',
  stress: 'Pa',
  pressure: 'Pa',
  'line-load': 'N/m',
  speed: 'm/s',
  time: 's',
  curvature: '1/m',
};

/** Six significant digits: what is past them is no knowledge, and differs from machine to machine. */
function rounded(value: number): number {
  return Number(value.toPrecision(6));
}

function shownProblem(problem: PlacedProblem): ShownProblem {
  return {
    id: problem.id,
    severity: problem.severity,
    message: problem.message,
    file: shownPath(problem.uri),
    range: shownRange(problem.from, problem.to),
  };
}

function shownRange(from: Position, to: Position): ShownRange {
  return {
    start: { line: from.line + 1, column: from.character + 1 },
    end: { line: to.line + 1, column: to.character + 1 },
  };
}

/** Whether anything stands at or above the level that makes the command fail. */
export function failsAt(summary: CheckSummary, level: 'error' | 'warning'): boolean {
  const counts = (severity: string): boolean =>
    severity === 'error' || (level === 'warning' && severity === 'warning');
  return (
    summary.problems.some((problem) => counts(problem.severity)) ||
    summary.shelters.some((shelter) => shelter.findings.some((finding) => counts(finding.severity)))
  );
}
