/** Sums of money as text. */

/**
 * A sum with its ISO 4217 code and as many decimals as the currency has, e.g. `USD 4.20`, `JPY 420`; a
 * plain number with two decimals where no currency is named. Throws RangeError for a sum that is not finite
 * or a code that is not three letters.
 */
export function moneyText(amount: number, currency: string | undefined): string {
  if (!Number.isFinite(amount)) throw new RangeError(`${amount} is no sum of money`);
  if (currency === undefined) return amount.toFixed(2);
  const format = new Intl.NumberFormat('en-US', {
    style: 'currency',
    currency,
    currencyDisplay: 'code',
    useGrouping: false,
  });
  return format.format(amount).replace(/\u00a0/g, ' ');
}
