/**
 * Cutting at the least cost, proven where it can be: how often to cut each maximal pattern, as an
 * integer program (Gilmore and Gomory's model of the cutting-stock problem, 1961) for a solver that is
 * handed in, so that nothing here loads anything.
 */
import { costStep, roundBound, simpleBound } from './bound.ts';
import { maximalPatterns, type Patterns } from './patterns.ts';
import {
  type CutPlan,
  type CutRequest,
  costOf,
  type Pattern,
  type Problem,
  planOf,
  problemOf,
  type Source,
  type Use,
} from './problem.ts';
import { quickCut } from './quick.ts';

/** The part of the `highs` package used here. */
export interface MipSolver {
  solve(
    problem: string,
    options?: Readonly<Record<string, string | number | boolean>>,
  ): {
    readonly Status: string;
    readonly ObjectiveValue: number;
    readonly Columns: Readonly<Record<string, { readonly Primal?: number }>>;
  };
}
export type LoadMipSolver = () => Promise<MipSolver>;

export interface ExactOptions {
  /** Most patterns handed to the solver, 4000 unless said. */
  readonly mostPatterns?: number;
  /** Most branches looked at, 20000 unless said: a count and not a time, so that results repeat. */
  readonly mostBranches?: number;
}

/**
 * The plan of least price (or length, where a price is missing), never worse than `cutStockQuick`.
 * `optimal` is set only when the bound meets it. Rejects only when the solver cannot be loaded; a
 * solver that fails leaves the quick plan and a note. Throws RangeError as `problemOf` does.
 */
export async function cutStock(
  request: CutRequest,
  load: LoadMipSolver,
  options: ExactOptions = {},
): Promise<CutPlan> {
  const problem = problemOf(request);
  const quick = quickCut(problem);
  const simple = simpleBound(problem);
  const cost = costOf(problem, quick.uses);
  const short = quick.missing.some((n) => n > 0);
  if (short || cost <= simple) return planOf(problem, { ...quick, bound: simple, method: 'quick' });

  const patterns = maximalPatterns(problem, options.mostPatterns ?? 4000);
  const list = patterns.complete
    ? patterns.list
    : [...patterns.list, ...quick.uses.map((use) => use.pattern)];
  const solver = await load();
  const whole = ask(solver, problem, list, true, options.mostBranches ?? 20_000);
  const found = whole && trim(problem, whole.uses);
  const better = found && costOf(problem, found) < cost ? found : undefined;
  const uses = better ?? quick.uses;
  const bound = Math.max(simple, proven(solver, problem, patterns, list, whole));
  return planOf(problem, {
    uses,
    missing: [],
    bound,
    method: better || (whole?.optimal && patterns.complete) ? 'exact' : 'quick',
    ...noteOf(costOf(problem, uses), bound, patterns, whole !== undefined),
  });
}

function noteOf(
  cost: number,
  bound: number,
  patterns: Patterns,
  solved: boolean,
): { readonly note?: string } {
  if (cost <= bound) return {};
  if (!patterns.complete) return { note: 'too many ways to cut to look at all of them' };
  return { note: solved ? 'the search was stopped before a proof' : 'the solver found no plan' };
}

/** The best bound the solver can vouch for, whole units; 0 when it can vouch for none. */
function proven(
  solver: MipSolver,
  problem: Problem,
  patterns: Patterns,
  list: readonly Pattern[],
  whole: Answer | undefined,
): number {
  if (!patterns.complete) return 0;
  if (whole?.optimal) return roundBound(problem, whole.objective);
  const relaxed = ask(solver, problem, list, false, 0);
  return relaxed?.optimal ? roundBound(problem, relaxed.objective) : 0;
}

interface Answer {
  readonly uses: readonly Use[];
  /** Whole units. */
  readonly objective: number;
  readonly optimal: boolean;
}

function ask(
  solver: MipSolver,
  problem: Problem,
  list: readonly Pattern[],
  whole: boolean,
  mostBranches: number,
): Answer | undefined {
  const step = costStep(problem);
  // Costs are whole multiples of `step`: a gap below one of them is a proof.
  const settings = { output_flag: false, random_seed: 0, mip_rel_gap: 0, mip_abs_gap: 0.99 };
  let result: ReturnType<MipSolver['solve']>;
  try {
    result = solver.solve(programText(problem, list, step, whole), {
      ...settings,
      ...(whole ? { mip_max_nodes: mostBranches } : {}),
    });
  } catch {
    return undefined;
  }
  const uses = list.flatMap((pattern, index) => {
    const times = result.Columns[`x${index}`]?.Primal ?? 0;
    return times > 1e-6 ? [{ pattern, times: whole ? Math.round(times) : times }] : [];
  });
  if (whole && !covers(problem, uses)) return undefined;
  return { uses, objective: result.ObjectiveValue * step, optimal: result.Status === 'Optimal' };
}

function covers(problem: Problem, uses: readonly Use[]): boolean {
  const enough = problem.counts.every(
    (count, at) => uses.reduce((sum, use) => sum + use.times * (use.pattern.pieces[at] ?? 0), 0) >= count,
  );
  const held = problem.sources.every(
    (source, at) =>
      uses.reduce((sum, use) => sum + (use.pattern.source === at ? use.times : 0), 0) <= source.available,
  );
  return enough && held;
}

/** The integer program as text the solver reads (the LP format), lines kept short. */
function programText(problem: Problem, list: readonly Pattern[], step: number, whole: boolean): string {
  const sum = (terms: readonly string[]): string => (terms.length > 0 ? terms.join('\n + ') : '0 x0');
  const term = (factor: number, index: number): string => `${factor} x${index}`;
  const cost = list.map((pattern, index) =>
    term((problem.sources[pattern.source] as Source).cost / step, index),
  );
  const rows = problem.counts.map((count, at) => {
    const terms = list.flatMap((pattern, index) =>
      (pattern.pieces[at] ?? 0) > 0 ? [term(pattern.pieces[at] ?? 0, index)] : [],
    );
    return ` d${at}: ${sum(terms)} >= ${count}`;
  });
  const limits = problem.sources.flatMap((source, at) => {
    if (source.available === Number.POSITIVE_INFINITY) return [];
    const terms = list.flatMap((pattern, index) => (pattern.source === at ? [term(1, index)] : []));
    return terms.length > 0 ? [` h${at}: ${sum(terms)} <= ${source.available}`] : [];
  });
  const names = list.map((_, index) => ` x${index}`);
  return [
    `Minimize\n cost: ${sum(cost)}`,
    'Subject To',
    ...rows,
    ...limits,
    ...(whole ? ['Generals', ...names] : []),
    'End',
    '',
  ].join('\n');
}

/** Takes the pieces beyond the demand out again, and with them every bar left empty. */
function trim(problem: Problem, uses: readonly Use[]): readonly Use[] {
  const spare = problem.counts.map(
    (count, at) => uses.reduce((sum, use) => sum + use.times * (use.pattern.pieces[at] ?? 0), 0) - count,
  );
  return uses.flatMap(({ pattern, times }) =>
    Array.from({ length: times }, () => {
      const pieces = pattern.pieces.map((n, at) => {
        const off = Math.min(n, spare[at] ?? 0);
        spare[at] = (spare[at] ?? 0) - off;
        return n - off;
      });
      return { pattern: { source: pattern.source, pieces }, times: 1 };
    }).filter((use) => use.pattern.pieces.some((n) => n > 0)),
  );
}
