import { lifeInSoil } from '@tautline/loads';
import type { Foot, MemberItem, Shelter } from '@tautline/shelter';
import type { Check, CheckInput } from '../check.ts';
import type { Finding } from '../finding.ts';
import { given, step } from '../judge.ts';
import { remark } from '../remark.ts';

/** Feet that put wood into the ground. */
const buried: readonly Foot['kind'][] = ['driven', 'hole', 'poked', 'concrete'];

function inGround(shelter: Shelter): { foot: Foot; member: MemberItem; noun: string }[] {
  const { roof, sidePosts, ridge } = shelter;
  const list: { foot: Foot; member: MemberItem; noun: string }[] = [];
  if (roof.type === 'bows' && roof.foot !== undefined)
    list.push({ foot: roof.foot, member: roof.member, noun: 'bows' });
  if (sidePosts !== undefined)
    list.push({ foot: sidePosts.foot, member: sidePosts.member, noun: 'side posts' });
  if (ridge?.posts !== undefined)
    list.push({ foot: ridge.posts.foot, member: ridge.posts.member, noun: 'ridge posts' });
  return list.flatMap((entry) => {
    if (entry.foot.stub !== undefined)
      return [{ ...entry, member: entry.foot.stub, noun: `stubs of the ${entry.noun}` }];
    return buried.includes(entry.foot.kind) ? [entry] : [];
  });
}

function run(input: CheckInput): Finding[] {
  return inGround(input.shelter).flatMap(({ foot, member, noun }) => {
    const { family, treated } = member.material;
    if (lifeInSoil(family, false) === undefined) return [];
    const life = lifeInSoil(family, treated === true);
    if (life === undefined)
      return [remark(rot.id, foot, 'passes', [`The ${noun} of ${member.title} are treated.`], 'practice')];
    const source = family === 'bamboo' ? 'janssen:bamboo-life' : 'practice:wood-in-soil';
    return [
      remark(
        rot.id,
        foot,
        'fails',
        [
          `The ${noun} of ${member.title} stand in the soil untreated; such wood lasts about `,
          { value: life, kind: 'time' },
          ' there.',
        ],
        source,
        [
          step(
            't',
            'life of untreated stock in warm wet soil: half its strength at the ground is gone',
            'of the material, not calculated',
            [given('d', 'depth in the ground', foot.driven, 'length')],
            life,
            'time',
            source,
          ),
        ],
      ),
    ];
  });
}

export const rot: Check = {
  id: 'rot',
  title: 'Wood in the soil',
  nature: 'keeping',
  asks: 'Does untreated wood or bamboo stand in the ground?',
  matters: 'It rots just below the surface, where nobody looks and where bending is largest.',
  formula: 'timber, bamboo or green wood in soil without treatment',
  symbols: [],
  sources: ['practice:wood-in-soil', 'janssen:bamboo-life'],
  leavesOut: 'Durable heartwood, charred or tarred ends, how dry the soil is.',
  mayBeAccepted: 'For poles that are cut and set again every year or two.',
  run,
};
