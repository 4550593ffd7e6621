/**
 * The bow at full size on sheets of paper to be laid edge to edge: half of it, since the other half is its
 * mirror image, and only the sheets that the pipe crosses.
 */

import type { System } from '@tautline/quantity';
import type { CurvePoint, Shelter } from '@tautline/shelter';
import { html, type Markup, ready } from './html/markup.ts';
import { lengthText } from './words.ts';

/** Part of a sheet that is drawn on, mm: fits A4 and Letter with the margins any printer keeps. */
const TILE = { wide: 180, tall: 240 } as const;

interface Spot {
  readonly x: number;
  readonly y: number;
}

export interface FullSize {
  readonly html: string;
  readonly sheets: number;
}

/** Pages of the template; undefined for a bow that is not bent before it stands, or a roof without bows. */
export function fullSizeTemplate(
  shelter: Shelter,
  system: System,
  paper: 'a4' | 'letter',
): FullSize | undefined {
  const { roof } = shelter;
  if (roof.type !== 'bows' || roof.shape === 'elastic') return undefined;
  const first = roof.line[0];
  if (!first) return undefined;
  const half = roof.line.filter((point) => point.x <= first.x + roof.span / 2 + 1e-9);
  const { section } = roof.member;
  const depth = (section.shape === 'rectangle' ? section.depth : section.outside) * 1000;
  const left = Math.min(...half.map((point) => point.x));
  // The foot stands clear of the left edge of the first sheet by the half of its thickness and a thumb.
  const spots = finer(half).map(
    ({ x, y }): Spot => ({ x: (x - left) * 1000 + depth / 2 + 15, y: (y - first.y) * 1000 }),
  );
  const tiles = crossed(spots, depth / 2);
  const pages = tiles.map((tile) => page(tile, spots, depth, shelter.name));
  const last = tiles.reduce((most, tile) => ({ x: Math.max(most.x, tile.x), y: Math.max(most.y, tile.y) }), {
    x: 0,
    y: 0,
  });
  const { markup } = html`<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8"/><title>${shelter.name}: bow at full size</title>
<style>${ready(style(paper))}</style></head><body>
<section class="sheet"><h1>${shelter.name}: half a bow at full size</h1>
<p>Print at 100 %, never fitted to the page, and measure the 100 mm line on a sheet first. Cut along the frames, lay the sheets edge to edge by their marks, and tape them down: column 1 stands at the foot, row 1 at its base, where the bow comes out of the ground or leaves the post. The other half is the mirror image.</p>
<p>${tiles.length} sheets of ${TILE.wide} by ${TILE.tall} mm, in ${last.x + 1} columns and ${last.y + 1} rows; half the span is ${lengthText(roof.span / 2, system)}, the rise ${lengthText(roof.rise, system)}. Springback is not included.</p>
<p>Sheets, column and row: ${tiles.map((tile) => `${tile.x + 1}-${tile.y + 1}`).join(', ')}.</p></section>
${pages}</body></html>
`;
  return { html: markup, sheets: tiles.length };
}

/**
 * The line with a point at least every centimetre, on the cubic that meets its tangents: chords between the
 * model's own points would be off by millimetres at full size.
 */
function finer(line: readonly CurvePoint[]): readonly Spot[] {
  return line.flatMap((b, index): readonly Spot[] => {
    const a = line[index - 1];
    if (!a) return [b];
    const long = b.s - a.s;
    const steps = Math.max(1, Math.ceil(long / 0.01));
    return Array.from({ length: steps }, (_, i) => {
      const t = (i + 1) / steps;
      const [h00, h10, h01, h11] = [
        2 * t ** 3 - 3 * t ** 2 + 1,
        t ** 3 - 2 * t ** 2 + t,
        3 * t ** 2 - 2 * t ** 3,
        t ** 3 - t ** 2,
      ];
      return {
        x: h00 * a.x + h10 * long * Math.cos(a.angle) + h01 * b.x + h11 * long * Math.cos(b.angle),
        y: h00 * a.y + h10 * long * Math.sin(a.angle) + h01 * b.y + h11 * long * Math.sin(b.angle),
      };
    });
  });
}

/** Sheets that come within `reach` of the curve, from the foot up. */
function crossed(spots: readonly Spot[], reach: number): readonly Spot[] {
  const found = new Map<string, Spot>();
  const mark = (x: number, y: number): void => {
    const tile = { x: Math.max(0, Math.floor(x / TILE.wide)), y: Math.max(0, Math.floor(y / TILE.tall)) };
    found.set(`${tile.x}/${tile.y}`, tile);
  };
  spots.slice(1).forEach((to, index) => {
    const from = spots[index] as Spot;
    const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 5));
    for (let i = 0; i <= steps; i += 1) {
      const x = from.x + ((to.x - from.x) * i) / steps;
      const y = from.y + ((to.y - from.y) * i) / steps;
      for (const [dx, dy] of [
        [0, 0],
        [reach, 0],
        [-reach, 0],
        [0, reach],
        [0, -reach],
      ] as const)
        mark(x + dx, y + dy);
    }
  });
  return [...found.values()].sort((a, b) => a.y - b.y || a.x - b.x);
}

function page(tile: Spot, spots: readonly Spot[], depth: number, name: string): Markup {
  const at = ({ x, y }: Spot): string =>
    `${(x - tile.x * TILE.wide).toFixed(2)},${(TILE.tall - (y - tile.y * TILE.tall)).toFixed(2)}`;
  const points = spots.map(at).join(' ');
  const { wide, tall } = TILE;
  const label = `${tile.x + 1}-${tile.y + 1}`;
  return html`<section class="sheet"><svg xmlns="http://www.w3.org/2000/svg" width="${wide}mm" height="${tall}mm" viewBox="0 0 ${wide} ${tall}">
<defs><clipPath id="tile-${label}"><rect width="${wide}" height="${tall}"/></clipPath></defs>
<g clip-path="url(#tile-${label})" fill="none" stroke-linejoin="round"><polyline points="${points}" stroke="#000" stroke-width="${(depth + 0.8).toFixed(2)}"/><polyline points="${points}" stroke="#fff" stroke-width="${(depth - 0.8).toFixed(2)}"/><polyline points="${points}" stroke="#000" stroke-width="0.3" stroke-dasharray="8 2 1 2"/></g>
<rect width="${wide}" height="${tall}" fill="none" stroke="#000" stroke-width="0.25"/>
<path d="M${wide / 2} 0v6M${wide / 2} ${tall}v-6M0 ${tall / 2}h6M${wide} ${tall / 2}h-6M8 ${tall - 8}h100M8 ${tall - 10}v4M108 ${tall - 10}v4" stroke="#000" stroke-width="0.35" fill="none"/>
<text x="8" y="${tall - 12}" font-size="4" font-family="Helvetica, Arial, sans-serif">100 mm</text>
<text x="${wide - 4}" y="${tall - 6}" font-size="6" text-anchor="end" font-family="Helvetica, Arial, sans-serif">${name}  ${label}</text>
</svg></section>
`;
}

function style(paper: 'a4' | 'letter'): string {
  return `@page { size: ${paper === 'a4' ? 'A4' : 'letter'}; margin: 12mm; } body { margin: 0; font: 12pt/1.4 Helvetica, Arial, sans-serif; color: #000; background: #fff; } .sheet { break-after: page; break-inside: avoid; } .sheet:last-child { break-after: auto; } svg { display: block; margin: 0 auto; overflow: visible; }`;
}
