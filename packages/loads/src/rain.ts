/** Rain: weight of standing water and the load of a head of it. */
import { given, type Step } from './step.ts';

/** Weight of fresh water, N/m³: 1000 kg/m³ at 4 °C (from memory) times standard gravity 9.80665 m/s². */
export const WATER_WEIGHT = 9806.65;

/** Standard gravity, m/s² (CGPM 1901). */
export const GRAVITY = 9.80665;

export interface RainLoad {
  /** Pa. */
  readonly load: number;
  readonly step: Step;
}

/**
 * Rain load on undeflected film or gutter, R = γ_w (d_s + d_h): static head to the lip at which it spills
 * plus the head that drives the spill (ASCE 7 8.3: 0.0098 kPa per mm). Heads in m; load in Pa. The growth
 * of a pond by deflection is not in here: that is an analysis of the structure.
 */
export function rainLoad(staticHead: number, hydraulicHead: number): RainLoad {
  const load = WATER_WEIGHT * (staticHead + hydraulicHead);
  return {
    load,
    step: {
      symbol: 'R',
      meaning: 'rain load on the undeflected roof',
      formula: 'R = γ_w (d_s + d_h)',
      inputs: [
        given('γ_w/g', 'density of water', WATER_WEIGHT / GRAVITY, 'density'),
        given('d_s', 'depth to the lip', staticHead, 'length'),
        given('d_h', 'head over the lip', hydraulicHead, 'length'),
      ],
      value: load,
      kind: 'pressure',
      source: 'asce7-16:8.3',
    },
  };
}
