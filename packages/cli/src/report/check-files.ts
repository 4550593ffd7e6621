/** The summary of a handful of files, and of many such handfuls together. Files are judged one by one. */
import type { System } from '@tautline/quantity';
import { load } from '../files.ts';
import { verdictsOf } from '../verdicts.ts';
import { type CheckSummary, type ShownProblem, summarise } from './summary.ts';

export interface CheckTask {
  readonly type: 'check';
  readonly files: readonly string[];
  /** Day ages are counted to, ISO. */
  readonly on: string;
  /** Units to show everything in; each shelter in its own when absent. */
  readonly system?: System;
  /** Also works out the whole house in space. */
  readonly full?: boolean;
  /** Feet give as the soil does. */
  readonly soil?: boolean;
  /** Also for somebody at work on the frame or leaning on it. */
  readonly person?: boolean;
  /** Also says what each stage of the analysis took. */
  readonly timings?: boolean;
}

/** Files read at once: enough to read shared imports rarely, few enough to keep memory small. */
const handful = 12;

export interface CheckWishes {
  readonly system?: System | undefined;
  readonly full?: boolean;
  readonly soil?: boolean;
  readonly person?: boolean;
  readonly timings?: boolean;
}

export function checkTasks(
  files: readonly string[],
  on: string,
  { system, full = false, soil = false, person = false, timings = false }: CheckWishes = {},
): CheckTask[] {
  const tasks: CheckTask[] = [];
  for (let at = 0; at < files.length; at += handful)
    tasks.push({
      type: 'check',
      files: files.slice(at, at + handful),
      on,
      ...(system === undefined ? {} : { system }),
      ...(full ? { full } : {}),
      ...(soil ? { soil } : {}),
      ...(person ? { person } : {}),
      ...(timings ? { timings } : {}),
    });
  return tasks;
}

export async function checkFiles(task: CheckTask): Promise<CheckSummary> {
  const { files, on, system, full, soil, person, timings } = task;
  const tier = full === true ? 'full' : 'live';
  // A stage that would hang ends in 'not checked'; how long the others take is told only when asked for.
  const clock = { now: () => performance.now() / 1000 };
  const verdicts = verdictsOf(await load(files), on, {
    tier,
    gusts: false,
    clock,
    // Without the option it is as each spec says.
    ...(soil === true ? { soil } : {}),
    ...(person === true ? { person } : {}),
  });
  return summarise(verdicts, { system, timings: timings === true });
}

/** In the order of the files; a problem of a file that several import is told once, problems in order of place. */
export function together(summaries: readonly CheckSummary[]): CheckSummary {
  const problems = new Map<string, ShownProblem>();
  for (const problem of summaries.flatMap((summary) => summary.problems)) {
    const { line, column } = problem.range.start;
    problems.set(`${problem.file}:${line}:${column} ${problem.message}`, problem);
  }
  return {
    files: summaries.reduce((sum, summary) => sum + summary.files, 0),
    shelters: summaries.flatMap((summary) => summary.shelters),
    problems: [...problems.values()].sort(
      (a, b) =>
        (a.file < b.file ? -1 : a.file > b.file ? 1 : 0) ||
        a.range.start.line - b.range.start.line ||
        a.range.start.column - b.range.start.column,
    ),
  };
}
