/** Snow on arches, gables and single slopes: ASCE 7-16 chapter 7 and EN 1991-1-3. */
import type { Basis } from './combinations.ts';
import { along } from './interpolate.ts';
import { given, type Step } from './step.ts';

export interface SnowInput {
  readonly basis: Basis;
  /** Ground snow, Pa. */
  readonly groundSnow: number;
  readonly exposure: 'sheltered' | 'open' | 'coastal';
  readonly lowHazard: boolean;
}

export interface SnowShape {
  readonly form: 'arch' | 'gable' | 'single-slope';
  readonly span: number;
  readonly rise: number;
}

/** Upright load on plan, Pa, straight from one end of the strip to the other; places as shares of the span. */
export interface SnowZone {
  readonly from: number;
  readonly to: number;
  readonly loadFrom: number;
  readonly loadTo: number;
}

export interface SnowCase {
  readonly id: string;
  readonly title: string;
  readonly zones: readonly SnowZone[];
  readonly steps: readonly Step[];
  readonly source: string;
}

export interface SnowActions {
  readonly cases: readonly SnowCase[];
  readonly notCovered: readonly string[];
}

/** C_s of an unheated (C_t = 1.2), slippery, unobstructed roof by slope in degrees: ASCE 7-16 figure 7.4-1c. */
export function coldSlipperyFactor(degrees: number): number {
  return along(
    [
      [15, 1],
      [70, 0],
    ],
    degrees,
  );
}

/** μ_1 of EN 1991-1-3 table 5.2 by slope in degrees. */
export function enPitchedFactor(degrees: number): number {
  return along(
    [
      [30, 0.8],
      [60, 0],
    ],
    degrees,
  );
}

/** μ_3 of EN 1991-1-3 5.3.5 by rise over span, at most 2. */
export function enCylindricalFactor(riseRatio: number): number {
  return Math.min(2, 0.2 + 10 * riseRatio);
}

/** Snow cases, Pa on plan. No case when there is no ground snow. Throws a RangeError for span or rise of 0. */
export function snowActions(input: SnowInput, shape: SnowShape): SnowActions {
  if (!(shape.span > 0 && shape.rise > 0)) throw new RangeError('snow needs a span and rise above zero');
  if (input.groundSnow <= 0) return { cases: [], notCovered: [] };
  const notCovered = ['Snow that slides off and piles up against the sides or off a higher roof.'];
  return input.basis === 'eurocode' ? enSnow(input, shape, notCovered) : asceSnow(input, shape, notCovered);
}

/** A snow case with its load as a function of the place on plan. */
export interface PlacedSnowCase extends SnowCase {
  /** Pa on plan at a share 0..1 of the span. */
  readonly pressureAt: (share: number) => number;
}

/** `snowActions` with each case's load as a function of place; both inputs may carry more facts than needed. */
export function snowCases(
  input: SnowInput,
  shape: SnowShape,
): { readonly cases: readonly PlacedSnowCase[]; readonly notCovered: readonly string[] } {
  const actions = snowActions(input, shape);
  return {
    cases: actions.cases.map((snow) => ({ ...snow, pressureAt: (share) => pressureIn(snow.zones, share) })),
    notCovered: actions.notCovered,
  };
}

function pressureIn(zones: readonly SnowZone[], share: number): number {
  const zone = zones.find(({ from, to }) => share >= from && share <= to);
  if (zone === undefined) return 0;
  const along = zone.to > zone.from ? (share - zone.from) / (zone.to - zone.from) : 0;
  return zone.loadFrom + (zone.loadTo - zone.loadFrom) * along;
}

/** Slope in degrees at a share x of the span of a circular arch; the pitch of straight roofs. */
export function slopeAt(shape: SnowShape, x: number): number {
  if (shape.form !== 'arch') return pitchOf(shape);
  const radius = shape.span ** 2 / (8 * shape.rise) + shape.rise / 2;
  const offset = Math.min(1, (Math.abs(x - 0.5) * shape.span) / radius);
  const angle = (Math.asin(offset) * 180) / Math.PI;
  const below = shape.rise > radius && Math.abs(x - 0.5) > 0.4999;
  return below ? 180 - angle : angle;
}

