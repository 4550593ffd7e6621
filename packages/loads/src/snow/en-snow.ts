/** Snow by EN 1991-1-3. */
import { along } from '../interpolate.ts';
import { given, type Step } from '../step.ts';
import {
  pitchOf,
  type SnowActions,
  type SnowCase,
  type SnowInput,
  type SnowShape,
  type SnowZone,
} from './snow-case.ts';

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

/** Balanced and drifted snow. */
export function enSnow(input: SnowInput, shape: SnowShape, notCovered: string[]): SnowActions {
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
