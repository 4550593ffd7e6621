import type { Bows, Cover, FilmItem, MaterialFamily, Rafters } from '@tautline/shelter';
import { between } from '../ageing.ts';
import type { Check, CheckInput } from '../check.ts';
import { renewed } from '../film-levers.ts';
import type { Found } from '../finding.ts';
import { given, inWords, judge, measured, step } from '../judge.ts';
import { wrappedFrames } from '../levers.ts';
import { remark } from '../remark.ts';

/** Share of its life that film keeps where it lies on this, bare and in the sun, and why. Common practice, no source. */
const contact: Partial<Record<MaterialFamily, { readonly share: number; readonly why: string }>> = {
  pvc: { share: 0.5, why: 'PVC eats the stabiliser of polyethylene film where they touch in the heat' },
  steel: { share: 0.7, why: 'metal in the sun gets hot enough to age the film along every frame' },
  aluminium: { share: 0.7, why: 'metal in the sun gets hot enough to age the film along every frame' },
};

interface Touch {
  readonly frame: Bows | Rafters;
  readonly noun: string;
  readonly cover: Cover;
  readonly film: FilmItem;
}

function touchOf({ shelter: { roof, covers } }: CheckInput): Touch | undefined {
  const cover = covers.find(({ place, skin }) => place === 'roof' && skin.kind === 'film');
  if (cover?.skin.kind !== 'film' || (roof.type !== 'bows' && roof.type !== 'rafters')) return undefined;
  return { frame: roof, noun: roof.type, cover, film: cover.skin };
}

function run(input: CheckInput): Found[] {
  const touch = touchOf(input);
  if (touch === undefined) return [];
  const { frame, noun, cover, film } = touch;
  const found = contact[frame.member.material.family];
  if (found === undefined) return [];
  if (frame.wrapped)
    return [remark(frame, 'passes', [`The ${noun} are wrapped where the film lies on them.`], 'practice')];
  const life = found.share * film.life;
  const lasts = step(
    't_c',
    `life of the film where it lies on bare ${frame.member.material.family}`,
    't_c = c t_life',
    [
      given('c', 'share of the life kept there (common practice, no source)', found.share, 'ratio'),
      given('t_life', 'life of the film elsewhere', film.life, 'time'),
    ],
    life,
    'time',
    'practice',
  );
  const bare = `The film lies on bare ${noun} of ${frame.member.title}: ${found.why}. There it lasts about `;
  const age =
    cover.installed === undefined || input.on === undefined ? undefined : between(cover.installed, input.on);
  if (age === undefined || age < 0) {
    const message = [bare, measured(life, 'time'), '. Wrap them, or paint them white.'];
    return [remark(frame, 'near its limit', message, 'practice', [lasts])];
  }
  return [
    judge({
      part: frame,
      utilisation: age / life,
      demand: measured(age, 'time'),
      capacity: measured(life, 'time'),
      mild: true,
      related: [{ origin: cover.origin, message: 'the film' }],
      message: [bare, measured(life, 'time'), '; it has been on for ', measured(age, 'time'), '.'],
      source: 'practice',
      steps: [
        lasts,
        inWords(
          't',
          'age of the film',
          `t = ${input.on} - ${cover.installed}`,
          [given('d', 'one day', 24 * 3600, 'time')],
          age,
          'time',
          'derived',
        ),
      ],
    }),
  ];
}

export const hotContact: Check = {
  id: 'hot-contact',
  title: 'Film on PVC or hot metal',
  nature: 'keeping',
  asks: 'Has film that lies on bare PVC or on metal in the sun outlived what such a place leaves it?',
  matters: 'Film splits along its frames a season or two before it is old in the middle of a bay.',
  formula: 'u = t / (c t_life), c = 0.5 on PVC, 0.7 on metal',
  symbols: [
    { symbol: 't', meaning: 'age of the film on the day of the check', kind: 'time' },
    { symbol: 't_life', meaning: 'life of the film where nothing touches it', kind: 'time' },
    { symbol: 'c', meaning: 'share of it that is left at the contact', kind: 'ratio' },
  ],
  sources: ['practice'],
  leavesOut:
    'Purlins, rails and ridges, whose wrapping is not in the model; white paint and tape, unless said as `wrapped`; how hot the place gets; what cuts film (abrasion).',
  mayBeAccepted: 'Where the frames are painted white, or for a cover that comes off within the season.',
  run,
  levers: (input, { part }) => {
    const touch = touchOf(input);
    if (touch === undefined || touch.frame.id !== part) return [];
    return [wrappedFrames(touch.frame), ...renewed(touch.cover, input.on)];
  },
};
