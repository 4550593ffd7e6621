/** Design stresses of a member by what it is made of and by the basis of the loads. */

import { along, type Curve } from '../interpolate.ts';
import { given, type Step } from '../step.ts';
import { HOURS, levelOf, plasticDuration } from './duration.ts';
import type { MemberInput } from './member-input.ts';
import { metalBending } from './metal.ts';
import type { Rule, Way } from './rule.ts';
import { bambooRule, timberRule } from './wood.ts';

export interface MemberResistance {
  /** Stress on the elastic section modulus, Pa. */
  readonly bending: number;
  /** Short column, Pa; slender ones see `columnStress`. */
  readonly compression: number;
  /** Compressive strength of the material itself, before duration, heat and safety, Pa. */
  readonly crushing: number;
  readonly tension: number;
  /** On the peak shear stress, Pa. */
  readonly shear: number;
  /** Modulus for stiffness under this load and heat, Pa. */
  readonly modulus: number;
  /** How the bending stress was found. */
  readonly steps: readonly Step[];
  /** How those of a thrust, a pull and a shear were found: for who uses them. */
  readonly compressionSteps: readonly Step[];
  readonly tensionSteps: readonly Step[];
  readonly shearSteps: readonly Step[];
  readonly source: string;
  readonly notCovered: readonly string[];
}

/**
 * PVC by pipe temperature, °C: strength kept, of pipe handbooks (73 to 140 °F); nothing beyond. In the cold it rises at
 * least as the modulus does; no more is counted (own choice).
 */
export const PVC_HEAT: Curve = [
  [-20, 1.2],
  [0, 1.1],
  [22.8, 1],
  [26.7, 0.88],
  [32.2, 0.75],
  [37.8, 0.62],
  [43.3, 0.51],
  [48.9, 0.4],
  [54.4, 0.31],
  [60, 0.22],
  [65, 0],
];
/** PVC modulus by temperature, °C, over that at 23 °C (handbook, from memory). */
export const PVC_MODULUS_HEAT: Curve = [
  [-20, 1.2],
  [0, 1.1],
  [22.8, 1],
  [32.2, 0.91],
  [43.3, 0.79],
  [60, 0.61],
  [65, 0.5],
];

/**
 * Allowable (ASD) or design stresses. The factor on the strength stands in the steps.
 * Throws a RangeError when a strength or the modulus is not above zero.
 */
export function memberResistance(input: MemberInput): MemberResistance {
  if (!(input.bendingStrength > 0 && input.shearStrength > 0 && input.modulus > 0)) {
    throw new RangeError('a member needs strengths and a modulus above zero');
  }
  const temperature = input.temperature ?? 23;
  const heat = heatFactors(input, temperature);
  const rule = ruleOf(input, heat.strength, temperature);
  const found = (way: Way, symbol: string, meaning: string, strength: number): readonly Step[] => {
    const { formula, inputs } = rule.ways?.[way] ?? rule;
    return [
      {
        symbol,
        meaning,
        formula,
        inputs: [
          given('f', 'strength of the material', strength, 'stress'),
          given('ϑ', 'temperature it is judged at', temperature, 'temperature'),
          given('k_T', 'strength kept at that temperature', heat.strength, 'ratio'),
          ...inputs,
        ],
        value: strength * rule[way],
        kind: 'stress',
        source: rule.source,
      },
    ];
  };
  const { bendingStrength, shearStrength } = input;
  return {
    bending: bendingStrength * rule.bending,
    compression: bendingStrength * rule.compression,
    crushing: bendingStrength * (rule.crushing ?? 1),
    tension: bendingStrength * rule.tension,
    shear: shearStrength * rule.shear,
    modulus: input.modulus * heat.modulus * wetModulus(input),
    steps: found('bending', 'f_b', 'bending stress it may have', bendingStrength),
    compressionSteps: found('compression', 'f_c', 'thrust it may have as a short column', bendingStrength),
    tensionSteps: found('tension', 'f_t', 'pull it may have', bendingStrength),
    shearSteps: found('shear', 'f_v', 'shear stress it may have', shearStrength),
    source: rule.source,
    notCovered: rule.notCovered,
  };
}

