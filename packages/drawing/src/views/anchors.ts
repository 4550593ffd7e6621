/** Where on the page a part can be pointed at; the first place a view notes for a part wins. */
import type { Described } from '../describe.ts';
import type { Tag } from '../scene/balloons.ts';
import type { Point, Shape } from '../scene/shapes.ts';
import type { KeyEntry } from '../scene/sheet.ts';

export interface Anchor {
  readonly part: string;
  readonly at: Point;
  readonly toward?: Point;
}

/** Shapes of one kind of part, with the places to point at. */
export interface Piece {
  readonly shapes: readonly Shape[];
  readonly anchors: readonly Anchor[];
}

/** Numbers parts in the order they are described; parts a view does not show get no number. */
export function numberParts(
  described: readonly Described[],
  anchors: readonly Anchor[],
): { readonly key: readonly KeyEntry[]; readonly tags: readonly Tag[] } {
  const places = new Map<string, Anchor>();
  for (const anchor of anchors) if (!places.has(anchor.part)) places.set(anchor.part, anchor);
  const shown = described.filter(({ part }) => places.has(part));
  return {
    key: shown.map(({ part, words }, i) => ({ part, words, number: i + 1 })),
    tags: shown.map(({ part }, i) => {
      const { at, toward } = places.get(part) as Anchor;
      return { part, number: i + 1, anchor: at, ...(toward ? { toward } : {}) };
    }),
  };
}
