import type { Inflated, Shelter } from '@tautline/shelter';
import type { Check, CheckInput } from '../check.ts';
import { filmLoad } from '../film-pull.ts';
import type { Found } from '../finding.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { setQuantity } from '../slots.ts';

function onRoof(shelter: Shelter, roof: Inflated): Found {
  const cover = shelter.covers.find((entry) => entry.place === 'roof');
  if (cover === undefined) return notChecked(roof, 'no cover was said for the roof');
  const load = filmLoad(shelter, cover);
  if ('reason' in load) return notChecked(roof, load.reason);
  const snow = shelter.site.groundSnow;
  const inwards = Math.max(load.pressure, snow);
  return judge({
    part: roof,
    utilisation: inwards / roof.pressure,
    demand: measured(inwards, 'pressure'),
    capacity: measured(roof.pressure, 'pressure'),
    loadCase: snow > load.pressure ? 'snow on the outer film' : 'gust on the outer film',
    message: [
      snow > load.pressure
        ? 'Snow presses the outer film in with '
        : 'A gust presses the outer film in with ',
      measured(inwards, 'pressure'),
      '; the fan holds against it with ',
      measured(roof.pressure, 'pressure'),
      '.',
    ],
    source: 'membrane-arc',
    mild: true,
    steps: [
      ...load.steps,
      step(
        'p_in',
        'largest pressure on the film from outside',
        'p_in = max(p_w, s_g)',
        [given('p_w', 'wind', load.pressure, 'pressure'), given('s_g', 'snow', snow, 'pressure')],
        inwards,
        'pressure',
        'derived',
      ),
    ],
  });
}

function run(input: CheckInput): Found[] {
  const { roof } = input.shelter;
  return roof.type === 'inflated' ? [onRoof(input.shelter, roof)] : [];
}

export const fanPressure: Check = {
  id: 'fan-pressure',
  title: 'Fan against wind and snow',
  asks: 'Is the air between the films pressed harder than a gust or snow presses from outside?',
  matters:
    'Where the wind wins, the outer film dents, slaps the inner one and comes back with a crack, gust after gust.',
  formula: 'u = p_in / p',
  symbols: [
    { symbol: 'p_in', meaning: 'largest pressure of wind or snow on the outer film', kind: 'pressure' },
    { symbol: 'p', meaning: 'pressure of the fan', kind: 'pressure' },
  ],
  sources: ['membrane-arc', 'asce7-16:30.3-8', 'en1991-1-4:7.2.5'],
  leavesOut:
    'How fast the fan makes up for air that is pressed out, leaks, and the roof with the fan stopped.',
  mayBeAccepted: 'When somebody takes the film off, or turns the fan up, before such a gust.',
  run,
  levers: (input) => {
    const { roof } = input.shelter;
    if (roof.type !== 'inflated') return [];
    return [
      {
        type: 'number',
        from: roof.pressure,
        // Past this the films pull more than a post-and-rail frame of stock sizes stands.
        towards: Math.max(250, 2 * roof.pressure),
        steps: { metric: 5, us: 4.788 },
        title: (value) => ['Blow it up to ', measured(value, 'pressure')],
        edits: (value) => [setQuantity(roof.origin, 'pressure', value, 'pressure')],
      },
    ];
  },
};
