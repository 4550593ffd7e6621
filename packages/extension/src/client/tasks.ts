import { type ExtensionContext, ShellExecution, Task, type TaskDefinition, TaskScope, tasks } from 'vscode';

interface CheckTask extends TaskDefinition {
  readonly type: 'tautline';
  readonly command: 'check';
  readonly path?: string;
}

/** `tautline check` of the workspace as a task, its output read back as problems. Needs the tool on PATH. */
export function registerTasks(context: ExtensionContext): void {
  context.subscriptions.push(
    tasks.registerTaskProvider('tautline', {
      provideTasks: () => [taskOf({ type: 'tautline', command: 'check' })],
      resolveTask: (task) => {
        const definition = task.definition as CheckTask;
        return definition.command === 'check' ? taskOf(definition) : undefined;
      },
    }),
  );
}

function taskOf(definition: CheckTask): Task {
  const path = definition.path ?? '.';
  return new Task(
    definition,
    TaskScope.Workspace,
    definition.path === undefined ? 'check every shelter' : `check ${path}`,
    'tautline',
    new ShellExecution('tautline', ['check', path]),
    ['$tautline', '$tautline-fails', '$tautline-watch'],
  );
}
