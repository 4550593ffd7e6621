import { describe, expect, it } from 'vitest';
import { describeParts } from '../src/describe.ts';
import { toDxf, toSvg, views } from '../src/index.ts';
import { boundsOf } from '../src/scene/bounds.ts';
import { shelters } from './fixtures/shelters.ts';
import { overlappingTexts } from './overlapping-texts.ts';
import { textsOverLines } from './texts-over-lines.ts';
import { xmlProblems } from './well-formed.ts';

const themes = ['paper', 'light', 'dark', 'contrast', 'editor'] as const;
const systems = ['metric', 'us'] as const;

for (const shelter of shelters)
  for (const system of systems)
    for (const [name, view] of Object.entries(views)) {
      const drawing = view(shelter, { system });
      if (!drawing) continue;
      describe(`${name} of ${shelter.name}, ${system}`, () => {
        it('is well-formed in every theme, without a number that is none', () => {
          for (const theme of themes) {
            const svg = toSvg(drawing, theme);
            expect(xmlProblems(svg)).toEqual([]);
            expect(svg).not.toMatch(/NaN|Infinity|undefined/);
          }
        });
        it('comes out the same from an equal model', () => {
          const again = view(structuredClone(shelter), { system });
          expect(again && toSvg(again, 'paper')).toBe(toSvg(drawing, 'paper'));
          expect(again && toDxf(again)).toBe(toDxf(drawing));
        });
        it('keeps its texts apart, off what is built and inside the page', () => {
          expect(overlappingTexts(drawing)).toEqual([]);
          expect(textsOverLines(drawing)).toEqual([]);
          const bounds = boundsOf(drawing.shapes);
          expect(bounds.left).toBeGreaterThanOrEqual(0);
          expect(bounds.top).toBeGreaterThanOrEqual(0);
          expect(bounds.right).toBeLessThanOrEqual(drawing.width);
          expect(bounds.bottom).toBeLessThanOrEqual(drawing.height);
        });
        it('names every group of a model part in words', () => {
          const svg = toSvg(drawing, 'editor');
          const known = new Map(describeParts(shelter, system).map(({ part, words }) => [part, words]));
          for (const [, part = '', label = ''] of svg.matchAll(
            /<g data-part="([^"]*)" data-kind="part" tabindex="0" role="img" aria-label="([^"]*)">\n<title>/g,
          ))
            if (known.has(part)) expect(label.length).toBeGreaterThan(part.length);
        });
      });
    }

describe('sheets for a narrow pane', () => {
  for (const shelter of shelters)
    it(`keep to the width with letters of full size and apart, ${shelter.name}`, () => {
      for (const view of Object.values(views)) {
        const drawing = view(shelter, { system: 'us', wide: 480 });
        if (!drawing) continue;
        expect(drawing.width, drawing.view).toBeLessThanOrEqual(580);
        expect(overlappingTexts(drawing), drawing.view).toEqual([]);
        const sizes = drawing.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.size] : []));
        expect(Math.min(...sizes)).toBeGreaterThanOrEqual(10);
        expect(drawing.width).toBeLessThanOrEqual(view(shelter, { system: 'us' })?.width ?? 0);
      }
    });
});

describe('views together', () => {
  for (const shelter of shelters)
    it(`show every part of ${shelter.name}`, () => {
      const shown = new Set(
        Object.values(views).flatMap(
          (view) => view(shelter, { system: 'metric' })?.shapes.map(({ part }) => part) ?? [],
        ),
      );
      for (const { part } of describeParts(shelter, 'metric')) expect(shown, part).toContain(part);
    });
  it('have a bend template only where pipe is bent before it stands', () => {
    const bent = shelters.filter((shelter) => views['bend-template'](shelter, { system: 'metric' }));
    expect(bent.map(({ name }) => name)).toEqual(['capsicum_house']);
  });
});
