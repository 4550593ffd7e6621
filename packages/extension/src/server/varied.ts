/** Tells whether what exploring found still belongs to a text. Pure. */
import { ownMark } from '@tautline/language/server';
import { axesOf, editsAt, sourcesOf } from '@tautline/review';
import { applyEdits, type SpecWorld } from '@tautline/shelter';

/**
 * A mark of everything the variants of a shelter depend on: that of the text with its first variant written into it,
 * so that writing another one changes nothing. Undefined when nothing is said to vary.
 */
export function variedMark(name: string, world: SpecWorld): string | undefined {
  const source = sourcesOf({ name, world }).shelter;
  const { axes } = source ? axesOf(source) : { axes: [] };
  if (axes.length === 0) return undefined;
  return ownMark({ ...world, definitions: applyEdits(world.definitions, editsAt(axes, 0)) });
}
