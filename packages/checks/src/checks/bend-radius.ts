import type { Bows, MemberItem, Shelter } from '@tautline/shelter';
import { depthOf } from '@tautline/structure';
import type { Check } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, inWords, judge, measured, notChecked, step } from '../judge.ts';
import { flatter } from '../levers.ts';

/** Lamella thickness over radius that softwood boards take when bent dry, NDS 5.3.8: t/R ≤ 1/125. */
const laminationLimit = 125;

/** Sharpest curvature anywhere on the bow, 1/m, and where. */
function sharpest(bows: Bows): { curvature: number; s: number } {
  return bows.line.reduce(
    (best, point) =>
      Math.abs(point.curvature) > best.curvature
        ? { curvature: Math.abs(point.curvature), s: point.s }
        : best,
    { curvature: 0, s: 0 },
  );
}

/**
 * Curvature at which a thin tube kinks under pure bending: Brazier's κ = √2 t / (3 r² √(1-ν²)) with
 * ν = 0.4 for plastics. Half of it is taken as the limit.
 */
function kinkCurvature(member: MemberItem): number | undefined {
  if (member.section.shape !== 'round-hollow') return undefined;
  const { outside, wall } = member.section;
  const meanRadius = (outside - wall) / 2;
  return (Math.SQRT2 * wall) / (3 * meanRadius ** 2 * Math.sqrt(1 - 0.4 ** 2));
}

function allowedRadius(bows: Bows): { radius: number; source: string; formula: string } | { reason: string } {
  const { member } = bows;
  switch (bows.shape) {
    case 'cold-bent':
    case 'arc':
    case 'pointed': {
      if (member.leastBendRadius !== undefined) {
        return {
          radius: member.leastBendRadius,
          source: 'nec:358.24',
          formula: 'R_least from the catalogue',
        };
      }
      return {
        reason: `the catalogue gives no least bend radius for ${member.title}`,
      };
    }
    case 'laminated': {
      const section = member.section;
      if (section.shape !== 'rectangle') return { reason: 'a laminated bow needs a rectangular section' };
      const lamella = section.depth / (section.laminations ?? 1);
      return {
        radius: lamella * laminationLimit,
        source: 'nds:5.3.8',
        formula: 'R_least = 125 t',
      };
    }
    case 'elastic': {
      const kink = kinkCurvature(member);
      if (kink === undefined)
        return {
          reason: 'a solid section does not kink; its bending stress is checked instead',
        };
      return {
        radius: 2 / kink,
        source: 'brazier',
        formula: 'R_least = 2 / κ_kink, κ_kink = √2 t / (3 r² √(1-ν²))',
      };
    }
  }
}

function run(shelter: Shelter): Found[] {
  const bows = shelter.roof;
  if (bows.type !== 'bows') return [];
  const least = allowedRadius(bows);
  if ('reason' in least) return [notChecked(bows, least.reason)];
  const { curvature, s } = sharpest(bows);
  if (curvature <= 0) return [];
  const radius = 1 / curvature;
  return [
    judge({
      part: bows,
      utilisation: least.radius / radius,
      demand: measured(radius, 'length'),
      capacity: measured(least.radius, 'length'),
      message: [
        `${bows.member.title} is bent to a radius of `,
        measured(radius, 'length'),
        ' at ',
        measured(s, 'length'),
        ' along the bow; it takes ',
        measured(least.radius, 'length'),
        ' before it kinks or cracks.',
      ],
      source: least.source,
      steps: [
        inWords(
          'κ_max',
          'sharpest curvature of the bow',
          'from the shape',
          [given('s', 'place along the bow', s, 'length')],
          curvature,
          'curvature',
          'derived',
        ),
        step(
          'R',
          'sharpest radius',
          'R = 1 / κ_max',
          [given('κ_max', 'sharpest curvature', curvature, 'curvature')],
          radius,
          'length',
          'derived',
        ),
        inWords(
          'R_least',
          'least radius',
          least.formula,
          [given('d', 'depth of the member', depthOf(bows.member), 'length')],
          least.radius,
          'length',
          least.source,
        ),
      ],
    }),
  ];
}

export const bendRadius: Check = {
  id: 'bend-radius',
  title: 'Bend radius',
  asks: 'Does the pipe, tube or lamella take the sharpest bend of the bow without kinking or cracking?',
  matters:
    'A kinked pipe has lost most of its strength at the kink, and a bow sprung too sharply kinks on the first cold morning.',
  formula: 'u = R_least / R',
  symbols: [
    {
      symbol: 'R',
      meaning: 'sharpest centre-line radius of the bow',
      kind: 'length',
    },
    {
      symbol: 'R_least',
      meaning:
        "least radius: the bender's for cold bending, twice the kink radius for a sprung pipe, 125 lamella thicknesses for laminated wood",
      kind: 'length',
    },
  ],
  sources: ['nec:358.24', 'brazier', 'nds:5.3.8'],
  leavesOut: 'Heat bending, sand filling, flattening at the bender, knots and splits.',
  mayBeAccepted: 'When a trial piece of the same stock was bent and kept its round shape.',
  run: (input) => run(input.shelter),
  levers: (input) => {
    const bows = input.shelter.roof;
    return bows.type === 'bows' && (bows.shape === 'elastic' || bows.shape === 'cold-bent')
      ? [flatter(bows)]
      : [];
  },
};
