/**
 * End zones of EN 1991-1-4:2005: zone F in the windward edge strip within e/4 of the ends (wind across), and the
 * strips F, G and H behind a windward end (wind along).
 */
import { given, type Step } from '../step.ts';
import { ridgewiseEnd } from './en-coefficients.ts';
import { insideOf } from './en-net.ts';
import { closedCase, closedRoofs } from './en-wind.ts';
import { type Outline, outlineOf } from './shape.ts';
import { enVelocityPressure } from './velocity-pressure.ts';
import type { EndStrip, EndWind, EndWindCase, WindInput, WindShape, WindZone } from './wind-case.ts';

const inTheEndZone = (title: string): string =>
  title.replace(/^(Wind [a-z ]+?)(,|$)/, (_, wind: string, rest: string) => `${wind} in the end zone${rest}`);

export function enEndWind(input: WindInput, shape: WindShape): EndWind {
  const outline = outlineOf(shape);
  if (outline.enclosure === 'open')
    return {
      width: 0,
      cases: [],
      none: 'EN 1991-1-4 gives frames under open roofs no end zones: its local coefficients (7.3) are for coverings and their fastenings',
      notCovered: [],
    };
  const q = enVelocityPressure(input, outline.ridgeHeight);
  const arch = shape.form === 'arch';
  const across = Math.min(shape.length, 2 * outline.ridgeHeight);
  const cases = [
    ...(arch ? [] : acrossCases(q.pressure, q.steps, shape, outline, across)),
    alongCase(q.pressure, q.steps, shape, outline),
  ];
  return {
    width: Math.max(...cases.map(({ strips }) => strips[0]!.to)),
    cases,
    notCovered: arch ? ['EN 1991-1-4 gives vaults no end zones with the wind across (figure 7.11).'] : [],
  };
}

function reachStep(part: string, share: number, e: number, height: number, side: number): Step {
  return {
    symbol: 'l_F',
    meaning: `reach of ${part} from the end`,
    formula: `l_F = e / ${share}, e = min(b, 2 h)`,
    inputs: [
      given('b', 'side across the wind', side, 'length'),
      given('h', 'height of the ridge', height, 'length'),
    ],
    value: e / share,
    kind: 'length',
    source: 'en1991-1-4:7.2.5',
  };
}

function acrossCases(
  q: number,
  pressureSteps: readonly Step[],
  shape: WindShape,
  outline: Outline,
  e: number,
): EndWindCase[] {
  const reach = reachStep('zone F', 4, e, outline.ridgeHeight, shape.length);
  const at = (edge: 'F' | 'G') => closedRoofs(shape, outline, [], edge);
  const inner = at('G');
  return at('F').flatMap((roof, k) =>
    insideOf(outline).across.map((inside): EndWindCase => {
      const made = closedCase(roof, inside, q, [...pressureSteps, reach], shape, outline);
      const behind = closedCase(inner[k]!, inside, q, [], shape, outline);
      const { zones, alongForce: _none, ...rest } = made;
      return {
        ...rest,
        id: `end-${made.id}`,
        title: inTheEndZone(made.title),
        strips: [
          { from: 0, to: e / 4, zones },
          { from: e / 4, to: Number.POSITIVE_INFINITY, zones: behind.zones },
        ],
      };
    }),
  );
}

function alongCase(
  q: number,
  pressureSteps: readonly Step[],
  shape: WindShape,
  outline: Outline,
): EndWindCase {
  const mono = shape.form === 'single-slope';
  const c = ridgewiseEnd(mono ? 'mono' : 'duo', outline.pitch);
  const inside = insideOf(outline).along;
  const e = Math.min(shape.span, 2 * outline.ridgeHeight);
  const source = mono ? 'en1991-1-4:7.3b' : 'en1991-1-4:7.2.5';
  const net = (cp: number): number => q * (cp - inside);
  const edge = Math.min(0.5, e / 4 / shape.span);
  const roof = (from: number, to: number, cp: number): WindZone => ({
    surface: 'roof',
    from,
    to,
    net: net(cp),
  });
  // Side walls, zones A, B and C of table 7.1.
  const walls = (cp: number): WindZone[] =>
    outline.walls
      ? (['windward-wall', 'leeward-wall'] as const).map((surface) => ({
          surface,
          from: 0,
          to: 1,
          net: outline.wallShare * net(cp),
        }))
      : [];
  const roofStrips: EndStrip[] = [
    {
      from: 0,
      to: e / 10,
      zones: [roof(0, edge, c.low), roof(edge, 1 - edge, c.middle), roof(1 - edge, 1, c.high)],
    },
    { from: e / 10, to: e / 2, zones: [roof(0, 1, c.behind)] },
    { from: e / 2, to: Number.POSITIVE_INFINITY, zones: [roof(0, 1, c.rest)] },
  ];
  const wallCp = (at: number): number => (at < e / 5 ? -1.2 : at < e ? -0.8 : -0.5);
  const bounds = [e / 10, e / 5, e / 2, e, Number.POSITIVE_INFINITY];
  const pressed = (zone: string, cp: number): Step => ({
    symbol: `w_${zone}`,
    meaning: `net pressure on zone ${zone} behind the windward end`,
    formula: 'w = q_p (c_pe - c_pi)',
    inputs: [
      given('q_p', 'peak velocity pressure', q, 'pressure'),
      given('c_pe', 'outside coefficient', cp, 'ratio'),
      given('c_pi', 'inside coefficient (7.2.9)', inside, 'ratio'),
    ],
    value: net(cp),
    kind: 'pressure',
    source,
  });
  return {
    id: 'end-along',
    title: 'Wind along the house in the end zone, blown up inside',
    direction: 'along',
    ...(mono ? { from: 'low side' as const } : {}),
    strips: bounds.map((to, k): EndStrip => {
      const from = k === 0 ? 0 : bounds[k - 1]!;
      const over = roofStrips.find((strip) => from < strip.to)!;
      return { from, to, zones: [...over.zones, ...walls(wallCp(from))] };
    }),
    steps: [
      ...pressureSteps,
      reachStep('zones F and G', 10, e, outline.ridgeHeight, shape.span),
      pressed('F', c.high),
      pressed('G', c.middle),
      pressed('H', c.behind),
    ],
    source,
  };
}