/** C_M of the modulus of sawn wood in the wet: 0.9, NDS Supplement table 4A, from memory. Green wood was tried wet. */
const wetModulus = ({ family, basis, wet }: MemberInput): number =>
  family === 'timber' && basis !== 'eurocode' && wet === true ? 0.9 : 1;

function heatFactors(input: MemberInput, temperature: number): { strength: number; modulus: number } {
  if (input.heat && input.heat.length > 0) {
    return {
      strength: along(
        input.heat.map(([t, f]) => [t, f] as const),
        temperature,
      ),
      modulus: along(
        input.heat.map(([t, , m]) => [t, m] as const),
        temperature,
      ),
    };
  }
  if (input.family === 'pvc') {
    return {
      strength: along(PVC_HEAT, temperature),
      modulus: along(PVC_MODULUS_HEAT, temperature),
    };
  }
  if (input.family === 'timber' || input.family === 'green-wood' || input.family === 'bamboo') {
    // NDS table 2.3.3: above 100 °F and 125 °F, worse when wet.
    const strength =
      temperature <= 38 ? 1 : temperature <= 52 ? (input.wet ? 0.7 : 0.8) : input.wet ? 0.5 : 0.7;
    return { strength, modulus: temperature <= 38 ? 1 : 0.9 };
  }
  return { strength: 1, modulus: 1 };
}

function ruleOf(input: MemberInput, heat: number, temperature: number): Rule {
  switch (input.family) {
    case 'steel':
    case 'aluminium': {
      const metal = metalBending(input);
      return { ...metal, notCovered: [] };
    }
    case 'pvc':
      return plasticRule(input, heat, temperature);
    case 'timber':
      return timberRule(input, heat, input.wet ?? false, 1, []);
    case 'green-wood':
      return timberRule(input, heat, true, 0.75, [
        'Ungraded green poles: three quarters of the wet timber stress is used, and knots and taper are yours to judge.',
      ]);
    case 'bamboo':
      return bambooRule(input, heat);
    default:
      return guardedRule(input, heat);
  }
}

/** Design factor of pressure pipe, ASTM D2837 practice. */
const PRESSURE_FACTOR = 0.5;
function plasticRule(input: MemberInput, heat: number, temperature: number): Rule {
  const duration = plasticDuration(HOURS[input.duration]);
  const level = levelOf(input.basis);
  const factor = heat * duration * PRESSURE_FACTOR * level;
  return {
    bending: factor,
    compression: factor,
    tension: factor,
    shear: factor,
    formula: 'f_a = f k_T k_d n · level',
    inputs: [
      given('k_d', 'strength kept for the duration of the load', duration, 'ratio'),
      given('n', 'design factor of pressure pipe', PRESSURE_FACTOR, 'ratio'),
      given('level', 'allowable to factored loads', level, 'ratio'),
    ],
    source: 'astm-d2837:hds',
    notCovered: [
      'No structural standard covers pressure pipe in bending: the design factor of pressure service is used.',
      ...(temperature > 60 ? ['PVC above 60 °C: outside the handbook tables.'] : []),
      ...(temperature < 0 ? ['PVC below 0 °C turns brittle under a blow.'] : []),
    ],
  };
}

/** Families with no rule here: a factor of 3 on the strength for gusts, 6 for loads that stay, and said. */
function guardedRule(input: MemberInput, heat: number): Rule {
  const safety = input.duration === 'gust' ? 3 : 6;
  const factor = (heat * levelOf(input.basis)) / safety;
  return {
    bending: factor,
    compression: factor,
    tension: factor,
    shear: factor,
    formula: 'f_a = f k_T / n · level',
    inputs: [
      given('n', 'guard factor', safety, 'ratio'),
      given('level', 'allowable to factored loads', levelOf(input.basis), 'ratio'),
    ],
    source: 'practice:guard-factor',
    notCovered: [
      `No standard for members of ${input.family} is used: a guard factor of ${safety} stands in for one.`,
    ],
  };
}
