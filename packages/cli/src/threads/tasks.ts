/** Work that can be done in any thread: plain data in, plain data out. A new kind: a type here, a line in `doTask`. */
import type { VariantFigures } from '@tautline/review';
import { figuresOfVariants, type VariantTask } from '../explore/variant.ts';
import { type CheckTask, checkFiles } from '../report/check-files.ts';
import type { CheckSummary } from '../report/summary.ts';

export type Task = CheckTask | VariantTask;

export type TaskResult<T extends Task> = T extends CheckTask ? CheckSummary : VariantFigures[];

export function doTask(task: Task): Promise<CheckSummary | VariantFigures[]> {
  switch (task.type) {
    case 'check':
      return checkFiles(task);
    case 'variants':
      return figuresOfVariants(task);
  }
}
