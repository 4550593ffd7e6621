import { coverView, type Drawing, views } from '@tautline/drawing';
import { resolveShelter, type Shelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import { drawingRoom } from '../../packages/book/src/html/style.ts';
import { load, shelterFiles } from '../../packages/cli/src/files.ts';
import { overlappingTexts } from '../../packages/drawing/test/overlapping-texts.ts';
import { textsOverLines } from '../../packages/drawing/test/texts-over-lines.ts';

const root = new URL('../../examples', import.meta.url).pathname;
const { shelters } = await load(await shelterFiles([root]));

/** Smallest letters on paper, points: own choice. Tables of running distances are wider in sixteenths. */
const leastPrint = { metric: 6, us: 5 } as const;

const pageOf = (view: string): 'upright' | 'wide' | 'cover' =>
  view === 'cover' ? 'cover' : view === 'section' || view === 'end' ? 'upright' : 'wide';

/** Size of the smallest letters of a drawing that is shrunk to its room, points. */
function smallestPrint(
  drawing: Drawing,
  { wide, tall }: { readonly wide: number; readonly tall: number },
): number {
  const sizes = drawing.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.size] : [10]));
  return Math.min(1, wide / drawing.width, tall / drawing.height) * Math.min(...sizes) * (72 / 96);
}

describe('every drawing of the examples', () => {
  for (const { kind, name, world } of shelters) {
    if (kind === 'range') continue;
    it(`keeps its words off one another and off what is built: ${name}`, () => {
      const { shelter } = resolveShelter(name, world);
      if (!shelter) throw new Error(`${name} does not resolve`);
      const problems = Object.values(views).flatMap((view) => {
        const drawing = view(shelter, { system: 'metric' });
        return drawing
          ? [...overlappingTexts(drawing), ...textsOverLines(drawing)].map(
              (what) => `${drawing.view}: ${what}`,
            )
          : [];
      });
      expect(problems).toEqual([]);
    });

    it.each([
      ['metric', 'a4'],
      ['us', 'letter'],
    ] as const)(`can be read when printed in %s on %s: ${name}`, (system, paper) => {
      const { shelter } = resolveShelter(name, world);
      if (!shelter) throw new Error(`${name} does not resolve`);
      const tooSmall = Object.entries({ ...views, cover: coverView }).flatMap(([view, draw]) => {
        const room = drawingRoom(paper, pageOf(view));
        const drawing = draw(shelter, { system, ...room });
        const points = drawing ? smallestPrint(drawing, room) : Infinity;
        return points < leastPrint[system] ? [`${view}: ${points.toFixed(1)} points`] : [];
      });
      expect(tooSmall).toEqual([]);
    });

    it(`keeps to a narrow pane, its words off one another: ${name}`, () => {
      const { shelter } = resolveShelter(name, world);
      if (!shelter) throw new Error(`${name} does not resolve`);
      const problems = Object.values(views).flatMap((view) => {
        const drawing = view(shelter, { system: 'metric', wide: 420 });
        if (!drawing) return [];
        // A table of bends is as wide as its columns; of plans, what is said of spacings may stand out.
        const tooWide = drawing.width > 510 ? [`${drawing.width} units wide`] : [];
        return [...overlappingTexts(drawing), ...tooWide].map((what) => `${drawing.view}: ${what}`);
      });
      expect(problems).toEqual([]);
    });
  }
});

describe('the section of a bow that goes into the ground', () => {
  const standing = shelters.flatMap(({ kind, name, world }) => {
    const shelter = kind === 'range' ? undefined : resolveShelter(name, world).shelter;
    return shelter?.roof.type === 'bows' && shelter.roof.foot ? [{ name, shelter }] : [];
  });

  it.each(standing)('has no kink at the ground: $name', ({ shelter }) => {
    const { angle } = shelter.roof.line[0]!;
    // The lean of a thin outline by its longest line is off by its thickness: some degrees.
    expect(Math.abs(leanOfFoot(shelter) - angle) * (180 / Math.PI)).toBeLessThan(7);
  });
});

/** Lean of what is drawn under the left end of the bows, rad from the level. */
function leanOfFoot(shelter: Shelter): number {
  const drawing = views.section(shelter, { system: 'metric' })!;
  const foot = shelter.roof.type === 'bows' ? shelter.roof.foot?.id : undefined;
  const points = drawing.shapes.flatMap((shape) =>
    shape.part === foot && shape.style === 'foot' && shape.kind === 'polygon' ? [shape.points] : [],
  )[0]!;
  const lines = points.flatMap((a) => points.map((b) => ({ x: b.x - a.x, y: b.y - a.y })));
  const { x, y } = lines.reduce((best, line) =>
    Math.hypot(line.x, line.y) > Math.hypot(best.x, best.y) ? line : best,
  );
  return Math.atan2(Math.abs(y), Math.abs(x));
}
