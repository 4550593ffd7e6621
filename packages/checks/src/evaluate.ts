import type { Assumed, Shelter } from '@tautline/shelter';
import { analyseFrame, type FrameAnalysis } from '@tautline/structure';
import { withAcceptances } from './acceptance.ts';
import type { CheckInput } from './check.ts';
import type { Finding } from './finding.ts';
import { checks } from './registry.ts';

export interface EvaluateOptions {
  /** Day ages are counted to, ISO. */
  readonly on?: string;
  /** Asked between stages; when true `Cancelled` is thrown. */
  readonly cancelled?: () => boolean;
}

/** What is not covered, and why. */
export interface Uncovered {
  /** Check id, or 'model' and 'loads' for what lies outside every check. */
  readonly id: string;
  readonly reason: string;
}

/** The whole verdict on one shelter. Plain data. */
export interface Evaluation {
  readonly shelter: Shelter;
  /** Failures, near misses and stale acceptances first; then what passes. */
  readonly findings: readonly Finding[];
  readonly assumed: readonly Assumed[];
  readonly notChecked: readonly Uncovered[];
  readonly analysis?: FrameAnalysis;
}

const outside: readonly Uncovered[] = [
  {
    id: 'model',
    reason: 'racking along the length, end frames and guys are outside the plane model',
  },
  {
    id: 'model',
    reason: 'the end bow carries half the breadth of the typical bow and is not looked at by itself',
  },
  {
    id: 'loads',
    reason: 'a person on or against the frame, hail, and things blown against it are not in the load cases',
  },
  {
    id: 'loads',
    reason: 'local suction at corners and edges of the film is not checked against its fastenings',
  },
  {
    id: 'model',
    reason: 'sideways push, tilting and sinking of the feet are not checked',
  },
];

/** Resolved shelter in, verdict out: the one function behind editor, command line, book and review. */
export function evaluate(shelter: Shelter, options: EvaluateOptions = {}): Evaluation {
  const frame = analyseFrame(
    shelter,
    options.cancelled === undefined ? {} : { cancelled: options.cancelled },
  );
  const input: CheckInput = {
    shelter,
    frame,
    ...(options.on === undefined ? {} : { on: options.on }),
  };
  const findings = checks.flatMap((check) => check.run(input));
  const judged = withAcceptances(shelter, findings, options.on);
  const order = { error: 0, warning: 1, information: 2 } as const;
  return {
    shelter,
    findings: [...judged.filter((finding) => finding.verdict !== 'not checked')].sort(
      (a, b) => order[a.severity] - order[b.severity],
    ),
    assumed: shelter.assumed,
    notChecked: [
      ...judged
        .filter((finding) => finding.verdict === 'not checked')
        .map((finding) => ({ id: finding.id, reason: finding.reason ?? '' })),
      ...(frame.ok ? frame.analysis.notCovered.map((reason) => ({ id: 'loads', reason })) : []),
      ...shelter.unmodelled.map((entry) => ({
        id: 'model',
        reason: `${entry.what} is in the spec but not in the model`,
      })),
      ...outside,
    ],
    ...(frame.ok ? { analysis: frame.analysis } : {}),
  };
}
