import type { PricePoint } from '../model/items.ts';
import type { Origin } from '../model/origin.ts';

/** What every stock item has. */
export interface ItemCommon {
  readonly id: string;
  readonly title: string;
  readonly source: string;
  readonly origin: Origin;
  readonly prices: readonly PricePoint[];
}
