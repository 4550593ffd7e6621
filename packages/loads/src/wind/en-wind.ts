/** Wind actions by EN 1991-1-4:2005 with its recommended values. */
import { given, type Step } from '../step.ts';
import { enAlongCase } from './en-along.ts';
import {
  canopyCoefficients,
  highSideSlope,
  leewardSlope,
  type PitchCoefficients,
  vaultCoefficients,
  wallCoefficients,
  windwardSlope,
} from './en-coefficients.ts';
import { insideOf, netStep, type Part } from './en-net.ts';
import { type Outline, outlineOf } from './shape.ts';
import { enVelocityPressure } from './velocity-pressure.ts';
import type { WindActions, WindCase, WindInput, WindShape, WindZone } from './wind-case.ts';

export interface Roof {
  readonly id: string;
  readonly title: string;
  readonly source: string;
  readonly from?: 'low side' | 'high side';
  readonly parts: readonly Part[];
}

/** Wind cases by EN 1991-1-4 for one shelter standing alone. Pressures in Pa, characteristic. */
export function enWindActions(input: WindInput, shape: WindShape): WindActions {
  const outline = outlineOf(shape);
  const q = enVelocityPressure(input, outline.ridgeHeight);
  const cases: WindCase[] = [];
  const notCovered = [
    ...outline.notCovered,
    'Gust response of a limber frame and film (c_s c_d is taken as 1, as for roofs under 15 m).',
    'The coefficients and classes of EN 13031-1 for greenhouses: its text could not be opened, EN 1991-1-4 is used.',
    'National annexes: the recommended values are used.',
    'Shelter by, or channelling between, neighbouring shelters.',
  ];
  if (outline.enclosure !== 'open') {
    for (const roof of closedRoofs(shape, outline, notCovered)) {
      for (const inside of insideOf(outline).across)
        cases.push(closedCase(roof, inside, q.pressure, q.steps, shape, outline));
    }
  }
  if (outline.enclosure === 'open' || shape.sides === 'screened') {
    cases.push(...canopyCases(q.pressure, q.steps, shape, outline, notCovered));
  }
  cases.push(enAlongCase(q.pressure, q.steps, shape, outline, notCovered));
  return { cases, velocityPressure: q.pressure, notCovered };
}

/** Roofs of a shut house with the wind across; `edge` is F in the end zones. */
export function closedRoofs(
  shape: WindShape,
  outline: Outline,
  notCovered: string[],
  edge: 'F' | 'G' = 'G',
): Roof[] {
  if (shape.form === 'arch') {
    if (shape.rise / shape.span > 0.5) notCovered.push('Vaults higher than half their span: taken as half.');
    if (shape.rise / shape.span < 0.05) notCovered.push('Vaults flatter than 1 in 20 of their span.');
    const vault = vaultCoefficients(shape.rise / shape.span, shape.springing / shape.span);
    return vault.windward.map((cp, i) => ({
      id: i === 0 ? 'across' : 'across-second',
      title: i === 0 ? 'Wind across' : 'Wind across, second windward value',
      source: 'en1991-1-4:7.2.8',
      parts: [
        [0, 0.25, cp],
        [0.25, 0.75, vault.crown],
        [0.75, 1, vault.leeward],
      ],
    }));
  }
  if (outline.pitch < 5) notCovered.push('Roofs flatter than 5°: taken as 5°.');
  const strip = Math.min(shape.length, 2 * outline.ridgeHeight) / 10;
  const single = shape.form === 'single-slope';
  const share = Math.min(single ? 0.5 : 0.25, strip / shape.span);
  if (single) {
    const slope = (set: PitchCoefficients): Part[] => [
      [0, share, set.edge],
      [share, 1, set.rest],
    ];
    const source = 'en1991-1-4:7.2.4';
    return [
      {
        id: 'low-lifting',
        title: 'Wind on the low side, roof lifted',
        source,
        from: 'low side',
        parts: slope(windwardSlope(outline.pitch, 'low', edge)),
      },
      {
        id: 'low-pressing',
        title: 'Wind on the low side, roof pressed',
        source,
        from: 'low side',
        parts: slope(windwardSlope(outline.pitch, 'high', edge)),
      },
      {
        id: 'high',
        title: 'Wind on the high side',
        source,
        from: 'high side',
        parts: slope(highSideSlope(outline.pitch, edge)),
      },
    ];
  }
  const pairs = [
    ['low', 'low'],
    ['high', 'low'],
    ['low', 'high'],
    ['high', 'high'],
  ] as const;
  const name = { low: 'lifted', high: 'pressed' } as const;
  return pairs.map(([front, back]): Roof => {
    const windward = windwardSlope(outline.pitch, front, edge);
    const leeward = leewardSlope(outline.pitch, back);
    return {
      id: `across-${name[front]}-${name[back]}`,
      title: `Wind across, windward slope ${name[front]}, leeward slope ${back === 'low' ? 'lifted' : 'at rest'}`,
      source: 'en1991-1-4:7.2.5',
      parts: [
        [0, share, windward.edge],
        [share, 0.5, windward.rest],
        [0.5, 0.5 + share, leeward.edge],
        [0.5 + share, 1, leeward.rest],
      ],
    };
  });
}

