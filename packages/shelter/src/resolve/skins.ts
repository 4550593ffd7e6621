/** Film, mesh and sheet. */
import type { FilmItem, MeshItem, SheetItem } from '../model/items.ts';
import { factNode, factNodes, numberIn, wordIn } from '../spec/nodes.ts';
import type { SpecDefinition } from '../spec/spec.ts';
import type { ItemCommon } from './item-common.ts';
import { expansionOf } from './material.ts';
import { soldLengths } from './members.ts';
import { assume, type Bounds, missing, type Notes, numberFact, within } from './notes.ts';

const share: Bounds = { least: 0, most: 1 };

export function readSkin(
  definition: SpecDefinition,
  common: ItemCommon,
  notes: Notes,
): FilmItem | MeshItem | SheetItem | undefined {
  const must = (word: string, bounds: Bounds = { above: 0 }) =>
    numberFact(notes, definition, word, bounds) ??
    (factNode(definition, word) ? undefined : missing(notes, definition, [definition.word, word]));
  const light = () =>
    numberFact(notes, definition, 'light', share) ??
    assume(
      notes,
      definition.name,
      'light',
      0.85,
      'ratio',
      'clear skins pass about this share: from memory',
      definition.origin,
    );
  const life = must('life');
  if (life === undefined) return undefined;
  if (definition.word === 'film') {
    const thickness = must('thickness', { above: 0, most: 0.01 });
    const density = must('density');
    const yieldStress = must('yields');
    const modulus = must('modulus');
    const grade = wordIn(factNode(definition, 'grade'));
    if (grade === undefined) return missing(notes, definition, ['film', 'grade']);
    if (
      thickness === undefined ||
      density === undefined ||
      yieldStress === undefined ||
      modulus === undefined
    ) {
      return undefined;
    }
    const expansion =
      expansionOf(definition) ??
      assume(
        notes,
        definition.name,
        'expands',
        2e-4,
        'ratio',
        'polyethylene film, per degree: from memory',
        definition.origin,
      );
    return {
      ...common,
      ...rolls(definition),
      kind: 'film',
      grade: grade === 'construction' ? 'construction' : 'greenhouse',
      thickness,
      density,
      life,
      yieldStress,
      modulus,
      expansion,
      light: light(),
    };
  }
  const massPerArea = must('weighs');
  if (massPerArea === undefined) return undefined;
  if (definition.word === 'mesh') {
    const porosity = must('porosity', share);
    const strength = must('strength');
    const shade = must('shade', share);
    if (porosity === undefined || strength === undefined || shade === undefined) return undefined;
    return { ...common, ...rolls(definition), kind: 'mesh', porosity, massPerArea, strength, life, shade };
  }
  const thickness = must('thickness', { above: 0, most: 0.1 });
  const coverWidth = must('covers');
  const greatestSpan = must('spans');
  if (thickness === undefined || coverWidth === undefined || greatestSpan === undefined) return undefined;
  const strength = numberFact(notes, definition, 'yields', { above: 0 });
  const waves = factNode(definition, 'waves');
  const pitch = numberIn(waves, 'pitch');
  const depth = numberIn(waves, 'depth');
  const wavy =
    waves !== undefined &&
    pitch !== undefined &&
    depth !== undefined &&
    within(notes, pitch, 'the distance between waves', { above: 0, most: coverWidth }, waves) !== undefined &&
    within(notes, depth, 'the depth of the waves', { above: thickness, most: pitch }, waves) !== undefined;
  return {
    ...common,
    kind: 'sheet',
    massPerArea,
    thickness,
    coverWidth,
    greatestSpan,
    ...(strength === undefined ? {} : { strength }),
    ...(wavy ? { waves: { depth, pitch } } : {}),
    stockLengths: soldLengths(definition),
    light: light(),
    life,
  };
}

/** Widths and lengths of rolls sold, each ascending and once, m. */
function rolls(definition: SpecDefinition): {
  readonly rollWidths: readonly number[];
  readonly rollLengths: readonly number[];
} {
  const of = (slot: string): readonly number[] =>
    [...new Set(factNodes(definition, 'sold').flatMap((fact) => numberIn(fact, slot) ?? []))]
      .filter((value) => value > 0)
      .sort((a, b) => a - b);
  return { rollWidths: of('width'), rollLengths: of('length') };
}
