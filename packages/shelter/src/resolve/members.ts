/** Pipes, rods, poles and lumber. */
import type { Material, MemberItem, SectionShape } from '../model/items.ts';
import { factNode, factNodes, numberIn } from '../spec/nodes.ts';
import type { SpecDefinition } from '../spec/spec.ts';
import type { ItemCommon } from './item-common.ts';
import { assume, missing, type Notes, numberFact, problem } from './notes.ts';

/** A thing of hand or truck size. */
const stout = { above: 0, most: 2 };

export function readMember(
  definition: SpecDefinition,
  common: ItemCommon,
  material: Material,
  notes: Notes,
): MemberItem | undefined {
  const section = readSection(definition, notes);
  if (!section) return undefined;
  const bend = numberFact(notes, definition, 'bends', { above: 0, most: 100 });
  const swage = numberFact(notes, definition, 'swaged', { above: 0, most: 2 });
  return {
    ...common,
    kind: definition.word as MemberItem['kind'],
    section,
    material: factNode(definition, 'treated') ? { ...material, treated: true } : material,
    stockLengths: soldLengths(definition),
    ...(bend === undefined ? {} : { leastBendRadius: bend }),
    ...(swage === undefined ? {} : { swage }),
    ...(factNode(definition, 'galvanised') ? { galvanised: true } : {}),
  };
}

/** Lengths sold, ascending, m. */
export function soldLengths(definition: SpecDefinition): readonly number[] {
  return factNodes(definition, 'sold')
    .flatMap((fact) => numberIn(fact) ?? [])
    .filter((length) => length > 0 && length < 1e5)
    .sort((a, b) => a - b);
}

function readSection(definition: SpecDefinition, notes: Notes): SectionShape | undefined {
  const must = (word: string) =>
    numberFact(notes, definition, word, stout) ??
    (factNode(definition, word) ? undefined : missing(notes, definition, [definition.word, word]));
  switch (definition.word) {
    case 'pipe': {
      const outside = must('outside');
      const wall = must('wall');
      return outside === undefined || wall === undefined
        ? undefined
        : hollow(definition, outside, wall, notes);
    }
    case 'rod': {
      const outside = must('across');
      return outside === undefined ? undefined : { shape: 'round-solid', outside };
    }
    case 'pole': {
      const butt = must('butt');
      if (butt === undefined) return undefined;
      const tip =
        numberFact(notes, definition, 'tip', stout) ??
        assume(
          notes,
          definition.name,
          'tip',
          butt,
          'length',
          'a pole whose thin end is not said is taken as even',
          definition.origin,
        );
      if (tip > butt) {
        return problem(
          notes,
          'out-of-range',
          'the tip of a pole is not thicker than its butt',
          definition.origin,
        );
      }
      const wall = numberFact(notes, definition, 'wall', stout);
      if (wall === undefined) return { shape: 'round-solid', outside: butt, tip };
      // A hollow pole counts with the mean of its two ends all along.
      return hollow(definition, (butt + tip) / 2, wall, notes);
    }
    default: {
      const depth = must('depth');
      const breadth = must('breadth');
      return depth === undefined || breadth === undefined
        ? undefined
        : { shape: 'rectangle', depth, breadth, laminations: 1 };
    }
  }
}

function hollow(
  definition: SpecDefinition,
  outside: number,
  wall: number,
  notes: Notes,
): SectionShape | undefined {
  if (2 * wall < outside) return { shape: 'round-hollow', outside, wall };
  return problem(
    notes,
    'out-of-range',
    'the wall is half as thick as the pipe or more: a solid bar is a rod',
    factNode(definition, 'wall')?.origin ?? definition.origin,
  );
}
