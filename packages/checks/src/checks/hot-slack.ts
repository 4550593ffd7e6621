import { filmPanel, pullAt } from '@tautline/structure';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { given, judge, measured, step } from '../judge.ts';
import { tighter } from '../levers.ts';

/** Sag of loose film over the distance of its frames from which it is taken as slack: common practice, no source. */
const loosest = 1 / 20;

function run(input: CheckInput): Found[] {
  const { shelter } = input;
  const { roof, site } = shelter;
  if (roof.type !== 'bows' && roof.type !== 'rafters') return [];
  return shelter.covers
    .filter((cover) => cover.place === 'roof')
    .flatMap((cover) => {
      const panel = filmPanel(cover, roof.spacing);
      if (panel === undefined) return [];
      const { slack } = pullAt(panel, site.hottest);
      const sag = roof.spacing * Math.sqrt((3 * slack) / 8);
      const allowed = loosest * roof.spacing;
      return [
        judge({
          part: cover,
          utilisation: sag / allowed,
          demand: measured(sag, 'length'),
          capacity: measured(allowed, 'length'),
          loadCase: 'the hottest hour',
          mild: true,
          message: [
            'At ',
            measured(site.hottest, 'temperature'),
            ' the film hangs ',
            measured(sag, 'length'),
            ' between the frames; it counts as slack from ',
            measured(allowed, 'length'),
            ' on.',
          ],
          source: 'practice',
          steps: [
            step(
              'ε',
              'length to spare when hot, over its length',
              'ε = max(0, α (ϑ_hot - ϑ_fit) - 0.5 T_0 / E t)',
              [
                given('α', 'thermal expansion', panel.film.expansion, 'expansion'),
                given('ϑ_hot', 'hottest', site.hottest, 'temperature'),
                given('ϑ_fit', 'put on at', cover.fittedAt, 'temperature'),
                given('T_0', 'pull when put on', cover.tension, 'line-load'),
                given('E t', 'stretch stiffness', panel.stiffness, 'line-load'),
              ],
              slack,
              'ratio',
              'practice',
            ),
            step(
              'f',
              'sag of that length between two frames',
              'f = s √(3 ε / 8)',
              [given('s', 'distance between the frames', roof.spacing, 'length')],
              sag,
              'length',
              'parabola',
            ),
          ],
        }),
      ];
    });
}

export const hotSlack: Check = {
  id: 'hot-slack',
  title: 'Slack when hot',
  asks: 'Does the film stay near its frames in the heat, or does it hang loose between them?',
  matters: 'Loose film pumps in every puff of wind, wears at the frames, and lets a shower stand.',
  formula: 'u = f / (s / 20), f = s √(3 ε / 8)',
  symbols: [
    { symbol: 'ε', meaning: 'length to spare over length, when hot', kind: 'ratio' },
    { symbol: 's', meaning: 'distance between the frames', kind: 'length' },
    { symbol: 'f', meaning: 'sag', kind: 'length' },
  ],
  sources: ['parabola', 'practice'],
  leavesOut: 'Heat that relaxes the film faster, films that shrink with age.',
  mayBeAccepted: 'Where the film is pulled tight again in the first heat.',
  run,
  levers: (input, finding) => {
    const cover = input.shelter.covers.find((entry) => entry.id === finding.part);
    return cover?.skin.kind === 'film'
      ? [tighter(cover, 0.2 * cover.skin.yieldStress * cover.skin.thickness)]
      : [];
  },
};
