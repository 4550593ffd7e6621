/** Design stresses of wood and bamboo. */
import { given, type Step } from '../step.ts';
import { BAMBOO_DURATION, EN_KMOD, levelOf, NDS_DURATION, NDS_TIME_EFFECT } from './duration.ts';
import type { MemberInput } from './member-input.ts';
import type { Rule } from './rule.ts';

/**
 * Compressive over bending strength of bamboo, characteristic: 20 over 34.6 N/mm² (Salzer, Wallbaum, Alipon and Lopez,
 * BioResources 13(1), 2018, Bambusa blumeana tested by ISO 22157).
 */
const BAMBOO_COMPRESSION = 20 / 34.6;

/** Crushing over bending strength of softwood: less than any class of EN 338 has (C30 0.8, C16 1.06). From memory. */
const THRUST_SHARE = 0.8;
/** Tensile over bending stress of visually graded wood, ASTM D245: from memory. */
const US_PULL = 0.55;

/**
 * Tensile over bending strength of a softwood class, EN 384:2016 as EN 338:2016 prints it: f_t,0,k = 0.73 f_m,k - 3.07
 * N/mm² (C16: 8.6, printed 8.5), from memory; the share of C14 for weaker wood. `bent` in Pa.
 */
function pullShare(bent: number): number {
  return 0.73 - 3.07e6 / Math.max(14e6, bent);
}

/** What an ungraded pole is counted at; nothing for graded wood. */
const gradeOf = (grade: number): Step['inputs'] =>
  grade === 1 ? [] : [given('k_g', 'ungraded pole', grade, 'ratio')];

/** Sawn wood and poles by NDS or EN 1995-1-1; `grade` is what is counted of an ungraded pole. */
export function timberRule(
  input: MemberInput,
  heat: number,
  wet: boolean,
  grade: number,
  notCovered: string[],
): Rule {
  if (input.basis === 'eurocode') {
    const kmod = EN_KMOD[input.duration][wet ? 1 : 0];
    const factor = (kmod / 1.3) * heat * grade;
    const pull = pullShare(input.bendingStrength);
    const inputs = [
      given('k_mod', 'duration and moisture', kmod, 'ratio'),
      given('γ_M', 'solid timber', 1.3, 'ratio'),
      ...gradeOf(grade),
    ];
    const formula = `f_d = k_mod f k_T${grade === 1 ? '' : ' k_g'} / γ_M`;
    return {
      bending: factor,
      compression: THRUST_SHARE * factor,
      crushing: THRUST_SHARE * grade,
      tension: pull * factor,
      shear: factor,
      formula,
      inputs,
      ways: {
        compression: {
          formula: `${formula} · r`,
          inputs: [...inputs, given('r', 'crushing over bending strength', THRUST_SHARE, 'ratio')],
        },
        tension: {
          formula: `${formula} · r`,
          inputs: [...inputs, given('r', 'tensile over bending strength', pull, 'ratio')],
        },
      },
      source: 'en1995-1-1:3.1',
      notCovered,
    };
  }
  const moisture = wet ? 0.85 : 1;
  const asd = input.basis === 'asce7-asd';
  // Reference values are the 5 % strength over 2.1 in bending (ASTM D245); 2.54 and φ = 0.85 undo part of it.
  const time = asd ? NDS_DURATION[input.duration] : 2.54 * 0.85 * NDS_TIME_EFFECT[input.duration];
  const factor = (time * heat * grade) / 2.1;
  const formula = `F' = f / 2.1 · ${asd ? 'C_D' : 'K_F φ λ'} C_M k_T${grade === 1 ? '' : ' k_g'}`;
  const inputs = (wetShare: number): Step['inputs'] => [
    given(asd ? 'C_D' : 'K_F φ λ', 'load duration', time, 'ratio'),
    given('C_M', 'wet service', wetShare, 'ratio'),
    ...gradeOf(grade),
  ];
  const crushed = wet ? 0.8 : 1;
  const sheared = wet ? 0.97 : 1;
  return {
    bending: factor * moisture,
    compression: THRUST_SHARE * factor * crushed,
    tension: US_PULL * factor,
    shear: factor * sheared,
    formula,
    inputs: inputs(moisture),
    ways: {
      compression: {
        formula: `${formula} · r`,
        inputs: [...inputs(crushed), given('r', 'crushing over bending strength', THRUST_SHARE, 'ratio')],
      },
      tension: {
        formula: `${formula} · r`,
        inputs: [...inputs(1), given('r', 'tensile over bending strength', US_PULL, 'ratio')],
      },
      shear: { formula, inputs: inputs(sheared) },
    },
    source: asd ? 'nds:4.3' : 'nds:n.3',
    notCovered,
  };
}

const bambooFormula = 'f_a = f C_R C_DF k_T / FS_m · level';

/** Bamboo by ISO 22156, on every basis. */
export function bambooRule(input: MemberInput, heat: number): Rule {
  const duration = BAMBOO_DURATION[input.duration][input.wet ? 1 : 0];
  const level = levelOf(input.basis);
  const factor = (0.9 * duration * heat * level) / 2;
  const inputs = (material: number): Step['inputs'] => [
    given('C_R', 'no spare member', 0.9, 'ratio'),
    given('C_DF', 'duration and service class', duration, 'ratio'),
    given('FS_m', 'material factor', material, 'ratio'),
    given('level', 'allowable to factored loads', level, 'ratio'),
  ];
  return {
    bending: factor,
    compression: BAMBOO_COMPRESSION * factor,
    crushing: BAMBOO_COMPRESSION,
    tension: factor,
    shear: factor / 2,
    formula: bambooFormula,
    inputs: inputs(2),
    ways: {
      compression: {
        formula: `${bambooFormula} · r`,
        inputs: [...inputs(2), given('r', 'crushing over bending strength', BAMBOO_COMPRESSION, 'ratio')],
      },
      shear: { formula: bambooFormula, inputs: inputs(4) },
    },
    source: 'iso22156:6',
    notCovered: [
      'Bamboo columns are taken as bowed by a hundredth of their length: turn away culms that are bent more.',
    ],
  };
}
