/** Caps over seedlings by the gust: rolled over, lifted, or pushed along the bed. */
import type { Shelter } from '@tautline/shelter';
import { overturningUse } from './checks/overturning.ts';
import { slidingUse } from './checks/sliding.ts';
import type { Scaled } from './gust-order.ts';

export function capUses(shelter: Shelter): Scaled[] {
  const { roof, site } = shelter;
  if (roof.type !== 'cap') return [];
  const sacrificial = roof.sacrificial === true || roof.foot.sacrificial === true;
  const at = (factor: number): number => Math.sqrt(factor) * site.gust;
  const part = roof.foot;
  return [
    {
      part,
      what: 'the cap is lifted off its bed or rolled over',
      check: 'overturning',
      sacrificial,
      loadCase: 'gust on the cap',
      use: (factor) => overturningUse(shelter, roof, at(factor)),
    },
    {
      part,
      what: 'the cap slides along the bed',
      check: 'sliding',
      sacrificial,
      loadCase: 'gust on the cap',
      use: (factor) => slidingUse(shelter, roof, at(factor)),
    },
  ];
}
