/**
 * SVG text of a drawing: no script, no style element, no outside reference, so that it may stand in a
 * page with a strict content policy. Same drawing and theme, same bytes.
 */
import { type PlainShape, plainShapes } from '../scene/bounds.ts';
import type { Drawing, Point, Shape } from '../scene/shapes.ts';
import { pens } from './pens.ts';
import { type Theme, type ThemeName, themes } from './themes.ts';

const FONT = 'Helvetica, Arial, &quot;Liberation Sans&quot;, sans-serif';

/** Two decimals, no negative zero. Throws RangeError on a number that is none. */
export function rounded(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a drawing holds the number ${value}`);
  const short = Math.round(value * 100) / 100;
  return `${short === 0 ? 0 : short}`;
}

export function escaped(words: string): string {
  return words.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
}

/** Words for what a drawing shows besides parts of the model. */
const otherLabels: Readonly<Record<string, string>> = {
  ground: 'Ground',
  sheet: 'Heading and notes',
  'scale-bar': 'Scale bar',
  north: 'North arrow',
  table: 'Table',
  water: 'Standing water',
  deflected: 'Deflected shape',
  axis: 'Axis',
  mark: 'Line to compare with',
  'base-line': 'Base line',
};

/** SVG of a drawing in one of the themes. Throws RangeError when a coordinate is not a number. */
export function toSvg(drawing: Drawing, themeName: ThemeName): string {
  const theme = themes[themeName];
  const width = rounded(drawing.width);
  const height = rounded(drawing.height);
  const labels = new Map(drawing.labels.map(({ part, label }) => [part, label]));
  const solid = drawing.shapes.filter((shape) => !isAnnotation(shape));
  const notes = drawing.shapes.filter(isAnnotation);
  const lines = [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" font-family="${FONT}" role="group" aria-label="${escaped(drawing.title)}" data-view="${escaped(drawing.view)}" data-theme="${themeName}">`,
    `<title>${escaped(drawing.title)}</title>`,
    `<desc>${escaped(drawing.description)}</desc>`,
    `<rect width="${width}" height="${height}" fill="${theme.paper}"/>`,
    ...byPart(solid).flatMap(([part, shapes]) => {
      const label = labels.get(part) ?? otherLabels[part] ?? part;
      return [...group(part, label, 'part'), ...shapes.map((shape) => drawn(shape, theme)), '</g>'];
    }),
    ...byPart(notes).flatMap(([part, shapes]) => {
      const label = `${labels.get(part) ?? otherLabels[part] ?? part}: ${spoken(shapes)}`;
      return [...group(part, label, 'annotation'), ...shapes.map((shape) => drawn(shape, theme)), '</g>'];
    }),
    '</svg>',
  ];
  return `${lines.join('\n')}\n`;
}

/** Shapes that explain; they lie over all others. */
function isAnnotation(shape: Shape): boolean {
  return (
    shape.kind === 'dimension' ||
    shape.kind === 'text' ||
    shape.style === 'leader' ||
    shape.style === 'balloon' ||
    shape.style === 'witness' ||
    shape.style === 'arrow'
  );
}

function byPart(shapes: readonly Shape[]): readonly (readonly [string, readonly PlainShape[]])[] {
  const groups = new Map<string, Shape[]>();
  for (const shape of shapes) {
    const group = groups.get(shape.part);
    if (group) group.push(shape);
    else groups.set(shape.part, [shape]);
  }
  return [...groups].map(([part, members]) => [part, plainShapes(members)] as const);
}

function group(part: string, label: string, kind: string): readonly string[] {
  return [
    `<g data-part="${escaped(part)}" data-kind="${kind}" tabindex="0" role="img" aria-label="${escaped(label)}">`,
    `<title>${escaped(label)}</title>`,
  ];
}

function spoken(shapes: readonly PlainShape[]): string {
  const words = shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
  return words.length === 0 ? 'marks' : words.join('; ');
}

function drawn(shape: PlainShape, theme: Theme): string {
  if (shape.kind === 'text') return lettered(shape, theme);
  const pen = pens[shape.style];
  const filled = shape.kind === 'polygon' || shape.kind === 'circle';
  const look = [
    `class="tl-${shape.style}"`,
    `fill="${filled && pen.fill ? theme[pen.fill] : 'none'}"`,
    ...(pen.stroke && pen.width > 0
      ? [`stroke="${theme[pen.stroke]}"`, `stroke-width="${pen.width}"`, 'stroke-linejoin="round"']
      : []),
    ...(pen.dash ? [`stroke-dasharray="${pen.dash.join(' ')}"`] : []),
  ].join(' ');
  switch (shape.kind) {
    case 'line':
      return `<line x1="${rounded(shape.from.x)}" y1="${rounded(shape.from.y)}" x2="${rounded(shape.to.x)}" y2="${rounded(shape.to.y)}" ${look}/>`;
    case 'polyline':
      return `<polyline points="${pointList(shape.points)}" ${look}/>`;
    case 'polygon':
      return `<polygon points="${pointList(shape.points)}" ${look}/>`;
    case 'path':
      return `<path d="${shape.strokes.map(strokeData).join('')}" ${look}/>`;
    case 'circle':
      return `<circle cx="${rounded(shape.centre.x)}" cy="${rounded(shape.centre.y)}" r="${rounded(shape.radius)}" ${look}/>`;
  }
}

const pointList = (points: readonly Point[]): string =>
  points.map(({ x, y }) => `${rounded(x)},${rounded(y)}`).join(' ');

const strokeData = (stroke: readonly Point[]): string =>
  stroke.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${rounded(x)} ${rounded(y)}`).join('');

/** Letters keep a rim of the ground colour, so that a line behind them does not strike them out. */
function lettered(shape: PlainShape & { kind: 'text' }, theme: Theme): string {
  const pen = pens[shape.style];
  const x = rounded(shape.at.x);
  const y = rounded(shape.at.y);
  const tone = theme[pen.fill ?? pen.stroke ?? 'ink'];
  const look = [
    `class="tl-${shape.style}"`,
    `font-size="${rounded(shape.size)}"`,
    ...(shape.anchor === 'start' ? [] : [`text-anchor="${shape.anchor}"`]),
    ...(shape.bold ? ['font-weight="bold"'] : []),
    ...(shape.turn === 0 ? [] : [`transform="rotate(${rounded(shape.turn)} ${x} ${y})"`]),
  ].join(' ');
  return `<text x="${x}" y="${y}" ${look} fill="${tone}" stroke="${theme.paper}" stroke-width="2.5" stroke-linejoin="round" paint-order="stroke">${escaped(shape.text)}</text>`;
}
