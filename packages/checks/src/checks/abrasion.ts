import type { MaterialFamily, MemberItem, Part } from '@tautline/shelter';
import type { Check, CheckInput } from '../check.ts';
import type { Found } from '../finding.ts';
import { wrappedFrames } from '../levers.ts';
import { remark } from '../remark.ts';

/** What a material does to film that lies on it; nothing is said of the others. Common practice, no source. */
const harm: Partial<
  Record<MaterialFamily, { readonly verdict: 'fails' | 'near its limit'; readonly what: string }>
> = {
  'green-wood': { verdict: 'fails', what: 'bark and twig stumps cut film that rubs on them' },
  bamboo: { verdict: 'fails', what: 'the nodes and split edges of bamboo cut film that rubs on them' },
  timber: { verdict: 'near its limit', what: 'rough sawn edges and splinters wear film' },
};

function run(input: CheckInput): Found[] {
  const { roof, covers } = input.shelter;
  const cover = covers.find((entry) => entry.place === 'roof' && entry.skin.kind === 'film');
  if (cover === undefined || (roof.type !== 'bows' && roof.type !== 'rafters')) return [];
  const touching: { part: Part; member: MemberItem; noun: string }[] = [
    { part: roof, member: roof.member, noun: roof.type === 'bows' ? 'bows' : 'rafters' },
  ];
  return touching.map(({ part, member, noun }) => {
    const found = harm[member.material.family];
    if (found === undefined || roof.wrapped) {
      return remark(
        part,
        'passes',
        [
          roof.wrapped
            ? `The ${noun} are wrapped where the film lies on them.`
            : `Nothing is known against film on ${noun} of ${member.title}.`,
        ],
        'practice',
      );
    }
    return remark(
      part,
      found.verdict,
      [
        `The film lies on bare ${noun} of ${member.title}: ${found.what}. Wrap them, or lay old film between.`,
      ],
      'practice',
    );
  });
}

export const abrasion: Check = {
  id: 'abrasion',
  title: 'Rubbing',
  nature: 'keeping',
  asks: 'What does the film lie on, and does that cut it?',
  matters: 'Most films die along their frames, not in the middle of a bay.',
  formula: 'bare bark, bamboo or rough wood under film',
  symbols: [],
  sources: ['practice'],
  leavesOut:
    'Purlins, rails and ridges, whose wrapping is not in the model; smooth planed and rounded wood; PVC and hot metal (hot-contact).',
  mayBeAccepted: 'For a cover that comes off within the season.',
  run,
  levers: (input) => {
    const { roof } = input.shelter;
    if (roof.type !== 'bows' && roof.type !== 'rafters') return [];
    return [wrappedFrames(roof)];
  },
};
