/** Wind actions by ASCE 7-16 chapters 26 and 27 (directional procedure, rigid building, G = 0.85). */
import { given, type Step } from '../step.ts';
import { asceAlongCase } from './asce-along.ts';
import {
  archCoefficients,
  freeRoofCoefficients,
  gableCoefficients,
  leewardWall,
  parallelCoefficients,
} from './asce-coefficients.ts';
import { GUST_EFFECT, INSIDE, netStep } from './asce-net.ts';
import { type Outline, outlineOf } from './shape.ts';
import { asceVelocityPressure } from './velocity-pressure.ts';
import type { WindActions, WindCase, WindInput, WindShape, WindZone } from './wind-case.ts';

interface Roof {
  readonly id: string;
  readonly title: string;
  readonly source: string;
  readonly from?: 'low side' | 'high side';
  /** [from, to, C_p] along the roof line. */
  readonly parts: readonly (readonly [number, number, number])[];
}

/** Wind cases by ASCE 7-16 for one shelter standing alone. Pressures in Pa, at strength level. */
export function asceWindActions(input: WindInput, shape: WindShape): WindActions {
  const outline = outlineOf(shape);
  const q = asceVelocityPressure(input, outline.meanHeight);
  const cases: WindCase[] = [];
  const notCovered = [
    ...outline.notCovered,
    'Gust response of a limber frame and film (the gust factor 0.85 is for rigid buildings).',
    'The least wind load of 27.1.5 (770 Pa on walls, 380 Pa on the upright projection of the roof).',
    'Shelter by, or channelling between, neighbouring shelters.',
  ];
  const across = outline.enclosure === 'open' ? [] : closedRoofs(shape, outline, notCovered);
  for (const roof of across) {
    for (const inside of [INSIDE[outline.enclosure], -INSIDE[outline.enclosure]]) {
      cases.push(closedCase(roof, inside, q.pressure, q.steps, shape, outline));
    }
  }
  if (outline.enclosure === 'open' || shape.sides === 'screened') {
    cases.push(...openCases(q.pressure, q.steps, shape, outline, notCovered));
  }
  cases.push(asceAlongCase(q.pressure, q.steps, shape, outline));
  return { cases, velocityPressure: q.pressure, notCovered };
}

function closedRoofs(shape: WindShape, outline: Outline, notCovered: string[]): Roof[] {
  if (shape.form === 'arch') {
    const r = shape.rise / shape.span;
    if (r > 0.6) notCovered.push('Arches higher than 0.6 of their span: taken as 0.6.');
    const arch = archCoefficients(r, shape.springing > 0);
    return arch.windwardQuarter.map((cp, i) => ({
      id: i === 0 ? 'across' : 'across-second',
      title: i === 0 ? 'Wind across' : 'Wind across, second windward value',
      source: 'asce7-16:27.3-3',
      parts: [
        [0, 0.25, cp],
        [0.25, 0.75, arch.centreHalf],
        [0.75, 1, arch.leewardQuarter],
      ],
    }));
  }
  const ratio = outline.meanHeight / shape.span;
  const source = 'asce7-16:27.3-1';
  if (outline.pitch < 10) {
    const parts = flatParts(ratio);
    const flat: Roof = {
      id: 'across',
      title: 'Wind across, suction',
      source,
      parts,
    };
    const low: Roof = {
      id: 'across-pressing',
      title: 'Wind across, least suction',
      source,
      parts: [[0, 1, -0.18]],
    };
    return [flat, low];
  }
  const gable = gableCoefficients(outline.pitch, ratio);
  if (shape.form === 'gable') {
    return [
      {
        id: 'across-lifting',
        title: 'Wind across, windward slope lifted',
        source,
        parts: [
          [0, 0.5, gable.windwardSuction],
          [0.5, 1, gable.leeward],
        ],
      },
      {
        id: 'across-pressing',
        title: 'Wind across, windward slope pressed',
        source,
        parts: [
          [0, 0.5, gable.windwardPressure],
          [0.5, 1, gable.leeward],
        ],
      },
    ];
  }
  return [
    {
      id: 'low-lifting',
      title: 'Wind on the low side, roof lifted',
      source,
      from: 'low side',
      parts: [[0, 1, gable.windwardSuction]],
    },
    {
      id: 'low-pressing',
      title: 'Wind on the low side, roof pressed',
      source,
      from: 'low side',
      parts: [[0, 1, gable.windwardPressure]],
    },
    {
      id: 'high',
      title: 'Wind on the high side',
      source,
      from: 'high side',
      parts: [[0, 1, gable.leeward]],
    },
  ];
}

