/**
 * Weight of a cubic metre of water, N/m3: 1000 kg/m3, which fresh water reaches at 4 °C (999.97, from memory) and
 * rain at 15 °C falls short of by 1 in 1000, times standard gravity 9.80665 m/s2 (NIST SP 811). The one value of
 * mechanics, structure and checks; loads has the same (`WATER_WEIGHT`).
 */
export const WATER = 9806.65;

/**
 * Bending stiffness (N·m2) under which a simply supported, level beam of span `span` (m) carrying water over a
 * breadth `breadth` (m) ponds without end: γ·b·L⁴/pi⁴ (first mode of EI·w'''' = γ·b·w; derived).
 */
export const criticalPondingStiffness = (weight: number, breadth: number, span: number): number =>
  (weight * breadth * span ** 4) / Math.PI ** 4;

/** Tension (N per m of width) under which a level film strip ponds without end: γ·s²/pi² (first mode of -T·w'' = γ·w; derived). */
export const criticalPondingTension = (weight: number, span: number): number =>
  (weight * span ** 2) / Math.PI ** 2;

/**
 * By how much ponding enlarges the first mode of a sag that was there before the water: 1/(1 - critical/actual),
 * for stiffness as for tension. Infinity when the actual does not exceed the critical.
 */
export const pondingAmplification = (actual: number, critical: number): number =>
  actual > critical ? 1 / (1 - critical / actual) : Number.POSITIVE_INFINITY;
