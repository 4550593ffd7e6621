/** Every structural kind can be said in the vocabulary, and resolves; what is not modelled is named. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { resolveShelter } from '../src/index.ts';
import { readSpec } from './reading.ts';

const folder = new URL('../../language/catalogue/', import.meta.url);
const catalogue = readdirSync(folder)
  .filter((name) => name.endsWith('.shelter'))
  .flatMap((name) => readSpec(readFileSync(new URL(name, folder), 'utf8'), name));

const site = 'site here { gust 30 m/s }';
const film = 'cover roof with film-uv-150 { fastened by rope-over-6 every 1 m; tension 100 N/m }';

interface Kind {
  readonly body: string;
  readonly roof: string;
  /** What the report must name as not modelled. */
  readonly left?: readonly string[];
}

const kinds: Readonly<Record<string, Kind>> = {
  '1 green poles poked into soil, film tied on': {
    body: `footprint 2.4 m by 8 m\nbows spaced 0.6 m { of green-stick-28; shape elastic; length 3.4 m; foot poked { deep 0.3 m }; wrapped with "old drip tape" }\n${film}`,
    roof: 'bows',
  },
  '2 large pole shelter on a braced grid, wires for the outer members': {
    body: `footprint 9 m by 18 m\nposts grid of green-pole-90 spaced 3 m { lines 4; height 2.4 m; joint lashing at top; foot hole { deep 0.6 m }; rail of bamboo-75 { joint lashing; wrapped } }\nrafters spaced 1.5 m { of bamboo-75; shape gable; rise 1.5 m; joint lashing at peak }\nbraces along of wire-4 { at every-bay }\nbraces across of wire-4 { at ends }\nguys of wire-4 { at sides; out 1.5 m; foot deadman of log-deadman }\nties of wire-4 { height 2.4 m; spaced 3 m }\n${film}`,
    roof: 'rafters',
  },
  '3 bamboo arches on that grid': {
    body: `footprint 6 m by 12 m\nposts grid of bamboo-75 spaced 3 m { lines 3; height 2 m; rail of bamboo-75 }\nbows spaced 1 m { of bamboo-30; shape elastic; rise 1.2 m; joint lashing at 4 m; wrapped }\nbraces along of wire-4 { at corners }\n${film}`,
    roof: 'bows',
  },
  '4 bamboo gable with slightly cambered rafters': {
    body: `footprint 5 m by 12 m\nposts sides of bamboo-75 spaced 2 m { height 2 m; rail of bamboo-75 }\nrafters spaced 1 m { of bamboo-50; shape gable; pitch 24 deg; camber 60 mm; overhang 0.4 m; joint lashing at peak; wrapped }\nridge rail of bamboo-75 { posts of bamboo-75 spaced 3 m }\n${film}`,
    roof: 'rafters',
  },
  '5 one-row arches over single beds, side by side': {
    body: `footprint 1.2 m by 15 m\nbows spaced 1 m { of pvc40-15; shape elastic; length 3 m; foot stub of rebar-10 { length 0.8 m; deep 0.4 m } }\nworked from outside\nbed 1 m by 15 m\n${film}`,
    roof: 'bows',
    left: ['where people work from'],
  },
  '6 limber green-wood arches on a centre post and rail, wrapped': {
    body: `footprint 3 m by 10 m\nbows spaced 0.8 m { of green-stick-28; shape elastic; length 4 m; joint lashing; foot poked; wrapped with "cloth strips" }\nridge rail of green-pole-90 { wrapped; frames tied; posts of green-pole-90 spaced 2.5 m }\n${film}`,
    roof: 'bows',
  },
  '7 small PVC arches on a post and rail': {
    body: `footprint 3.6 m by 12 m\nbows spaced 0.8 m { of pvc40-25; shape elastic; length 20 ft; foot stub of rebar-12 }\nridge rail of lumber-2x4 { posts of lumber-4x4 spaced 8 ft }\n${film}`,
    roof: 'bows',
  },
  '8 the same on a cable ridge': {
    body: `footprint 3.6 m by 12 m\nbows spaced 0.8 m { of pvc40-25; shape elastic; length 20 ft; foot stub of rebar-12 }\nridge cable of rope-5 { tension 3 kN; foot screw of screw-anchor-150; posts of lumber-4x4 spaced 6 m }\n${film}`,
    roof: 'bows',
  },
  '9 the same on a slim galvanised pipe ridge': {
    body: `footprint 3.6 m by 12 m\nbows spaced 0.8 m { of pvc40-25; shape elastic; length 20 ft; foot stub of rebar-12 }\nridge pipe of gal-25 { wrapped; posts of gal-25 spaced 3 m { foot driven { deep 0.6 m } } }\n${film}`,
    roof: 'bows',
  },
  '10 a large PVC arch house on a cable ridge': {
    body: `footprint 20 ft by 60 ft\nbows spaced 3 ft { of pvc80-40; shape elastic; length 32 ft; foot stub of rebar-16 }\nridge cable of strand-9 { tension 8 kN; posts of lumber-4x6 spaced 15 ft; foot deadman of log-deadman }\n${film}`,
    roof: 'bows',
  },
  '11 PVC arches joined by cross fittings at the crown': {
    body: `footprint 3.6 m by 12 m\nbows spaced 1 m { of pvc40-25; shape elastic; length 20 ft; joint cross-25 at crown; foot stub of rebar-12 }\npurlins 1 of pvc40-25 { joint cross-25 }\n${film}`,
    roof: 'bows',
  },
  '12 a storm-graded house: filled posts below, a sacrificial frame above': {
    body: `footprint 3.6 m by 12 m\nposts sides of pvc40-50 spaced 1.2 m { height 1.8 m; filled with concrete up to 1.8 m { of rebar-16 }; foot concrete { deep 0.6 m; across 0.3 m }; rail of lumber-2x4 }\nbows spaced 1.2 m { of pvc40-20; shape elastic; rise 0.9 m; sacrificial }\nwithstand 35 m/s\n${film.replace('}', '; sacrificial }')}`,
    roof: 'bows',
    left: [
      'what the filling of posts adds to their strength: it counts with its weight, the post bends as a hollow one',
    ],
  },
  '13 a raised timber frame with PVC arches over benches': {
    body: `footprint 3 m by 9 m\nposts sides of lumber-4x4 spaced 3 m { height 1.8 m; rail of lumber-2x4 }\nbows spaced 1 m { of pvc40-20; shape elastic; rise 0.7 m; joint pipe-strap }\nbench 0.9 m by 8 m { height 0.8 m; count 2 }\n${film}`,
    roof: 'bows',
  },
  '14 PVC arches sprung over inclined rebar stubs': {
    body: `footprint 3 m by 9 m\nbows spaced 0.6 m { of pvc80-25; shape elastic; length 16 ft; foot stub of rebar-16 { length 5 ft; deep 2 ft 6 in; lean 74 deg } }\n${film}`,
    roof: 'bows',
  },
  '15 two films inflated by a fan over a post-and-rail frame': {
    body: 'footprint 4 m by 12 m\nposts sides of lumber-4x4 spaced 2 m { height 2 m; rail of lumber-2x6 }\ninflated { pressure 60 Pa; rise 0.6 m; strapped by strap-25 every 1.2 m; fan "small blower" }\ncover roof with film-uv-150 { layers 2; fastened by channel-spring }',
    roof: 'inflated',
    left: ['the fan'],
  },
  '16 EMT arches spliced with top rail, driven legs': {
    body: `footprint 14 ft by 40 ft\nbows spaced 4 ft { of emt-27; shape cold-bent; rise 10 ft; leg 3 ft; joint sleeve-27 at 8 ft; joint sleeve-27 at 18 ft; foot driven { deep 2 ft } }\n${film}`,
    roof: 'bows',
  },
  '17 the same as an equipment shed': {
    body: `footprint 14 ft by 24 ft\nbows spaced 4 ft { of toprail-35; shape cold-bent; rise 10 ft; leg 3 ft; foot driven { deep 2 ft } }\nobstacle 6 ft by 12 ft { name "tractor"; height 7 ft; from side 4 ft; clearance 1 ft }\nrequire headroom >= 8 ft at 5 ft from side\n${film}`,
    roof: 'bows',
  },
  '18 straight EMT in corner and peak fittings, screen sides': {
    body: `footprint 12 ft by 32 ft\nposts sides of emt-27 spaced 4 ft { height 6 ft 6 in; foot concrete }\nrafters spaced 4 ft { of emt-27; shape gable; pitch 30 deg; joint peak-27 at peak; joint corner-27 at eave }\nsides screened\ncover sides with shade-30\n${film}`,
    roof: 'rafters',
  },
  '19 a small roof over one growing tank, mesh sides, worked from outside': {
    body: `footprint 1.5 m by 3 m\nposts sides of lumber-2x2 spaced 1.5 m { height 1.2 m; foot bearing; rail of lumber-2x2 }\nrafters spaced 0.75 m { of lumber-2x2; shape single-slope; pitch 12 deg }\ntank 1.2 m by 2.4 m { height 0.6 m }\nworked from outside\ncover sides with mesh-50 { from 0.6 m }\n${film}`,
    roof: 'rafters',
    left: ['where people work from'],
  },
  '20 a straight timber gable': {
    body: `footprint 14 ft by 40 ft\nposts sides of lumber-4x4 spaced 8 ft { height 7 ft; rail of lumber-2x6 }\nrafters spaced 2 ft { of lumber-2x4; shape gable; pitch 27 deg; camber 2 in; tie of lumber-2x4 at 0 ft; joint plate-ply at peak }\nridge rail of lumber-2x6 { posts of lumber-4x4 spaced 8 ft }\n${film}`,
    roof: 'rafters',
  },
  '21 a laminated timber arch': {
    body: `footprint 5 m by 12 m\nbows spaced 1.5 m { of lath-10; shape laminated; laminations 4; rise 2.2 m; foot concrete }\n${film}`,
    roof: 'bows',
  },
  '22 a one-row roof with film strapped over and taped': {
    body: 'footprint 1.5 m by 12 m\nbows spaced 1.5 m { of gal-15; shape arc; rise 0.6 m; foot driven { deep 0.4 m } }\ncover roof with film-uv-150 { strapped by strap-25; taped along "the lap"; lap 0.2 m }',
    roof: 'bows',
    left: ['taped laps', 'the lap of two widths'],
  },
  '23 liftable frames with corrugated clear sheet, set out for a season': {
    body: 'footprint 1.2 m by 2.4 m\nposts sides of lumber-2x2 spaced 1.2 m { height 0.5 m; foot bearing; rail of lumber-2x2 }\nrafters spaced 0.6 m { of lumber-2x2; shape gable; pitch 20 deg }\nseason from 2026-11-01 to 2027-04-15\nlifted by 2\ncover roof with corrugated-pc',
    roof: 'rafters',
    left: ['the season it stands in', 'lifting the frames'],
  },
  '24 a rigid clear cap reused over seedlings': {
    body: 'footprint 0.8 m by 6 m\ncap spaced 1.2 m { of clear-sheet-1; rise 0.35 m; foot bearing }\nworked from outside',
    roof: 'cap',
    left: ['where people work from'],
  },
};

describe('the structural kinds', () => {
  test('are all there', () => {
    expect(Object.keys(kinds).map((name) => Number.parseInt(name, 10))).toEqual(
      Array.from({ length: 24 }, (_, n) => n + 1),
    );
  });

  test.each(Object.entries(kinds))('%s', (_, { body, roof, left }) => {
    const definitions = [...catalogue, ...readSpec(`${site}\nshelter it on here {\n${body}\n}`)];
    const world = { definitions: new Map(definitions.map((definition) => [definition.name, definition])) };
    const { shelter, problems } = resolveShelter('it', world);
    expect(problems).toEqual([]);
    expect(shelter!.roof.type).toBe(roof);
    expect(new Set(shelter!.unmodelled.map((one) => one.what))).toEqual(new Set(left ?? []));
  });

  test('stand side by side in a range', () => {
    const [range] = readSpec('range beds { stand 6 of bed-arch; gap 2 ft; tied by lumber-1x4 every 8 ft }');
    expect(range!.children.map((child) => child.word)).toEqual(['stand', 'gap', 'tied']);
  });
});