function pitchOf(shape: SnowShape): number {
  const run = shape.form === 'single-slope' ? shape.span : shape.span / 2;
  return (Math.atan2(shape.rise, run) * 180) / Math.PI;
}

function asceSnow(input: SnowInput, shape: SnowShape, notCovered: string[]): SnowActions {
  const ce = { sheltered: 1, open: 1, coastal: 0.9 }[input.exposure];
  const importance = input.lowHazard ? 0.8 : 1;
  const flat = 0.7 * ce * 1.2 * importance * input.groundSnow;
  const pitch = pitchOf(shape);
  const step: Step = {
    symbol: 'p_f',
    meaning: 'flat-roof snow',
    formula: 'p_f = 0.7 C_e C_t I_s p_g',
    inputs: [
      given('p_g', 'ground snow', input.groundSnow, 'pressure'),
      given('C_e', 'exposure', ce, 'ratio'),
      given('C_t', 'unheated', 1.2, 'ratio'),
      given('I_s', 'importance', importance, 'ratio'),
    ],
    value: flat,
    kind: 'pressure',
    source: 'asce7-16:7.3',
  };
  const cases: SnowCase[] = [
    {
      id: 'balanced',
      title: 'Snow all over',
      zones: zonesOf(shape, (x) => flat * coldSlipperyFactor(slopeAt(shape, x))),
      steps: [step],
      source: 'asce7-16:7.4',
    },
  ];
  if (pitch < 15 || (shape.form === 'arch' && pitch < 10)) {
    const least = importance * Math.min(input.groundSnow, 958);
    cases.push({
      id: 'least',
      title: 'Least snow on a low roof',
      zones: [{ from: 0, to: 1, loadFrom: least, loadTo: least }],
      steps: [
        {
          symbol: 'p_m',
          meaning: 'least snow load of low-slope roofs',
          formula: 'p_m = I_s p_g, at most I_s · 958 Pa (20 psf)',
          inputs: [given('p_g', 'ground snow', input.groundSnow, 'pressure')],
          value: least,
          kind: 'pressure',
          source: 'asce7-16:7.3.4',
        },
      ],
      source: 'asce7-16:7.3.4',
    });
  }
  const drift =
    shape.form === 'arch'
      ? archDrift(shape, flat, ce, pitch)
      : gableDrift(input, shape, flat, pitch, importance);
  if (drift) cases.push({ ...drift, steps: [step, ...drift.steps] });
  if (shape.form === 'single-slope') notCovered.push('Drifts on a single slope (ASCE 7 has none).');
  return { cases, notCovered };
}

/** 7.6.2: windward half bare; leeward half from 0.5 p_f at the crown to 2 p_f C_s/C_e at 30° or the eave. */
function archDrift(shape: SnowShape, flat: number, ce: number, equivalent: number): SnowCase | undefined {
  if (equivalent < 10 || equivalent > 60) return undefined;
  const eave = slopeAt(shape, 1);
  const radius = shape.span ** 2 / (8 * shape.rise) + shape.rise / 2;
  const placeOf = (degrees: number): number =>
    Math.min(1, 0.5 + (radius * Math.sin((degrees * Math.PI) / 180)) / shape.span);
  const peakSlope = Math.min(30, eave);
  const peak = (2 * flat * coldSlipperyFactor(peakSlope)) / ce;
  const peakAt = placeOf(peakSlope);
  const zones: SnowZone[] = [{ from: 0.5, to: peakAt, loadFrom: 0.5 * flat, loadTo: peak }];
  if (eave > 30) {
    const endSlope = Math.min(70, eave);
    const end = peak * (1 - (endSlope - 30) / 40);
    zones.push({
      from: peakAt,
      to: placeOf(endSlope),
      loadFrom: peak,
      loadTo: end,
    });
  }
  return {
    id: 'unbalanced',
    title: 'Snow drifted to one side',
    zones,
    source: 'asce7-16:7.6.2',
    steps: [
      {
        symbol: 'p_drift',
        meaning: 'peak of the drift on the leeward side',
        formula: 'p = 2 p_f C_s / C_e at a slope of 30°, or at the eave when flatter',
        inputs: [
          given('p_f', 'flat-roof snow', flat, 'pressure'),
          given('C_s', 'slope factor there', coldSlipperyFactor(peakSlope), 'ratio'),
          given('C_e', 'exposure', ce, 'ratio'),
        ],
        value: peak,
        kind: 'pressure',
        source: 'asce7-16:7.6.2',
      },
    ],
  };
}

