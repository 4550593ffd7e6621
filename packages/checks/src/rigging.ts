import type { CableItem } from '@tautline/shelter';

/** Share of a cable's breaking load that clips leave: TM 5-3810-305-10, table 4, terminal efficiencies. */
const clipEfficiency = 0.8;
/** Working share of that: a factor of 3 for guys and hangers, from memory. */
const cableFactor = 3;

/** Pull a cable with clips may work at, N. */
export function cableWorking(cable: CableItem): number {
  return (cable.breakingLoad * clipEfficiency) / cableFactor;
}