/** Strips by distance from the windward eave, in heights, as shares of the span; `ratio` is h over span. */
function flatParts(ratio: number): [number, number, number][] {
  return parallelCoefficients(ratio)
    .map(([from, to, cp]): [number, number, number] => [from * ratio, Math.min(1, to * ratio), cp])
    .filter(([from, to]) => from < 1 && to > from);
}

function closedCase(
  roof: Roof,
  inside: number,
  q: number,
  pressureSteps: readonly Step[],
  shape: WindShape,
  outline: Outline,
): WindCase {
  const net = (cp: number): number => q * (GUST_EFFECT * cp - inside);
  const zones: WindZone[] = roof.parts.map(([from, to, cp]) => ({
    surface: 'roof',
    from,
    to,
    net: net(cp),
  }));
  if (outline.walls) {
    const share = outline.wallShare;
    zones.push({
      surface: 'windward-wall',
      from: 0,
      to: 1,
      net: share * net(0.8),
    });
    zones.push({
      surface: 'leeward-wall',
      from: 0,
      to: 1,
      net: share * net(leewardWall(shape.span / shape.length)),
    });
  }
  const sign = inside > 0 ? 'blown up inside' : 'sucked in inside';
  return {
    id: `${roof.id}-${inside > 0 ? 'inside-plus' : 'inside-minus'}`,
    title: `${roof.title}, ${sign}`,
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

function openCases(
  q: number,
  pressureSteps: readonly Step[],
  shape: WindShape,
  outline: Outline,
  notCovered: string[],
): WindCase[] {
  if (shape.form === 'arch') {
    notCovered.push('Open arched roofs: taken as a pitched free roof of the same rise.');
  }
  if (outline.pitch > 45) notCovered.push('Open roofs steeper than 45°: taken as 45°.');
  if (!outline.obstructed)
    notCovered.push(
      'Goods stored under an open roof: the wind is taken to pass freely where no crop, bench or tank of more than half the height stands in its way.',
    );
  const ratio = outline.meanHeight / shape.span;
  if (ratio < 0.25 || ratio > 1) {
    notCovered.push('Open roofs whose mean height is under a quarter of the span, or over it.');
  }
  const source = shape.form === 'single-slope' ? 'asce7-16:27.3-4' : 'asce7-16:27.3-5';
  const kinds = shape.form === 'single-slope' ? (['low', 'high'] as const) : (['pitched'] as const);
  const each = outline.flows.flatMap((flow) => kinds.map((kind) => ({ flow, kind })));
  return each.flatMap(({ flow, kind }) =>
    freeRoofCoefficients(kind, outline.pitch, flow === 'obstructed').map((free): WindCase => {
      const past = flow === 'obstructed' && outline.flows.length > 1;
      const net = (cn: number): number => q * GUST_EFFECT * cn;
      const steps = [free.windward, free.leeward].map(
        (cn, i): Step => ({
          symbol: i === 0 ? 'p_W' : 'p_L',
          meaning: `net pressure on the ${i === 0 ? 'windward' : 'leeward'} half, ${flow} flow`,
          formula: 'p = q_h G C_N',
          inputs: [
            given('q_h', 'velocity pressure', q, 'pressure'),
            given('G', 'gust factor', GUST_EFFECT, 'ratio'),
            given('C_N', 'net coefficient', cn, 'ratio'),
          ],
          value: net(cn),
          kind: 'pressure',
          source,
        }),
      );
      return {
        id: `across-open-${kind}-${free.name.toLowerCase()}${past ? '-obstructed' : ''}`,
        title: `Wind through under the roof${kind === 'pitched' ? '' : ` from the ${kind} side`}${past ? ', what stands there in its way' : ''}, case ${free.name}`,
        direction: 'across',
        ...(kind === 'pitched' ? {} : { from: `${kind} side` as const }),
        zones: [
          { surface: 'roof', from: 0, to: 0.5, net: net(free.windward) },
          { surface: 'roof', from: 0.5, to: 1, net: net(free.leeward) },
        ],
        steps: [...pressureSteps, ...steps],
        source,
      };
    }),
  );
}
