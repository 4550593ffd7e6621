import { manningFlow, runoff as offRoof } from '@tautline/loads';
import type { Range } from '@tautline/shelter';
import type { Check } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, judge, length, measured, notChecked, step } from '../judge.ts';
import { remark } from '../remark.ts';
import { setQuantity } from '../slots.ts';

/** A path one can work the film from, m (18 in): common practice, no source. */
const workingRoom = 0.4572;
/** Ground on both sides of the drain that keeps it off the feet, m: common practice, no source. */
const shoulder = 0.1;
/** Widest gap worth offering, m: beyond it a drain pipe costs less ground. Common practice, no source. */
const widest = 3;
/** An earth drain between two shelters: depth, fall and roughness with grass (the last: Manning, from memory). */
const drain = { depth: 0.1, fall: 1 / 200, roughness: 0.03 } as const;

/** Each gap between two neighbours that drain into it. */
function onWater(range: Range): Found {
  const part = { id: 'range', origin: range.origin };
  const { gap, places } = range;
  const breadth = gap - 2 * shoulder;
  // Two roofs each send half of their water into the gap, and it rains into the gap as well.
  const wettest = places.slice(1).reduce(
    (most, { shelter }, index) => {
      const before = places[index]!.shelter;
      const length = Math.min(shelter.length, before.length);
      const rain = Math.max(shelter.site.rain, before.site.rain);
      const area = (shelter.width / 2 + before.width / 2 + gap) * length;
      return rain * area > most.rain * most.area ? { rain, area } : most;
    },
    { rain: 0, area: 0 },
  );
  const water = offRoof(wettest.rain, wettest.area);
  const carried = manningFlow(breadth * drain.depth, breadth + 2 * drain.depth, drain.fall, drain.roughness);
  return judge({
    part,
    utilisation: water.flow / carried.flow,
    demand: measured(water.flow, 'flow'),
    capacity: measured(carried.flow, 'flow'),
    loadCase: 'the heaviest rain',
    mild: true,
    message: [
      'In the heaviest rain ',
      measured(water.flow, 'flow'),
      ' of two roofs leaves each gap at its lower end; a drain ',
      measured(breadth, 'length'),
      ' wide and ',
      measured(drain.depth, 'length'),
      ' deep carries ',
      measured(carried.flow, 'flow'),
      '.',
    ],
    source: 'manning',
    steps: [
      water.step,
      step(
        'A',
        'section of the drain (common practice, no source)',
        'A = (gap - 2 a) d',
        [
          given('gap', 'between the foot lines', gap, 'length'),
          given('a', 'ground left on each side', shoulder, 'length'),
          given('d', 'depth', drain.depth, 'length'),
        ],
        breadth * drain.depth,
        'area',
        'practice',
      ),
      carried.step,
    ],
  });
}

function onRange(range: Range): Found[] {
  const part = { id: 'range', origin: range.origin };
  if (range.places.length < 2) return [];
  // Side by side without a gap they share a gutter, which `runoff` judges.
  const gutters = range.places.some(({ shelter }) =>
    (shelter.gutters ?? []).some((gutter) => gutter.where === 'between'),
  );
  const findings: Found[] = [];
  if (range.gap < workingRoom)
    findings.push(
      remark(
        part,
        gutters ? 'passes' : 'fails',
        [
          'Between neighbours there are ',
          measured(range.gap, 'length'),
          '; it takes ',
          measured(workingRoom, 'length'),
          ' to walk there with the film, and to clear what the roofs shed.',
        ],
        'practice',
      ),
    );
  if (gutters) return findings;
  if (range.gap <= 2.5 * shoulder)
    return [...findings, notChecked(part, 'the gap is too narrow for a drain between the feet')];
  return [...findings, onWater(range)];
}

export const neighbourGap: Check = {
  id: 'neighbour-gap',
  title: 'Gap between neighbours',
  nature: 'climate',
  asks: 'Does the gap between two shelters of a range lead away the water of both roofs, with room to work?',
  matters: 'What two roofs shed into a narrow gap washes out feet and drowns the rows beside it.',
  formula: 'u = i A / Q, Q = A_d R^(2/3) S^(1/2) / n',
  symbols: [
    { symbol: 'i', meaning: 'rain', kind: 'rain-rate' },
    { symbol: 'A', meaning: 'half of both roofs, and the gap', kind: 'area' },
    { symbol: 'A_d', meaning: 'section of an earth drain in the gap', kind: 'area' },
    { symbol: 'S', meaning: 'its fall, 1:200', kind: 'slope' },
    { symbol: 'n', meaning: 'roughness, 0.03 with grass', kind: 'ratio' },
  ],
  sources: ['rational-method', 'manning', 'practice'],
  leavesOut:
    'How the ground really falls, what soaks away, wind that neighbours send through the gap, and snow that slides into it.',
  mayBeAccepted: 'When the ground falls away steeply along the shelters, or a drain pipe lies in the gap.',
  run: () => [],
  onRange,
  rangeLevers: ({ gap, origin }) => [
    {
      type: 'number',
      from: gap,
      towards: widest,
      steps: { metric: 0.05, us: 0.0254 },
      title: (value) => ['Keep ', length(value), ' between neighbours'],
      edits: (value) => [setQuantity(origin, 'gap', value, 'length')],
    },
  ],
};
