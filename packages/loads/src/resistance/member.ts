/** Design stresses of a member by what it is made of and by the basis of the loads. */

import { along, type Curve } from '../interpolate.ts';
import { given, type Step } from '../step.ts';
import {
  BAMBOO_DURATION,
  EN_KMOD,
  HOURS,
  levelOf,
  NDS_DURATION,
  NDS_TIME_EFFECT,
  plasticDuration,
} from './duration.ts';
import type { MemberInput } from './member-input.ts';
import { metalBending } from './metal.ts';

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
  readonly steps: readonly Step[];
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
 * Compressive over bending strength of bamboo, characteristic: 20 over 34.6 N/mm² (Salzer, Wallbaum, Alipon and Lopez,
 * BioResources 13(1), 2018, Bambusa blumeana tested by ISO 22157).
 */
const BAMBOO_COMPRESSION = 20 / 34.6;

interface Rule {
  readonly bending: number;
  readonly compression: number;
  /** Compressive over bending strength of the material; 1 when absent. */
  readonly crushing?: number;
  readonly tension: number;
  readonly shear: number;
  readonly formula: string;
  readonly inputs: Step['inputs'];
  readonly source: string;
  readonly notCovered: readonly string[];
}

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
  const step = (symbol: string, meaning: string, strength: number, factor: number): Step => ({
    symbol,
    meaning,
    formula: rule.formula,
    inputs: [
      given('f', 'strength of the material', strength, 'stress'),
      given('ϑ', 'temperature it is judged at', temperature, 'temperature'),
      given('k_T', 'strength kept at that temperature', heat.strength, 'ratio'),
      ...rule.inputs,
    ],
    value: strength * factor,
    kind: 'stress',
    source: rule.source,
  });
  return {
    bending: input.bendingStrength * rule.bending,
    compression: input.bendingStrength * rule.compression,
    crushing: input.bendingStrength * (rule.crushing ?? 1),
    tension: input.bendingStrength * rule.tension,
    shear: input.shearStrength * rule.shear,
    modulus: input.modulus * heat.modulus,
    steps: [
      step('f_b', 'bending stress it may have', input.bendingStrength, rule.bending),
      step('f_v', 'shear stress it may have', input.shearStrength, rule.shear),
    ],
    source: rule.source,
    notCovered: rule.notCovered,
  };
}

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

function plasticRule(input: MemberInput, heat: number, temperature: number): Rule {
  const duration = plasticDuration(HOURS[input.duration]);
  // The pressure pipe design factor 0.5 on the strength at that duration; ASTM D2837 practice.
  const factor = heat * duration * 0.5 * levelOf(input.basis);
  return {
    bending: factor,
    compression: factor,
    tension: factor,
    shear: factor,
    formula: 'f = strength · k_T · k_d · 0.5 · level',
    inputs: [
      given('k_d', 'strength kept for the duration of the load', duration, 'ratio'),
      given('level', 'allowable to factored loads', levelOf(input.basis), 'ratio'),
    ],
    source: 'astm-d2837:hds',
    notCovered: [
      'No structural standard covers pressure pipe in bending: the design factor of pressure service is used.',
      ...(temperature > 60 ? ['PVC above 60 °C: outside the handbook tables.'] : []),
      ...(temperature < 0 ? ['PVC below 0 °C turns brittle under a blow.'] : []),
    ],
  };
}

function timberRule(
  input: MemberInput,
  heat: number,
  wet: boolean,
  grade: number,
  notCovered: string[],
): Rule {
  if (input.basis === 'eurocode') {
    const kmod = EN_KMOD[input.duration][wet ? 1 : 0];
    const factor = (kmod / 1.3) * heat * grade;
    return {
      bending: factor,
      compression: 0.8 * factor,
      crushing: 0.8 * grade,
      tension: 0.6 * factor,
      shear: factor,
      formula: 'f_d = k_mod f_k k_T / γ_M',
      inputs: [
        given('k_mod', 'duration and moisture', kmod, 'ratio'),
        given('γ_M', 'solid timber', 1.3, 'ratio'),
      ],
      source: 'en1995-1-1:3.1',
      notCovered,
    };
  }
  const moisture = wet ? 0.85 : 1;
  const asd = input.basis === 'asce7-asd';
  // Reference values are the 5 % strength over 2.1 in bending (ASTM D245); 2.54 and φ = 0.85 undo part of it.
  const time = asd ? NDS_DURATION[input.duration] : 2.54 * 0.85 * NDS_TIME_EFFECT[input.duration];
  const factor = (time * heat * grade) / 2.1;
  return {
    bending: factor * moisture,
    compression: 0.8 * factor * (wet ? 0.8 : 1),
    tension: 0.6 * factor,
    shear: factor * (wet ? 0.97 : 1),
    formula: asd ? "F' = f_05/2.1 · C_D C_M C_t" : "F' = f_05/2.1 · K_F φ λ C_M C_t",
    inputs: [
      given(asd ? 'C_D' : 'K_F φ λ', 'load duration', time, 'ratio'),
      given('C_M', 'wet service', moisture, 'ratio'),
    ],
    source: asd ? 'nds:4.3' : 'nds:n.3',
    notCovered,
  };
}

function bambooRule(input: MemberInput, heat: number): Rule {
  const duration = BAMBOO_DURATION[input.duration][input.wet ? 1 : 0];
  const factor = (0.9 * duration * heat * levelOf(input.basis)) / 2;
  return {
    bending: factor,
    compression: BAMBOO_COMPRESSION * factor,
    crushing: BAMBOO_COMPRESSION,
    tension: factor,
    shear: factor / 2,
    formula: 'f = f_k C_R C_DF C_T / FS_m · level',
    inputs: [
      given('C_R', 'no spare member', 0.9, 'ratio'),
      given('C_DF', 'duration and service class', duration, 'ratio'),
      given('FS_m', 'material factor, 4 in shear', 2, 'ratio'),
      given('level', 'allowable to factored loads', levelOf(input.basis), 'ratio'),
    ],
    source: 'iso22156:6',
    notCovered: [
      'Bamboo is taken as straight: by ISO 22156 a bow of a hundredth of the length halves the Euler load of a culm.',
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
    formula: 'f = strength k_T / n · level',
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
