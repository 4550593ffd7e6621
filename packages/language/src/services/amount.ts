/** Sums of money as the editor shows them. */
import { moneyText } from '@tautline/takeoff';
import type { Bill } from '../analyst/bill.ts';

/** `+XTS 12.40`, `-XTS 3.00`, `costs the same`. */
export function costChange({ change, currency }: { change: number; currency?: string }): string {
  if (Math.abs(change) < 0.005) return 'costs the same';
  return `${change > 0 ? '+' : '-'}${moneyText(Math.abs(change), currency)}`;
}

/** `XTS 412.20`, with how much is missing from the sum. */
export function billText({ total, currency, missing }: Bill): string {
  const without = missing.length === 0 ? '' : `, ${missing.length} without a price`;
  return `${moneyText(total, currency)}${without}`;
}
