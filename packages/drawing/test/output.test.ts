import { describe, expect, it } from 'vitest';
import { barChart, cutBars, toDxf, toSvg, views } from '../src/index.ts';
import { dxfText } from '../src/output/dxf.ts';
import { pens, type Tone } from '../src/output/pens.ts';
import { themes } from '../src/output/themes.ts';
import type { Drawing } from '../src/scene/shapes.ts';
import { cableArch, emtGable, shelters } from './fixtures/shelters.ts';
import { overlappingTexts } from './overlapping-texts.ts';
import { xmlProblems } from './well-formed.ts';

/** Contrast ratio of two colours, WCAG 2.1 (relative luminance of sRGB). */
function contrast(a: string, b: string): number {
  const luminance = (hex: string): number => {
    const [r = 0, g = 0, blue = 0] = [1, 3, 5].map((i) => {
      const share = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * blue;
  };
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

describe('themes', () => {
  const texts: readonly Tone[] = ['ink', 'dimension'];
  const strokes = [...new Set(Object.values(pens).flatMap(({ stroke }) => (stroke ? [stroke] : [])))];
  for (const name of ['paper', 'light', 'dark', 'contrast'] as const)
    it(`${name} has texts at 4.5:1 and strokes at 3:1 on its ground`, () => {
      const theme = themes[name];
      for (const tone of texts) expect(contrast(theme[tone], theme.paper), tone).toBeGreaterThanOrEqual(4.5);
      for (const tone of strokes) expect(contrast(theme[tone], theme.paper), tone).toBeGreaterThanOrEqual(3);
    });
  it('tell line kinds apart without colour, by weight, dash or hatch', () => {
    const lines = [
      'member',
      'film',
      'mesh',
      'sheet',
      'ground',
      'hole',
      'crop',
      'footprint',
      'deflected',
      'member-hidden',
      'centre-line',
      'near',
      'fails',
      'dimension',
    ] as const;
    const looks = lines.map(
      (style) =>
        `${pens[style].width} ${pens[style].dash?.join() ?? 'solid'} ${pens[style].fill ? 'filled' : ''}`,
    );
    expect(new Set(looks.map((look) => look)).size).toBeGreaterThanOrEqual(lines.length - 1);
  });
  it('editor names no colour of its own outside a fallback', () => {
    for (const colour of Object.values(themes.editor)) expect(colour).toMatch(/^var\(--tautline-/);
  });
});

describe('SVG', () => {
  const svg = toSvg(views.section(emtGable, { system: 'metric' }), 'paper');
  it('has a title and a description, and groups that can be reached by keyboard and read aloud', () => {
    expect(svg).toMatch(/^<svg [^>]*>\n<title>[^<]+<\/title>\n<desc>[^<]+<\/desc>/);
    expect(svg).toContain(
      'data-part="posts" data-kind="part" tabindex="0" role="img" aria-label="Side posts: 14 of',
    );
  });
  it('holds nothing a strict content policy refuses', () => {
    expect(svg).not.toMatch(/<script|<style|style=|href=|\bon[a-z]+=/);
  });
  it('rounds to two decimals', () => {
    expect(svg).not.toMatch(/"-?\d+\.\d{3,}"/);
    expect(svg).not.toMatch(/[ ,LM]-?\d+\.\d{3,}/);
  });
  it('refuses numbers that are none and escapes words', () => {
    const drawing: Drawing = {
      view: 'x',
      title: 'a < b & "c"',
      description: '',
      width: 10,
      height: 10,
      shapes: [{ kind: 'circle', part: 'p', style: 'peg', centre: { x: 1, y: 1 }, radius: 1 }],
      labels: [],
    };
    expect(xmlProblems(toSvg(drawing, 'paper'))).toEqual([]);
    const broken: Drawing = {
      ...drawing,
      shapes: [{ kind: 'circle', part: 'p', style: 'peg', centre: { x: Number.NaN, y: 1 }, radius: 1 }],
    };
    expect(() => toSvg(broken, 'paper')).toThrow(RangeError);
    expect(() => toDxf(broken)).toThrow(RangeError);
  });
});

/** Code and value pairs of a DXF text. */
const pairsOf = (dxf: string): readonly (readonly [number, string])[] => {
  const lines = dxf.trimEnd().split('\r\n');
  return lines.flatMap((code, i) => (i % 2 === 0 ? [[Number(code), lines[i + 1] ?? ''] as const] : []));
};

describe('DXF', () => {
  for (const shelter of shelters)
    it(`of ${shelter.name} has paired codes, closed sections and only known layers`, () => {
      const dxf = toDxf(views.section(shelter, { system: 'metric' }));
      const pairs = pairsOf(dxf);
      expect(dxf.trimEnd().split('\r\n').length % 2).toBe(0);
      expect(pairs.every(([code]) => Number.isInteger(code))).toBe(true);
      const count = (word: string): number =>
        pairs.filter(([code, value]) => code === 0 && value === word).length;
      expect(count('SECTION')).toBe(count('ENDSEC'));
      expect(count('POLYLINE')).toBe(count('SEQEND'));
      expect(pairs[pairs.length - 1]).toEqual([0, 'EOF']);
      const layers = new Set(
        pairs.flatMap(([code, value], i) => (code === 2 && pairs[i - 1]?.[1] === 'LAYER' ? [value] : [])),
      );
      for (const [code, value] of pairs) if (code === 8) expect(layers).toContain(value);
      expect([...dxf].every((letter) => letter.charCodeAt(0) < 127)).toBe(true);
    });
  it('is true to size in millimetres: the ridge cable hangs where the model says', () => {
    const pairs = pairsOf(toDxf(views.section(cableArch, { system: 'metric' })));
    const i = pairs.findIndex(
      ([code, value], k) => code === 8 && value === 'CABLE' && pairs[k - 1]?.[1] === 'CIRCLE',
    );
    expect(Number(pairs[i + 1]?.[1])).toBeCloseTo(3000, 1);
    expect(Number(pairs[i + 2]?.[1])).toBeCloseTo(2872.8, 1);
  });
  it('writes letters that release 12 lacks by their number', () => {
    expect(dxfText('20° 200 µm')).toBe('20%%d 200 \\U+00B5m');
  });
});

describe('cut bars', () => {
  const piece = (length: number) => ({ part: 'bows', label: 'bow', length });
  const drawing = cutBars(
    {
      title: 'Cut list',
      kerf: 0.003,
      bars: [
        {
          item: 'emt',
          title: 'EMT 1 in',
          stock: 3.048,
          count: 4,
          pieces: [piece(1.2), piece(1.2), piece(0.05)],
        },
      ],
    },
    { system: 'metric' },
  );
  it('show pieces to scale and the offcut that is left', () => {
    const words = drawing.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
    expect(words).toContain('bow 1.2 m');
    expect(words).toContain('offcut 0.589 m');
    expect(words).toContain('small pieces, from the left: bow 50 mm');
    const wide = drawing.shapes.flatMap((shape) =>
      shape.kind === 'polygon' && shape.style === 'bar' ? [shape.points[1]!.x - shape.points[0]!.x] : [],
    );
    expect(wide[0]! / wide[2]!).toBeCloseTo(24, 6);
    expect(overlappingTexts(drawing)).toEqual([]);
    expect(xmlProblems(toSvg(drawing, 'dark'))).toEqual([]);
  });
  it('refuse a bar that its pieces do not fit', () => {
    expect(() =>
      cutBars(
        { title: '', kerf: 0, bars: [{ item: 'x', title: 'x', stock: 1, count: 1, pieces: [piece(1.1)] }] },
        { system: 'metric' },
      ),
    ).toThrow(RangeError);
  });
});

describe('bar chart', () => {
  const rows = [
    { part: 'film', label: 'film fastening', value: 33.2 },
    { part: 'bows', label: 'bow bending', value: 47 },
  ];
  const chart = { title: 'First-failure gust', description: 'By part.', kind: 'speed' as const, rows };
  const drawing = barChart({ ...chart, mark: { value: 42, label: 'design gust' } }, { system: 'us' });
  it('draws lengths in proportion, with numbers, and hatches what ends short of the mark', () => {
    const bars = drawing.shapes.flatMap((shape) =>
      shape.kind === 'polygon' && shape.style === 'bar' ? [shape.points[1]!.x - shape.points[0]!.x] : [],
    );
    expect(bars[0]! / bars[1]!).toBeCloseTo(33.2 / 47, 9);
    expect(drawing.shapes.filter(({ style }) => style === 'bar-hatch').map(({ part }) => part)).toEqual([
      'film',
    ]);
    const words = drawing.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
    expect(words).toContain('74.3 mph');
    expect(overlappingTexts(drawing)).toEqual([]);
  });
  it('refuses values that cannot be bars', () => {
    expect(() =>
      barChart({ ...chart, rows: [{ part: 'x', label: 'x', value: Number.NaN }] }, { system: 'us' }),
    ).toThrow(RangeError);
  });
});
