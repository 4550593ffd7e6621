/** Materials. */
import type { Material, MaterialFamily } from '../model/items.ts';
import { factNode, factNodes, numberIn, wordIn } from '../spec/nodes.ts';
import type { SpecDefinition, SpecNode } from '../spec/spec.ts';
import { assume, missing, type Notes, numberFact, problem } from './notes.ts';
import { sourceOf, titleOf } from './world.ts';

const metals: readonly string[] = ['steel', 'aluminium'];

/** The material a definition (with its likeness followed) describes; undefined when a needed fact is missing. */
export function readMaterial(definition: SpecDefinition, notes: Notes): Material | undefined {
  const family = wordIn(factNode(definition, 'family')) as MaterialFamily | undefined;
  const must = (word: string) =>
    numberFact(notes, definition, word, { above: 0 }) ??
    (factNode(definition, word) ? undefined : missing(notes, definition, ['material', word]));
  if (!family) return missing(notes, definition, ['material', 'family']);
  const density = must('density');
  const modulus = must('modulus');
  const bendingStrength = must('bending-strength');
  if (density === undefined || modulus === undefined || bendingStrength === undefined) return undefined;
  const metal = metals.includes(family);
  const or = (word: string, share: number, why: string) =>
    numberFact(notes, definition, word, { above: 0 }) ??
    assume(notes, definition.name, word, share, 'stress', why, definition.origin);
  const longTermModulus = Math.min(
    modulus,
    or(
      'creep-modulus',
      metal ? modulus : modulus / 3,
      metal ? 'metals do not creep' : 'a third of the short-term stiffness: common practice, no source',
    ),
  );
  const bearing = numberFact(notes, definition, 'bearing-strength', { above: 0 });
  const expansion = expansionOf(definition);
  const heat = readHeat(definition, notes);
  return {
    id: definition.name,
    title: titleOf(definition),
    family,
    source: sourceOf(definition),
    origin: definition.origin,
    density,
    modulus,
    longTermModulus,
    bendingStrength,
    sustainedStrength: or(
      'sustained-strength',
      metal ? bendingStrength : bendingStrength / 3,
      metal
        ? 'metals hold their yield stress'
        : 'a third of the short-term strength: common practice, no source',
    ),
    shearStrength: or(
      'shear-strength',
      metal ? 0.58 * bendingStrength : bendingStrength / 10,
      metal
        ? '0.58 of yield (shear yield of a ductile metal)'
        : 'a tenth of the bending strength: common practice, no source',
    ),
    ...(bearing === undefined ? {} : { bearingStrength: bearing }),
    ...(expansion === undefined ? {} : { expansion }),
    ...(heat.length === 0 ? {} : { heat }),
    ...(factNode(definition, 'treated') ? { treated: true } : {}),
  };
}

/** 1/K from `expands 0.06 mm per 1 m per degree`. */
export function expansionOf(definition: SpecNode): number | undefined {
  const fact = factNode(definition, 'expands');
  const by = numberIn(fact, 'by');
  const length = numberIn(fact, 'length');
  return by === undefined || length === undefined || !(length > 0) ? undefined : by / length;
}

function readHeat(definition: SpecDefinition, notes: Notes): readonly (readonly [number, number, number])[] {
  return factNodes(definition, 'at')
    .flatMap((fact) => {
      const temperature = numberIn(fact, 'temperature');
      const strength = numberIn(fact, 'strength');
      const stiffness = numberIn(fact, 'stiffness');
      if (temperature === undefined || strength === undefined || stiffness === undefined) return [];
      if (!(strength > 0 && stiffness > 0 && strength < 10 && stiffness < 10)) {
        problem(
          notes,
          'out-of-range',
          'what is left of strength and stiffness is a share above 0',
          fact.origin,
        );
        return [];
      }
      return [[temperature, strength, stiffness] as const];
    })
    .sort((a, b) => a[0] - b[0]);
}
