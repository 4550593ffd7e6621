import { WATER } from '@tautline/mechanics';
import type { Cover, Shelter } from '@tautline/shelter';
import {
  edgeSlope,
  filmPanel,
  gravity,
  pullAt,
  pullKept,
  rainSheet,
  rainTemperature,
  sagUnder,
} from '@tautline/structure';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, judge, measured, step } from '../judge.ts';
import { closer, tighter } from '../levers.ts';

/** Radius of the arch at its crown, m: the flattest place over which water has to leave. */
function crownRadius(shelter: Shelter): number | undefined {
  if (shelter.roof.type !== 'bows') return undefined;
  const { line } = shelter.roof;
  const crown = line.reduce((best, point) => (point.y > best.y ? point : best));
  return Math.abs(crown.curvature) > 1e-9 ? 1 / Math.abs(crown.curvature) : undefined;
}

function run(input: CheckInput): Found[] {
  const { shelter } = input;
  const radius = crownRadius(shelter);
  const roof = shelter.roof;
  if (radius === undefined || roof.type !== 'bows') return [];
  return shelter.covers
    .filter((cover) => cover.place === 'roof' && cover.skin.kind === 'film')
    .map((cover) => onCover(shelter, cover, radius));
}

function onCover(shelter: Shelter, cover: Cover, radius: number): Found {
  const s = shelter.roof.spacing;
  const panel = filmPanel(cover, s)!;
  const state = pullAt(panel, rainTemperature);
  const pressure = panel.weight + WATER * rainSheet;
  const sag = sagUnder(panel, state, pressure);
  const slope = edgeSlope(sag, s);
  const flat = 2 * radius * slope;
  const needed = WATER / (Math.PI ** 2 * (1 / s ** 2 + 1 / flat ** 2));
  // The pull that acts is the one left after relaxing plus what the sag itself has stretched in.
  const acting = (pressure * s * s) / (8 * sag);
  return judge({
    part: cover,
    utilisation: needed / acting,
    demand: measured(needed, 'line-load'),
    capacity: measured(acting, 'line-load'),
    loadCase: 'rain on the film at the crown',
    message: [
      'Water stands on the film at the crown: over the flat ',
      measured(flat, 'length'),
      ' it takes a pull of ',
      measured(needed, 'line-load'),
      ' to shed it, and ',
      measured(acting, 'line-load'),
      ' is left in the film.',
    ],
    source: 'membrane-ponding',
    steps: [
      step(
        'T_1',
        'pull left in the film in rain',
        'T_1 = max(0, k T_0 - E t α (ϑ_rain - ϑ_fit))',
        [
          given('T_0', 'pull when put on', cover.tension, 'line-load'),
          given('E t', 'stretch stiffness', panel.stiffness, 'line-load'),
          given('α', 'thermal expansion', panel.film.expansion, 'expansion'),
          given('k', 'share of the pull kept (from memory)', pullKept, 'ratio'),
          given('ϑ_rain', 'in rain', rainTemperature, 'temperature'),
          given('ϑ_fit', 'put on at', cover.fittedAt, 'temperature'),
        ],
        state.pull,
        'line-load',
        'practice',
      ),
      step(
        'f',
        'sag between the bows under film and a sheet of running water',
        'p s² / (8 f) = T_1 + E t (8/3) (f / s)²',
        [
          given('p', 'film and running water', pressure, 'pressure'),
          given('s', 'spacing of the bows', s, 'length'),
        ],
        sag,
        'length',
        'parabola',
      ),
      step('β', 'slope of the sagging film towards the bow', 'β = π f / s', [], slope, 'slope', 'derived'),
      step(
        'b',
        'width at the crown where the arch is flatter than that',
        'b = 2 R β',
        [given('R', 'radius at the crown', radius, 'length')],
        flat,
        'length',
        'derived',
      ),
      step(
        'T_needed',
        'pull that sheds water from a panel s by b',
        'T = ρ g / (π² (1 / s² + 1 / b²))',
        [
          given('ρ', 'density of water', WATER / gravity, 'density'),
          given('g', 'gravity, N/kg', gravity, 'ratio'),
        ],
        needed,
        'line-load',
        'membrane-ponding',
      ),
      step('T', 'pull that acts', 'T = p s² / (8 f)', [], acting, 'line-load', 'parabola'),
    ],
  });
}

export const filmPonding: Check = {
  id: 'film-ponding',
  title: 'Film ponding',
  asks: 'Is the film pulled tight enough between the bows that rain runs off the flat of the crown?',
  matters: 'A pond on the film stretches it, grows with the next shower, and ends as a hole or a broken bow.',
  formula: 'u = T_needed / T, T_needed = γ / (π² (1/s² + 1/b²))',
  symbols: [
    { symbol: 's', meaning: 'spacing of the bows', kind: 'length' },
    {
      symbol: 'b',
      meaning: "width at the crown that is flatter than the film's own sag slope",
      kind: 'length',
    },
    { symbol: 'γ', meaning: 'weight of water per volume: its density times g', kind: 'density' },
    { symbol: 'T', meaning: 'pull in the film', kind: 'line-load' },
  ],
  sources: ['membrane-ponding', 'parabola', 'practice'],
  leavesOut:
    'Wind that flutters the water off, hail, leaves, folds, and films of two layers with air between.',
  mayBeAccepted: 'Where someone pushes the water off after each rain.',
  run,
  levers: (input, finding) => {
    const cover = input.shelter.covers.find((entry) => entry.id === finding.part);
    const roof = input.shelter.roof;
    if (cover?.skin.kind !== 'film' || roof.type !== 'bows') return [];
    return [tighter(cover, 0.2 * cover.skin.yieldStress * cover.skin.thickness), closer(roof, 'bows')];
  },
};
