import { WATER } from '@tautline/mechanics';
import type { Cover, Rafters, Shelter } from '@tautline/shelter';
import { edgeSlope, filmPanel, pullAt, pullKept, rainSheet, sagUnder } from '@tautline/structure';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, judge, measured, step } from '../judge.ts';
import { setQuantity } from '../slots.ts';

function run(input: CheckInput): Found[] {
  const { shelter } = input;
  const roof = shelter.roof;
  if (roof.type !== 'rafters') return [];
  return shelter.covers
    .filter((cover) => cover.place === 'roof' && cover.skin.kind === 'film')
    .map((cover) => onCover(shelter, roof, cover));
}

/** Horizontal reach of one rafter, m. */
function reach(rafters: Rafters): number {
  return rafters.form === 'gable' ? rafters.span / 2 : rafters.span;
}

/** Slope (tangent) of the rafter at the eave: the chord's, steepened by the camber (parabola: 4 c / l). */
function eaveSlope(rafters: Rafters): number {
  const run = reach(rafters);
  const chord = Math.hypot(run, rafters.rise);
  return Math.tan(Math.atan2(rafters.rise, run) + (4 * rafters.camber) / chord);
}

function onCover(shelter: Shelter, rafters: Rafters, cover: Cover): Found {
  const s = rafters.spacing;
  const panel = filmPanel(cover, s)!;
  // A straight rafter does not press against the film, so the slack of hot days is still there when it rains.
  const state = pullAt(panel, shelter.site.hottest);
  const pressure = panel.weight + WATER * rainSheet;
  const sag = sagUnder(panel, state, pressure);
  const reverse = edgeSlope(sag, s);
  const available = eaveSlope(rafters);
  return judge({
    part: cover,
    utilisation: reverse / Math.max(available, 1e-9),
    demand: measured(Math.atan(reverse), 'angle'),
    capacity: measured(Math.atan(available), 'angle'),
    loadCase: 'rain on film slackened by heat',
    message: [
      'Slack film between the rafters sags ',
      measured(sag, 'length'),
      ' and forms a pocket at the eave: it needs a slope of ',
      measured(Math.atan(reverse), 'angle'),
      ' there to drain, and has ',
      measured(Math.atan(available), 'angle'),
      '.',
    ],
    source: 'parabola',
    steps: [
      step(
        'ε',
        'slack of the film on a hot day, as a strain',
        'ε = max(0, α (ϑ_hot - ϑ_fit) - k T_0 / E t)',
        [
          given('α', 'thermal expansion', panel.film.expansion, 'expansion'),
          given('ϑ_hot', 'hottest', shelter.site.hottest, 'temperature'),
          given('ϑ_fit', 'put on at', cover.fittedAt, 'temperature'),
          given('k', 'share of the pull kept (from memory)', pullKept, 'ratio'),
          given('T_0', 'pull when put on', cover.tension, 'line-load'),
          given('E t', 'stretch stiffness', panel.stiffness, 'line-load'),
        ],
        state.slack,
        'ratio',
        'practice',
      ),
      step(
        'f',
        'sag between the rafters',
        'p s² / (8 f) = T_1 + E t ((8/3) (f/s)² - ε)',
        [
          given('T_1', 'pull left on a hot day', state.pull, 'line-load'),
          given('p', 'film and running water', pressure, 'pressure'),
          given('s', 'spacing of the rafters', s, 'length'),
        ],
        sag,
        'length',
        'parabola',
      ),
      step(
        'tan β',
        'slope the film climbs from its sag to the eave',
        'tan β = π f / s',
        [],
        reverse,
        'ratio',
        'derived',
      ),
      step(
        'tan θ',
        'slope of the rafter at the eave, camber included',
        'tan θ = tan(atan(rise / run) + 4 c / l_r)',
        [
          given('c', 'camber', rafters.camber, 'length'),
          given('l_r', 'length of the rafter, straight', Math.hypot(reach(rafters), rafters.rise), 'length'),
          given('rise', 'rise', rafters.rise, 'length'),
          given('run', 'reach of one rafter', reach(rafters), 'length'),
        ],
        available,
        'ratio',
        'derived',
      ),
    ],
  });
}

export const rafterPonding: Check = {
  id: 'rafter-ponding',
  title: 'Rafter ponding',
  asks: 'Are straight rafters steep enough, close enough or cambered enough that slack film does not hold water at the eave?',
  matters:
    'Film lies tight over an arch, but loosens on straight rafters; the slack gathers water just above the eave board.',
  formula: 'u = tan β / tan θ, tan β = π f / s',
  symbols: [
    {
      symbol: 'f',
      meaning: 'sag of the slack film between two rafters',
      kind: 'length',
    },
    { symbol: 's', meaning: 'spacing of the rafters', kind: 'length' },
    { symbol: 'θ', meaning: 'slope of the rafter at the eave', kind: 'angle' },
  ],
  sources: ['parabola', 'practice'],
  leavesOut: 'Battens or wires under the film, hail, leaves, film gathered at the ridge.',
  mayBeAccepted: 'Where wires run under the film half way between the rafters.',
  run,
  levers: (input, finding) => {
    const rafters = input.shelter.roof;
    const cover = input.shelter.covers.find((entry) => entry.id === finding.part);
    if (rafters.type !== 'rafters' || cover === undefined) return [];
    const pitch = Math.atan2(rafters.rise, reach(rafters));
    const degree = Math.PI / 180;
    return [
      {
        type: 'number',
        from: cover.tension,
        towards: cover.tension * 8,
        steps: { metric: 10, us: 14.593903 },
        title: (value) => ['Pull the film to ', measured(value, 'line-load')],
        edits: (value) => [setQuantity(cover.origin, 'tension', value, 'line-load')],
      },
      {
        type: 'number',
        from: pitch,
        towards: 45 * degree,
        steps: { metric: degree, us: degree },
        title: (value) => ['Pitch the rafters at ', measured(value, 'angle')],
        edits: (value) => [setQuantity(rafters.origin, 'pitch', value, 'angle')],
      },
      {
        type: 'number',
        from: rafters.camber,
        towards: 0.1 * reach(rafters),
        steps: { metric: 0.01, us: 0.0127 },
        title: (value) => ['Camber the rafters by ', measured(value, 'length')],
        edits: (value) => [setQuantity(rafters.origin, 'camber', value, 'length')],
      },
    ];
  },
};
