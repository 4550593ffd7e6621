import { format, type System } from '@tautline/quantity';
import { buyText, type Materials, materialsCsv, materialsExact, materialsJson } from '@tautline/takeoff';
import { cautionLine } from '../cautions.ts';
import { exit } from '../exit.ts';
import { oneShelter } from '../one-shelter.ts';
import { loadSolver } from '../solver.ts';
import type { Command } from './command.ts';
import { needPaths, oneOf, systemOf } from './flags.ts';

export const materials: Command = {
  name: 'materials',
  usage: 'materials FILE [--shelter NAME] [--format text|json|csv] [--units metric|us]',
  does: 'Counts every piece from the geometry, says what to buy and how to cut it.',
  options: { format: { type: 'string' }, shelter: { type: 'string' }, units: { type: 'string' } },
  async run(args, output) {
    const form = oneOf(args, 'format', ['text', 'json', 'csv'] as const, 'text');
    const system = systemOf(args);
    const { shelter } = await oneShelter(
      needPaths(args, 'which file to count')[0] as string,
      args.flags['shelter'],
    );
    const counted = await materialsExact(shelter, loadSolver);
    if (form === 'json') output.out(materialsJson(counted));
    else if (form === 'csv') output.out(materialsCsv(counted, system));
    else output.out(materialsText(shelter.name, counted, system));
    return exit.clean;
  },
};

/** The list a person reads at the yard. */
export function materialsText(name: string, counted: Materials, system: System): string {
  const length = (value: number): string => format(value, 'length', system);
  const lines = [`Materials for ${name}`, ''];
  for (const line of counted.lines) {
    const cost = line.cost === undefined ? '' : `  ${format(line.cost, 'money', system)}`;
    lines.push(`  ${line.title}: ${format(line.total, line.kind, system)}${cost}`);
    const buy = buyText(line, system);
    if (buy !== '') lines.push(`      buy ${buy}`);
  }
  lines.push('', 'Cutting');
  for (const { item, plan } of counted.cutList) {
    const share = format(plan.waste, 'percent', system);
    lines.push(`  ${item.title}: ${plan.optimal ? 'proven least' : 'not proven least'}, ${share} left over`);
    for (const bar of plan.bars) {
      lines.push(
        `      ${bar.count} x ${length(bar.length)}: ${bar.cuts.map(length).join(' + ')}, left ${length(bar.offcut)}`,
      );
    }
  }
  const { cost } = counted;
  lines.push(
    '',
    `Cost ${format(cost.total, 'money', system)}${cost.complete ? '' : ' so far'}, ${format(cost.perArea, 'money', system)} for each m² of ground under cover.`,
  );
  if (cost.missing.length > 0) lines.push(`No price for: ${cost.missing.join('; ')}.`);
  for (const gap of counted.gaps) lines.push(`Not counted: ${gap.what}`);
  lines.push(cautionLine);
  return `${lines.join('\n')}\n`;
}
