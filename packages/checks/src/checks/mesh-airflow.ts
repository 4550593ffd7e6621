import { screenFactor } from '@tautline/loads';
import type { MeshItem } from '@tautline/shelter';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, judge, measured, step } from '../judge.ts';
import { setItem } from '../slots.ts';

/** Share of the air that a screen should leave, so that a screened side works as one half as high: common practice. */
const wanted = 0.5;

function run(input: CheckInput): Found[] {
  return input.shelter.covers.flatMap((cover) => {
    const { skin } = cover;
    if (skin.kind !== 'mesh' || cover.place === 'roof') return [];
    const left = screenFactor(skin.porosity);
    return [
      judge({
        part: cover,
        utilisation: wanted / Math.max(left, 1e-6),
        demand: measured(wanted, 'percent'),
        capacity: measured(left, 'percent'),
        mild: true,
        exact: true,
        message: [
          `${skin.title} lets `,
          measured(left, 'percent'),
          ' of the air through that the open side would; to stay as cool, the screened side must be ',
          measured(1 / Math.max(left, 1e-6), 'ratio'),
          ' times as large.',
        ],
        source: 'ashrae:natural-ventilation',
        steps: [
          step(
            'k',
            'air the screen leaves',
            'k = √(1/C_d² / (1/C_d² + (1 - p²)/p²)), C_d = 0.6',
            [given('p', 'open share of the mesh', skin.porosity, 'percent')],
            left,
            'percent',
            'ashrae:natural-ventilation',
          ),
        ],
      }),
    ];
  });
}

export const meshAirflow: Check = {
  id: 'mesh-airflow',
  title: 'Air through the mesh',
  nature: 'climate',
  asks: 'How much air do the insect screens leave?',
  matters: 'Fine mesh keeps insects out and heat in; the screened side has to be larger to make up for it.',
  formula: 'u = 0.5 / k',
  symbols: [
    { symbol: 'k', meaning: 'air through the screen over air through the open side', kind: 'percent' },
  ],
  sources: ['ashrae:natural-ventilation', 'practice'],
  leavesOut: 'Dust in the mesh, which halves it again; folds.',
  mayBeAccepted: 'Where the crop stands the heat, or the mesh is taken off in summer.',
  run,
  levers: (input, finding, stock) => {
    const cover = input.shelter.covers.find((entry) => entry.id === finding.part);
    if (cover?.skin.kind !== 'mesh') return [];
    const { porosity } = cover.skin;
    const wider = stock.items
      .filter((entry): entry is MeshItem => entry.kind === 'mesh' && entry.porosity > porosity)
      .sort((a, b) => a.porosity - b.porosity);
    return [
      {
        type: 'choice',
        options: wider.map((entry) => ({
          title: [`Use ${entry.title}`],
          edits: [setItem(cover.origin, 'with', entry.id)],
        })),
      },
    ];
  },
};
