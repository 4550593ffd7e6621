/** Runs a composite action as a forge's runner would: its inputs, expressions, environment and shells. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

const { load } = createRequire(import.meta.url)('js-yaml') as { load(text: string): unknown };

interface Action {
  readonly inputs: Readonly<Record<string, { readonly required?: boolean; readonly default?: string }>>;
  readonly runs: {
    readonly using: string;
    readonly steps: readonly {
      readonly name?: string;
      readonly shell: string;
      readonly run: string;
      readonly env?: Readonly<Record<string, string>>;
    }[];
  };
}

export interface ActionRun {
  /** Exit code of the first step that fails, or 0: the runner stops there. */
  readonly code: number;
  readonly out: string;
  readonly err: string;
  /** What the steps wrote for the summary of the run. */
  readonly summary: string;
}

/** How the runner calls each shell that a step may name. */
const shells: Readonly<Record<string, readonly string[]>> = {
  sh: ['sh', '-e'],
  bash: ['bash', '--noprofile', '--norc', '-eo', 'pipefail'],
};

/** `workspace` is the checkout the action runs in. Throws Error for an action that a runner would refuse. */
export function runAction(
  file: string,
  workspace: string,
  given: Readonly<Record<string, string>>,
): ActionRun {
  const action = load(readFileSync(file, 'utf8')) as Action;
  if (action.runs.using !== 'composite') throw new Error(`cannot run an action using ${action.runs.using}`);
  for (const name of Object.keys(given))
    if (action.inputs[name] === undefined) throw new Error(`the action has no input '${name}'`);
  const inputs = Object.fromEntries(
    Object.entries(action.inputs).map(([name, { required, default: usual }]) => {
      const value = given[name] ?? usual;
      if (value === undefined && required) throw new Error(`the action needs the input '${name}'`);
      return [`inputs.${name}`, value ?? ''];
    }),
  );
  const known: Readonly<Record<string, string>> = { ...inputs, 'github.action_path': dirname(file) };
  const filled = (text: string): string =>
    text.replace(/\$\{\{\s*([^}]*?)\s*\}\}/g, (_, name: string) => {
      const value = known[name];
      if (value === undefined) throw new Error(`the action asks for '${name}', which this runner has not`);
      return value;
    });
  const own = mkdtempSync(join(tmpdir(), 'action-'));
  const [summary, script] = [join(own, 'summary.md'), join(own, 'step')];
  writeFileSync(summary, '');
  let [code, out, err] = [0, '', ''];
  try {
    for (const { shell, run, env = {} } of action.runs.steps) {
      const [program = '', ...words] = shells[shell] ?? [];
      if (program === '') throw new Error(`no shell '${shell}'`);
      writeFileSync(script, filled(run));
      const ran = spawnSync(program, [...words, script], {
        cwd: workspace,
        encoding: 'utf8',
        env: {
          ...process.env,
          CI: 'true',
          GITHUB_WORKSPACE: workspace,
          GITHUB_STEP_SUMMARY: summary,
          ...Object.fromEntries(Object.entries(env).map(([name, value]) => [name, filled(value)])),
        },
      });
      code = ran.status ?? 1;
      out += ran.stdout;
      err += ran.stderr;
      if (code !== 0) break;
    }
    return { code, out, err, summary: readFileSync(summary, 'utf8') };
  } finally {
    rmSync(own, { recursive: true, force: true });
  }
}
