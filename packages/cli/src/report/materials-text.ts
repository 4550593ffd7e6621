/** The list a person reads at the yard. */
import { cautionLine } from '@tautline/book';
import { format, type System } from '@tautline/quantity';
import type { PriceListNote } from '@tautline/shelter';
import { buyText, cutText, handText, type MaterialLine, type Materials, moneyText } from '@tautline/takeoff';

export function materialsText(
  name: string,
  counted: Materials,
  system: System,
  priceLists: readonly PriceListNote[] = [],
): string {
  const money = (amount: number): string => moneyText(amount, counted.currency);
  const lines = [
    `Materials for ${name}`,
    '',
    ...counted.lines.flatMap((line) => lineText(line, system, money)),
  ];
  lines.push('', 'Cutting', ...counted.cutList.flatMap((list) => cutLines(list, system)), '');
  lines.push(...costLines(counted, system, money, priceLists));
  for (const gap of counted.gaps) lines.push(`Not counted: ${gap.what}`);
  lines.push(cautionLine);
  return `${lines.join('\n')}\n`;
}

function lineText(line: MaterialLine, system: System, money: (amount: number) => string): string[] {
  const cost = line.cost === undefined ? '' : `  ${money(line.cost)}`;
  const lines = [`  ${line.title}: ${format(line.total, line.kind, system)}${cost}`];
  const hand = handText(line, system);
  if (hand !== '') lines.push(`      on hand ${hand}`);
  const buy = buyText(line, system);
  if (buy !== '') lines.push(`      buy ${buy}`);
  return lines;
}

/** What to cut from what, of one item. */
export function cutLines({ item, plan, width }: Materials['cutList'][number], system: System): string[] {
  const length = (value: number): string => cutText(value, system);
  const share = format(plan.waste, 'percent', system);
  const proof = plan.optimal
    ? `proven least ${plan.least}`
    : `not proven least: no plan can do with less than ${plan.least === 'length' ? length(plan.bound) : plan.bound}`;
  const wide = width === undefined ? '' : ` ${format(width, 'length', system)} wide`;
  return [
    `  ${item.title}${wide}: ${proof}, ${share} left over`,
    ...plan.bars.map(
      (bar) =>
        `      ${bar.count} x ${length(bar.length)}${bar.onHand ? ' on hand' : ''}: ${bar.cuts.map(length).join(' + ')}, left ${length(bar.offcut)}`,
    ),
  ];
}

/** What it costs, what most of it is for, and what could not be priced. */
export function costLines(
  { cost, currency }: Materials,
  system: System,
  money: (amount: number) => string,
  priceLists: readonly PriceListNote[],
): string[] {
  const area = format(cost.protectedArea, 'area', system);
  const [unit, each] = system === 'us' ? ['ft²', cost.perArea * 0.3048 ** 2] : ['m²', cost.perArea];
  const lines =
    cost.shares.length === 0
      ? ['Nothing that has to be bought has a price.']
      : [
          `Cost ${money(cost.total)}${cost.complete ? '' : ' so far'}, ${money(each)} for each ${unit} of ${area} under cover.`,
        ];
  if (currency === undefined && cost.shares.length > 0) lines.push('The project names no currency.');
  const most = cost.shares.slice(0, 3).map((one) => `${one.title} (${format(one.share, 'percent', system)})`);
  if (most.length > 0) lines.push(`Most of it is for: ${most.join('; ')}.`);
  if (cost.renewalsPerYear > 0)
    lines.push(`Renewing what wears out costs ${money(cost.renewalsPerYear)} a year.`);
  if (cost.perYear !== undefined)
    lines.push(`With everything else spread over the life of the frame: ${money(cost.perYear)} a year.`);
  for (const { from, asked } of priceLists) {
    if (from !== undefined || asked !== undefined)
      lines.push(
        `Prices: ${[from, asked === undefined ? undefined : `asked ${asked}`].filter(Boolean).join(', ')}.`,
      );
  }
  if (cost.missing.length > 0) lines.push(`No price for: ${cost.missing.join('; ')}.`);
  if (cost.tooLong.length > 0)
    lines.push(`No length sold is long enough for pieces of: ${cost.tooLong.join('; ')}.`);
  return lines;
}
