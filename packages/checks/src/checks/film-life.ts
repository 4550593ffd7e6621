import { between } from '../ageing.ts';
import type { Check } from '../check.ts';
import { renewed } from '../film-levers.ts';
import { given, inWords, judge, measured, notChecked } from '../judge.ts';

/** s: by definition. */
const day = 24 * 3600;

export const filmLife: Check = {
  id: 'film-life',
  title: 'Film life',
  nature: 'keeping',
  asks: 'How much of its life has the covering used up since the day it went on?',
  matters: 'Film past its life does not tell before it tears.',
  formula: 'u = (today - installed) / t_life',
  symbols: [{ symbol: 't_life', meaning: 'expected life in full sun', kind: 'time' }],
  sources: ['practice'],
  leavesOut: 'The local dose of sunlight, and what the film has been through.',
  mayBeAccepted: 'When the film was looked at and a strip of it still stretches before it tears.',
  run: (input) =>
    input.shelter.covers.map((cover) => {
      const { skin } = cover;
      if (cover.installed === undefined)
        return notChecked(cover, 'the day the covering went on was not said');
      if (input.on === undefined) return notChecked(cover, 'no date was given to count its age to');
      const age = between(cover.installed, input.on);
      if (age < 0) return notChecked(cover, `it goes on only on ${cover.installed}`);
      return judge({
        part: cover,
        utilisation: age / skin.life,
        demand: measured(age, 'time'),
        capacity: measured(skin.life, 'time'),
        mild: true,
        message: [
          `${skin.title} went on ${cover.installed}, `,
          measured(age, 'time'),
          ' ago; it lasts about ',
          measured(skin.life, 'time'),
          '.',
        ],
        source: 'practice',
        steps: [
          inWords(
            't',
            'age',
            `t = ${input.on} - ${cover.installed}`,
            [given('d', 'one day', day, 'time')],
            age,
            'time',
            'derived',
          ),
        ],
      });
    }),
  levers: (input, finding) =>
    renewed(
      input.shelter.covers.find(({ id }) => id === finding.part),
      input.on,
    ),
};
