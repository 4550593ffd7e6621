/**
 * Plain ASCII DXF, release 12 (AC1009), from a drawing: one layer a style, true size in millimetres where
 * the drawing has a scale, page units elsewhere. Group codes: Autodesk, DXF Reference (from memory).
 */
import { type PlainShape, plainShapes } from '../scene/bounds.ts';
import type { Drawing, Point, Style } from '../scene/shapes.ts';
import { pens } from './pens.ts';

/** Numbered pen colours of CAD programs (1 red, 3 green, 5 blue, 7 black or white, 8 grey, 30 orange). */
const colours: Partial<Record<Style, number>> = {
  film: 5,
  sheet: 5,
  mesh: 6,
  'mesh-hatch': 6,
  ground: 34,
  'earth-hatch': 34,
  thing: 8,
  'thing-hatch': 8,
  clearance: 8,
  crop: 3,
  'crop-hatch': 3,
  joint: 30,
  dimension: 8,
  witness: 8,
  arrow: 8,
  water: 5,
  deflected: 30,
  fails: 1,
  near: 30,
};

/** Letters are 0.72 of the type size tall; DXF asks for the height of capitals. */
const CAPITALS = 0.72;

const layerOf = (style: Style): string => style.toUpperCase().replace(/-/g, '_');

function lineType(style: Style): string {
  const dash = pens[style].dash;
  return dash === undefined ? 'CONTINUOUS' : dash.length > 2 ? 'DASHDOT' : 'DASHED';
}

/** Release 12 knows ASCII; a degree sign has its own code, other letters are written by number. */
export function dxfText(words: string): string {
  return [...words]
    .map((letter) => {
      const code = letter.codePointAt(0) ?? 63;
      if (letter === '°') return '%%d';
      if (letter === '%') return '%%%';
      if (code >= 32 && code < 127) return letter;
      return `\\U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
    })
    .join('');
}

/** DXF text of a drawing. Throws RangeError when a coordinate is not a number. */
export function toDxf(drawing: Drawing): string {
  const scale = drawing.scale === undefined ? 1 : 1000 / drawing.scale;
  const origin = drawing.origin ?? { x: 0, y: drawing.height };
  const number = (value: number): string => {
    if (!Number.isFinite(value)) throw new RangeError(`a drawing holds the number ${value}`);
    const short = Math.round(value * 1000) / 1000;
    return `${short === 0 ? 0 : short}`;
  };
  const to = ({ x, y }: Point): readonly [string, string] => [
    number((x - origin.x) * scale),
    number((origin.y - y) * scale),
  ];
  const at = (p: Point, code = 10): readonly (string | number)[] => {
    const [x, y] = to(p);
    return [code, x, code + 10, y, code + 20, '0'];
  };
  const shapes = plainShapes(drawing.shapes);
  const styles = [...new Set(shapes.map(({ style }) => style))].sort();
  const out: (string | number)[] = [0, 'SECTION', 2, 'HEADER', 9, '$ACADVER', 1, 'AC1009'];
  out.push(9, '$EXTMIN', ...at({ x: 0, y: drawing.height }), 9, '$EXTMAX', ...at({ x: drawing.width, y: 0 }));
  out.push(0, 'ENDSEC', 0, 'SECTION', 2, 'TABLES', 0, 'TABLE', 2, 'LTYPE', 70, 3);
  const unit = drawing.scale === undefined ? 1 : scale;
  out.push(...ltype('CONTINUOUS', []), ...ltype('DASHED', [6 * unit, -3 * unit]));
  out.push(...ltype('DASHDOT', [10 * unit, -3 * unit, 2 * unit, -3 * unit]));
  out.push(0, 'ENDTAB', 0, 'TABLE', 2, 'LAYER', 70, styles.length + 1);
  out.push(0, 'LAYER', 2, '0', 70, 0, 62, 7, 6, 'CONTINUOUS');
  for (const style of styles)
    out.push(0, 'LAYER', 2, layerOf(style), 70, 0, 62, colours[style] ?? 7, 6, lineType(style));
  out.push(0, 'ENDTAB', 0, 'ENDSEC', 0, 'SECTION', 2, 'ENTITIES');

  const polyline = (style: Style, points: readonly Point[], closed: boolean): void => {
    out.push(0, 'POLYLINE', 8, layerOf(style), 66, 1, 70, closed ? 1 : 0, 10, '0', 20, '0', 30, '0');
    for (const p of points) out.push(0, 'VERTEX', 8, layerOf(style), ...at(p));
    out.push(0, 'SEQEND', 8, layerOf(style));
  };
  for (const shape of shapes) entity(shape);
  out.push(0, 'ENDSEC', 0, 'EOF');

  function entity(shape: PlainShape): void {
    const layer = layerOf(shape.style);
    switch (shape.kind) {
      case 'line':
        out.push(0, 'LINE', 8, layer, ...at(shape.from), ...at(shape.to, 11));
        return;
      case 'polyline':
        polyline(shape.style, shape.points, false);
        return;
      case 'polygon':
        polyline(shape.style, shape.points, true);
        return;
      case 'path':
        for (const stroke of shape.strokes) polyline(shape.style, stroke, false);
        return;
      case 'circle':
        out.push(0, 'CIRCLE', 8, layer, ...at(shape.centre), 40, number(shape.radius * scale));
        return;
      case 'text': {
        const alignment = shape.anchor === 'start' ? 0 : shape.anchor === 'middle' ? 1 : 2;
        out.push(0, 'TEXT', 8, layer, ...at(shape.at), 40, number(shape.size * CAPITALS * scale));
        out.push(1, dxfText(shape.text), 50, number(-shape.turn));
        if (alignment !== 0) out.push(72, alignment, ...at(shape.at, 11));
      }
    }
  }
  return `${out.join('\r\n')}\r\n`;
}

function ltype(name: string, dashes: readonly number[]): readonly (string | number)[] {
  const whole = dashes.reduce((sum, dash) => sum + Math.abs(dash), 0);
  return [
    ...[0, 'LTYPE', 2, name, 70, 0, 3, name.toLowerCase(), 72, 65, 73, dashes.length],
    ...[40, whole.toFixed(3)],
    ...dashes.flatMap((dash) => [49, dash.toFixed(3)]),
  ];
}
