import { describe, expect, it } from 'vitest';
import { highlightPart, type SectionOverlays, toSvg, views } from '../src/index.ts';
import { useOverlay } from '../src/overlays/of-analysis.ts';
import { isInside } from '../src/scene/strokes.ts';
import { stubArch } from './fixtures/shelters.ts';
import { overlappingTexts } from './overlapping-texts.ts';
import { xmlProblems } from './well-formed.ts';

const { line } = stubArch.roof;
const whole = line[line.length - 1]!.s;
const overlays: SectionOverlays = {
  deflected: {
    lines: [line.map(({ s, x, y }) => ({ x: x + 0.1 * Math.sin((Math.PI * s) / whole), y }))],
    factor: 5,
  },
  moments: [
    {
      part: 'bows',
      points: line.map(({ s, x, y }) => ({ x, y, moment: 60 * Math.sin((2 * Math.PI * s) / whole) })),
    },
  ],
  ponds: [
    {
      part: 'cover-roof',
      outline: [
        { x: 1.7, y: 1.78 },
        { x: 2.1, y: 1.7 },
        { x: 2.5, y: 1.78 },
      ],
      volume: 0.012,
      depth: 0.08,
    },
  ],
  utilisation: [
    { part: 'bows', value: 0.92 },
    { part: 'bows/foot', value: 1.214 },
    { part: 'cover-roof', value: 0.4 },
  ],
  captions: ['Wind from the left.'],
};

describe('section overlays', () => {
  for (const system of ['metric', 'us'] as const) {
    const drawing = views.section(stubArch, { system, overlays });
    const svg = toSvg(drawing, 'contrast');
    it(`keep texts apart and stay well-formed, ${system}`, () => {
      expect(overlappingTexts(drawing)).toEqual([]);
      expect(xmlProblems(svg)).toEqual([]);
    });
  }
  const drawing = views.section(stubArch, { system: 'metric', overlays });
  const words = drawing.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
  it('say of a share past ten times its limit only that, in the tag and below', () => {
    const over = { utilisation: [{ part: 'bows', value: 3e7 }], captions: [] };
    const shown = views
      .section(stubArch, { system: 'metric', overlays: over })
      .shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
    expect(shown).toContain('over 1000 % fails');
    const { captions } = useOverlay(stubArch, [{ id: 'flutter', part: 'bows', utilisation: 3e7 }], 'metric');
    expect(captions?.join()).toContain('over 1000 % (flutter)');
  });
  it('leave the places in sight that numbers point at', () => {
    const tags = drawing.shapes.flatMap((shape) =>
      shape.style === 'balloon' && shape.kind === 'polygon' && shape.part !== 'scale-bar' ? [shape] : [],
    );
    const dots = drawing.shapes.flatMap((shape) =>
      shape.style === 'leader' && shape.kind === 'circle' ? [shape] : [],
    );
    expect(tags.length).toBe(3);
    for (const tag of tags)
      for (const dot of dots)
        if (dot.part !== tag.part)
          expect(isInside(dot.centre, tag.points), `${tag.part} over ${dot.part}`).toBe(false);
  });
  it('say numbers and verdicts in words, not by colour alone', () => {
    expect(words).toContain('92 % near its limit');
    expect(words).toContain('121 % fails');
    expect(words).toContain('40 %');
    expect(words).toContain('deflected, 5 times');
    expect(words).toContain('water 12 L on a frame');
    expect(words.filter((word) => word === '60 N·m')).toHaveLength(2);
    expect(words).toContain('Wind from the left.');
  });
  it('mark the failing part differently from one near its limit', () => {
    expect(drawing.shapes.some(({ part, style }) => part === 'bows/foot' && style === 'fails')).toBe(true);
    expect(drawing.shapes.some(({ part, style }) => part === 'bows' && style === 'near')).toBe(true);
    expect(
      drawing.shapes.some(
        ({ part, style }) => part === 'cover-roof' && (style === 'near' || style === 'fails'),
      ),
    ).toBe(false);
  });
  it('draw a positive moment outside an arch that runs from left to right', () => {
    const diagram = drawing.shapes.find((shape) => shape.style === 'moment');
    const frame = drawing.origin!;
    if (diagram?.kind !== 'polyline') throw new Error('no moment line');
    const centre = frame.x + 2.1 * drawing.scale!;
    const bow = (i: number) =>
      Math.hypot(frame.x + line[i]!.x * drawing.scale! - centre, line[i]!.y * drawing.scale!);
    const tip = diagram.points[13]!;
    expect(Math.hypot(tip.x - centre, frame.y - tip.y)).toBeGreaterThan(bow(12) + 20);
  });
});

describe('a highlighted part', () => {
  const drawing = views.plan(stubArch, { system: 'metric' });
  it('is outlined, and nothing else changes', () => {
    const marked = highlightPart(drawing, 'purlins');
    const added = marked.shapes.filter((shape) => !drawing.shapes.includes(shape));
    expect(added.length).toBeGreaterThan(0);
    expect(added.every(({ part, style }) => part === 'purlins' && style === 'highlight')).toBe(true);
    expect(highlightPart(drawing, 'nothing').shapes).toEqual(drawing.shapes);
  });
});
