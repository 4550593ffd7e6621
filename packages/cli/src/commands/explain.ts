import { type Check, checkOf, checks, sources } from '@tautline/checks';
import { CannotRun, exit } from '../exit.ts';
import type { Command } from './command.ts';

export const explain: Command = {
  name: 'explain',
  usage: 'explain [CHECK_ID]',
  does: 'Says what a check asks, why it matters, its formula and sources; without an id, lists all checks.',
  options: {},
  async run(args, output) {
    const id = args.paths[0];
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
    lines.push(`           ${symbol.symbol}: ${symbol.meaning} (${symbol.kind})`);
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
  return `${lines.join('\n')}\n`;
}
