/** Snow by ASCE 7-16 chapter 7. */
import { along } from '../interpolate.ts';
import { GRAVITY } from '../rain.ts';
import { given, type Step } from '../step.ts';
import {
  pitchOf,
  type SnowActions,
  type SnowCase,
  type SnowInput,
  type SnowShape,
  type SnowZone,
  slopeAt,
} from './snow-case.ts';

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

/** Balanced, least and drifted snow. `notCovered` is added to. */
export function asceSnow(input: SnowInput, shape: SnowShape, notCovered: string[]): SnowActions {
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
      steps: [
        step,
        {
          symbol: 'p_s',
          meaning: 'snow on the mean slope',
          formula: 'p_s = C_s p_f, slippery and free to slide',
          inputs: [
            given('p_f', 'flat-roof snow', flat, 'pressure'),
            given('C_s', 'slope factor', coldSlipperyFactor(pitch), 'ratio'),
          ],
          value: flat * coldSlipperyFactor(pitch),
          kind: 'pressure',
          source: 'asce7-16:7.4',
        },
      ],
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

/** 7.6.1: for 2.38° (1/2 on 12) to 30.26° (7 on 12); up to 6.1 m from eave to ridge the leeward side carries I_s p_g alone. */
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
          given('γ/g', 'density of the snow', weight / GRAVITY, 'density'),
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