export function closedCase(
  roof: Roof,
  inside: number,
  q: number,
  pressureSteps: readonly Step[],
  shape: WindShape,
  outline: Outline,
): WindCase {
  const net = (cp: number): number => q * (cp - inside);
  const zones: WindZone[] = roof.parts.map(([from, to, cp]) => ({
    surface: 'roof',
    from,
    to,
    net: net(cp),
  }));
  if (outline.walls) {
    const wall = wallCoefficients(outline.ridgeHeight / shape.span);
    zones.push({
      surface: 'windward-wall',
      from: 0,
      to: 1,
      net: outline.wallShare * net(wall.windward),
    });
    zones.push({
      surface: 'leeward-wall',
      from: 0,
      to: 1,
      net: outline.wallShare * net(wall.leeward),
    });
  }
  return {
    id: `${roof.id}-${inside > 0 ? 'inside-plus' : 'inside-minus'}`,
    title: `${roof.title}, ${inside > 0 ? 'blown up inside' : 'sucked in inside'}`,
    direction: 'across',
    ...(roof.from ? { from: roof.from } : {}),
    zones,
    steps: [
      ...pressureSteps,
      ...roof.parts.map((part) => netStep(part, inside, q, net(part[2]), roof.source)),
    ],
    source: roof.source,
  };
}

function canopyCases(
  q: number,
  pressureSteps: readonly Step[],
  shape: WindShape,
  outline: Outline,
  notCovered: string[],
): WindCase[] {
  if (shape.form === 'arch')
    notCovered.push('Open arched roofs: taken as a duopitch canopy of the same rise.');
  if (outline.pitch > 30) notCovered.push('Open roofs steeper than 30°: taken as 30°.');
  const blockage = shape.sides === 'screened' ? 1 : (shape.blockage ?? 0);
  const mono = shape.form === 'single-slope';
  const at = (share: number) => canopyCoefficients(mono ? 'mono' : 'duo', outline.pitch, share);
  // A crop may be away: a steep single slope is lifted more without it.
  const c = {
    max: at(blockage).max,
    min: Math.min(at(blockage).min, at(shape.sides === 'screened' ? 1 : 0).min),
  };
  const source = mono ? 'en1991-1-4:7.3-mono' : 'en1991-1-4:7.3-duo';
  const make = (id: string, title: string, cf: number, halves: readonly [number, number]): WindCase => ({
    id: `across-open-${id}`,
    title,
    direction: 'across',
    zones: [
      { surface: 'roof', from: 0, to: 0.5, net: q * cf * halves[0] },
      { surface: 'roof', from: 0.5, to: 1, net: q * cf * halves[1] },
    ],
    steps: [
      ...pressureSteps,
      {
        symbol: 'w',
        meaning: `net pressure on the roof, blockage ${blockage}`,
        formula: 'w = q_p c_f',
        inputs: [
          given('q_p', 'peak velocity pressure', q, 'pressure'),
          given('c_f', 'force coefficient', cf, 'ratio'),
        ],
        value: q * cf,
        kind: 'pressure',
        source,
      },
    ],
    source,
  });
  if (mono) {
    // Figure 7.16: the force acts a quarter of the depth from the windward edge, so the windward half has it all.
    return (['low', 'high'] as const).flatMap((side) => [
      {
        ...make(`${side}-up`, `Wind under the roof from the ${side} side, lifting`, c.min, [2, 0]),
        from: `${side} side` as const,
      },
      {
        ...make(`${side}-down`, `Wind under the roof from the ${side} side, pressing`, c.max, [2, 0]),
        from: `${side} side` as const,
      },
    ]);
  }
  return [
    make('up', 'Wind under the roof, lifting', c.min, [1, 1]),
    make('down', 'Wind under the roof, pressing', c.max, [1, 1]),
    make('up-windward', 'Wind under the roof, lifting the windward slope only', c.min, [1, 0]),
    make('down-windward', 'Wind under the roof, pressing the windward slope only', c.max, [1, 0]),
    make('up-leeward', 'Wind under the roof, lifting the leeward slope only', c.min, [0, 1]),
    make('down-leeward', 'Wind under the roof, pressing the leeward slope only', c.max, [0, 1]),
  ];
}