/** 7.6.1: for 2.4° to 30.2°; up to 6.1 m from eave to ridge the leeward side carries I_s p_g alone. */
function gableDrift(
  input: SnowInput,
  shape: SnowShape,
  flat: number,
  pitch: number,
  importance: number,
): SnowCase | undefined {
  if (shape.form !== 'gable' || pitch < 2.38 || pitch > 30.26) return undefined;
  const run = shape.span / 2;
  if (run <= 6.1) {
    const load = importance * input.groundSnow;
    return {
      id: 'unbalanced',
      title: 'Snow on the leeward slope only',
      zones: [{ from: 0.5, to: 1, loadFrom: load, loadTo: load }],
      source: 'asce7-16:7.6.1',
      steps: [
        {
          symbol: 'p_lee',
          meaning: 'leeward slope, rafters of 6.1 m and less',
          formula: 'p = I_s p_g, windward slope bare',
          inputs: [given('p_g', 'ground snow', input.groundSnow, 'pressure')],
          value: load,
          kind: 'pressure',
          source: 'asce7-16:7.6.1',
        },
      ],
    };
  }
  const sloped = flat * coldSlipperyFactor(pitch);
  const height = driftHeight(run, input.groundSnow) * Math.sqrt(importance);
  const steep = run / shape.rise;
  const weight = snowWeight(input.groundSnow);
  const surcharge = (height * weight) / Math.sqrt(steep);
  const reach = Math.min(0.5, (8 * height * Math.sqrt(steep)) / 3 / shape.span);
  return {
    id: 'unbalanced',
    title: 'Snow drifted over the ridge',
    zones: [
      { from: 0, to: 0.5, loadFrom: 0.3 * sloped, loadTo: 0.3 * sloped },
      {
        from: 0.5,
        to: 0.5 + reach,
        loadFrom: sloped + surcharge,
        loadTo: sloped + surcharge,
      },
      { from: 0.5 + reach, to: 1, loadFrom: sloped, loadTo: sloped },
    ],
    source: 'asce7-16:7.6.1',
    steps: [
      {
        symbol: 'h_d γ/√S',
        meaning: 'surcharge of the drift behind the ridge',
        formula: 'p = p_s + h_d γ / √S over 8 h_d √S / 3',
        inputs: [
          given('h_d', 'drift height', height, 'length'),
          given('γ', 'weight of snow, N/m³', weight, 'density'),
          given('S', 'run for a rise of one', steep, 'ratio'),
        ],
        value: surcharge,
        kind: 'pressure',
        source: 'asce7-16:7.6.1',
      },
    ],
  };
}

/** Drift height of ASCE 7-16 figure 7.6-1, m; fetch in m (at least 6.1), ground snow in Pa. */
export function driftHeight(fetch: number, groundSnow: number): number {
  const feet = Math.max(20, fetch / 0.3048);
  const psf = groundSnow / 47.88;
  return Math.max(0, 0.43 * Math.cbrt(feet) * (psf + 10) ** 0.25 - 1.5) * 0.3048;
}

