/** Work that can be done in any thread: plain data in, plain data out. A new kind: a type here, a line in `doTask`. */
import type { Figures, VariantFigures } from '@tautline/review';
import { figuresOfVariants, type VariantTask } from '../explore/variant.ts';
import { type CheckTask, checkFiles } from '../report/check-files.ts';
import type { CheckSummary } from '../report/summary.ts';
import { type FiguresTask, figuresOf } from '../revisions/figures.ts';

export type Task = CheckTask | VariantTask | FiguresTask;

export type TaskResult<T extends Task> = T extends CheckTask
  ? CheckSummary
  : T extends VariantTask
    ? VariantFigures[]
    : Figures;

export function doTask(task: Task): Promise<CheckSummary | VariantFigures[] | Figures> {
  switch (task.type) {
    case 'check':
      return checkFiles(task);
    case 'variants':
      return figuresOfVariants(task);
    case 'figures':
      return figuresOf(task);
  }
}
