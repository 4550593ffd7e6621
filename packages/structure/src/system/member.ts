import { corrugated, rectangle, roundHollow, roundSolid, type Section } from '@tautline/mechanics';
import type { MemberItem, SectionShape, SheetItem } from '@tautline/shelter';

/** Standard gravity, m/s2 (defined value). */
export const gravity = 9.80665;

/** Worked out once for each section that is met: every place of a member is asked for its stress. */
const sections = new WeakMap<SectionShape, Section>();

/** Section properties of a stock item in SI. A tapering pole counts with the mean of its two ends. */
export function sectionOf({ section }: MemberItem): Section {
  const known = sections.get(section) ?? propertiesOf(section);
  sections.set(section, known);
  return known;
}

function propertiesOf(section: SectionShape): Section {
  switch (section.shape) {
    case 'round-hollow':
      return roundHollow(section.outside, section.wall);
    case 'round-solid':
      return roundSolid(section.tip === undefined ? section.outside : (section.outside + section.tip) / 2);
    case 'rectangle':
      return rectangle(section.depth, section.breadth);
  }
}

/** A strip of sheet 1 m wide, bent along its waves or flat. */
export function sheetSection({ thickness, waves }: SheetItem): Section {
  return waves === undefined ? rectangle(thickness, 1) : corrugated(thickness, waves.depth, waves.pitch);
}

/** The section as it meets a load from the side: a rectangle about its other axis. */
export function sidewaysSection(item: MemberItem): Section {
  const { section } = item;
  return section.shape === 'rectangle' ? rectangle(section.breadth, section.depth) : sectionOf(item);
}

/** Size of the member as seen from the side, m. */
export function depthOf(item: MemberItem): number {
  const section = item.section;
  return section.shape === 'rectangle' ? section.depth : section.outside;
}

/** Weight per metre of the member itself, N/m. */
export function weightPerLength(item: MemberItem): number {
  return sectionOf(item).area * item.material.density * gravity;
}

/**
 * Share of the short-term modulus that is left after years under load: long-term over short-term
 * modulus. 1 for metals.
 */
export function relaxedShare(item: MemberItem): number {
  return Math.min(1, item.material.longTermModulus / item.material.modulus);
}

/** Strength and modulus factors at a temperature (°C), by straight lines between the catalogue's points. */
export function heatFactors(item: MemberItem, temperature: number): { strength: number; modulus: number } {
  const points = item.material.heat;
  if (points === undefined || points.length === 0) return { strength: 1, modulus: 1 };
  const first = points[0]!;
  if (temperature <= first[0]) return { strength: first[1], modulus: first[2] };
  for (let i = 1; i < points.length; i++) {
    const [t1, s1, m1] = points[i]!;
    const [t0, s0, m0] = points[i - 1]!;
    if (temperature <= t1) {
      const share = (temperature - t0) / (t1 - t0);
      return {
        strength: s0 + share * (s1 - s0),
        modulus: m0 + share * (m1 - m0),
      };
    }
  }
  const last = points[points.length - 1]!;
  return { strength: last[1], modulus: last[2] };
}