/** Weight of snow of ASCE 7-16 eq. 7.7-1, N/m³: 0.426 p_g + 2200, at most 4700. Ground snow in Pa. */
export function snowWeight(groundSnow: number): number {
  return Math.min(4700, 0.426 * groundSnow + 2200);
}

function enSnow(input: SnowInput, shape: SnowShape, notCovered: string[]): SnowActions {
  const ce = { sheltered: 1.2, open: 1, coastal: 1 }[input.exposure];
  const base = ce * input.groundSnow;
  const stepOf = (symbol: string, mu: number, source: string): Step => ({
    symbol: 's',
    meaning: 'snow on the roof',
    formula: `s = ${symbol} C_e C_t s_k`,
    inputs: [
      given(symbol, 'shape factor', mu, 'ratio'),
      given('C_e', 'exposure', ce, 'ratio'),
      given('C_t', 'unheated', 1, 'ratio'),
      given('s_k', 'ground snow', input.groundSnow, 'pressure'),
    ],
    value: mu * base,
    kind: 'pressure',
    source,
  });
  const whole = (load: number): SnowZone[] => [{ from: 0, to: 1, loadFrom: load, loadTo: load }];
  if (shape.form !== 'arch') {
    const mu = enPitchedFactor(pitchOf(shape));
    const source = shape.form === 'gable' ? 'en1991-1-3:5.3.3' : 'en1991-1-3:5.3.2';
    const cases: SnowCase[] = [
      {
        id: 'balanced',
        title: 'Snow all over',
        zones: whole(mu * base),
        steps: [stepOf('μ_1', mu, source)],
        source,
      },
    ];
    if (shape.form === 'gable') {
      cases.push({
        id: 'unbalanced',
        title: 'Half the snow on one slope',
        zones: [
          {
            from: 0,
            to: 0.5,
            loadFrom: 0.5 * mu * base,
            loadTo: 0.5 * mu * base,
          },
          { from: 0.5, to: 1, loadFrom: mu * base, loadTo: mu * base },
        ],
        steps: [stepOf('μ_1', mu, source)],
        source,
      });
    }
    return { cases, notCovered };
  }
  const source = 'en1991-1-3:5.3.5';
  const mu3 = enCylindricalFactor(shape.rise / shape.span);
  // Only the part flatter than 60° holds snow; l_s is its width on plan.
  const radius = shape.span ** 2 / (8 * shape.rise) + shape.rise / 2;
  const half = Math.min(0.5, (radius * Math.sin(Math.PI / 3)) / shape.span);
  const [l, r] = [0.5 - half, 0.5 + half];
  const cases: SnowCase[] = [
    {
      id: 'balanced',
      title: 'Snow all over the part flatter than 60°',
      zones: [{ from: l, to: r, loadFrom: 0.8 * base, loadTo: 0.8 * base }],
      steps: [stepOf('μ', 0.8, source)],
      source,
    },
    {
      id: 'unbalanced',
      title: 'Snow drifted to one side',
      zones: [
        { from: l, to: l + half / 2, loadFrom: 0, loadTo: 0.5 * mu3 * base },
        { from: l + half / 2, to: 0.5, loadFrom: 0.5 * mu3 * base, loadTo: 0 },
        { from: 0.5, to: 0.5 + half / 2, loadFrom: 0, loadTo: mu3 * base },
        { from: 0.5 + half / 2, to: r, loadFrom: mu3 * base, loadTo: 0 },
      ],
      steps: [stepOf('μ_3', mu3, source)],
      source,
    },
  ];
  return { cases, notCovered };
}

/** Straight strips fine enough (20) to follow an arch; one strip for straight roofs. */
function zonesOf(shape: SnowShape, load: (x: number) => number): SnowZone[] {
  if (shape.form !== 'arch') return [{ from: 0, to: 1, loadFrom: load(0.25), loadTo: load(0.25) }];
  return Array.from({ length: 20 }, (_, i) => ({
    from: i / 20,
    to: (i + 1) / 20,
    loadFrom: load(i / 20),
    loadTo: load((i + 1) / 20),
  }));
}
