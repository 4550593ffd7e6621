import {
  type Check,
  checkOf,
  checks,
  type Evaluation,
  evaluate,
  exampleSpecs,
  inUnits,
  sources,
  wholeHouseChecks,
} from '@tautline/checks';
import { CannotRun, exit } from '../exit.ts';
import { oneShelter } from '../one-shelter.ts';
import { calculation, gustTable } from '../report/calculation.ts';
import type { Command, CommandArguments } from './command.ts';
import { dayOf, systemOf } from './flags.ts';

export const explain: Command = {
  name: 'explain',
  usage:
    'explain [CHECK_ID] | explain FILE --finding CHECK_ID [--part ID] | explain FILE --gusts [--full] [--shelter NAME] [--units metric|us] [--on DATE]',
  does: 'Says what a check asks, why it matters, its formula and sources; of a file, the calculation of a finding step by step, or which part gives way at what gust. With --full, the order of failure with what only the whole house in space tells: braces, guys, end frames.',
  options: {
    finding: { type: 'string' },
    part: { type: 'string' },
    gusts: { type: 'boolean' },
    full: { type: 'boolean' },
    shelter: { type: 'string' },
    units: { type: 'string' },
    on: { type: 'string' },
  },
  async run(args, output) {
    const id = args.paths[0];
    if (id !== undefined && (args.flags['finding'] !== undefined || args.flags['gusts'] === true)) {
      output.out(await ofFile(id, args));
      return exit.clean;
    }
    if (id === undefined && (args.flags['finding'] !== undefined || args.flags['gusts'] === true))
      throw new CannotRun('Say which file: tautline explain FILE --gusts, or FILE --finding CHECK_ID.');
    if (id === undefined) {
      output.out(`${checks.map((entry) => `${entry.id.padEnd(22)} ${entry.asks}`).join('\n')}\n`);
      return exit.clean;
    }
    const check = checkOf(id);
    if (check === undefined)
      throw new CannotRun(
        `There is no check called '${id}'. The checks are ${checks.map((entry) => entry.id).join(', ')}.`,
      );
    output.out(explanation(check));
    return exit.clean;
  },
};

async function ofFile(file: string, args: CommandArguments): Promise<string> {
  const { shelter, loaded } = await oneShelter(file, args.flags['shelter']);
  const asked = args.flags['finding'];
  // What only the whole house answers is not explained without it.
  const full = args.flags['full'] === true || (typeof asked === 'string' && wholeHouseChecks.has(asked));
  const evaluation = evaluate(shelter, { on: dayOf(args), tier: full ? 'full' : 'live' });
  const system = systemOf(args, loaded);
  return args.flags['gusts'] === true
    ? gustTable(evaluation, system)
    : chosen(evaluation, String(args.flags['finding']), args.flags['part'])
        .map((finding) => calculation(finding, evaluation, system))
        .join('\n');
}

/** Findings of a check, of one part where it was said. */
function chosen(
  evaluation: Evaluation,
  id: string,
  part: string | boolean | undefined,
): Evaluation['findings'] {
  const found = evaluation.findings.filter(
    (finding) => finding.id === id && (typeof part !== 'string' || finding.part === part),
  );
  if (found.length > 0) return found;
  const open = evaluation.notChecked.find((entry) => entry.id === id);
  if (open !== undefined) throw new CannotRun(`${id} was not checked here: ${open.reason}.`);
  const ids = [...new Set(evaluation.findings.map((finding) => finding.id))].join(', ');
  throw new CannotRun(`There is no finding '${id}' here. There are ${ids}.`);
}

/** The explanation of one check, as a reader sees it. */
export function explanation(check: Check): string {
  const lines = [
    `${check.title}  [${check.id}]`,
    '',
    `Asks     ${check.asks}`,
    `Matters  ${check.matters}`,
    `Formula  ${check.formula}`,
  ];
  for (const symbol of check.symbols)
    lines.push(`           ${symbol.symbol}: ${symbol.meaning}${inUnits(symbol.kind)}`);
  lines.push('Sources');
  for (const id of check.sources) {
    const source = sources[id];
    lines.push(
      source === undefined
        ? `           ${id}`
        : `           ${source.title}: ${source.where} (${source.standing})`,
    );
  }
  lines.push(`Leaves out  ${check.leavesOut}`, `May be accepted  ${check.mayBeAccepted}`);
  const specs = exampleSpecs(check.id);
  if (specs !== undefined)
    lines.push(
      '',
      'A spec that fails by it:',
      '',
      specs.bad,
      'A spec that does not:',
      '',
      specs.good.trimEnd(),
    );
  return `${lines.join('\n')}\n`;
}
