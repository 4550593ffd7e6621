/** What is meant to go first, where something gives without any wind. */
import { describe, expect, it } from 'vitest';
import type { FirstFailure } from '../src/gust-order.ts';
import { checkOf } from '../src/registry.ts';
import { runCheck } from '../src/run-check.ts';
import { inputOf, origin, sprungHouse } from './houses.ts';

const house = sprungHouse();
const { roof } = house;
const shelter = { ...house, roof: { ...roof, sacrificial: true } };

const gives = (part: string, gust: number, sacrificial: boolean): FirstFailure => ({
  ...{ part, origin, what: `${part} gives`, check: 'over-span', gust, loadCase: 'wind' },
  ...{ sacrificial, estimated: false },
});

function judged(...failures: readonly FirstFailure[]) {
  const [finding] = runCheck(checkOf('storm-order')!, {
    ...inputOf(shelter),
    gusts: { failures, unranked: [], upTo: 78 },
  });
  return finding!;
}

describe('the order in a storm', () => {
  it('fails where the rest gives without wind, whether or not the sacrificial part does too', () => {
    expect(judged(gives(roof.id, 0, true), gives('post', 0, false)).verdict).toBe('fails');
    expect(judged(gives(roof.id, 20, true), gives('post', 0, false)).verdict).toBe('fails');
  });

  it('passes where the sacrificial part goes 15 % before the rest', () => {
    expect(judged(gives(roof.id, 20, true), gives('post', 23.1, false)).verdict).toBe('passes');
    expect(judged(gives(roof.id, 20, true), gives('post', 22.9, false)).verdict).toBe('fails');
  });
});
