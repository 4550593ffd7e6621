import { lifeInSoil } from '@tautline/loads';
import type { Foot, MemberItem, Origin, Shelter } from '@tautline/shelter';
import { sectionOf } from '@tautline/structure';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import type { Finding, Found } from '../finding.ts';
import { given, inWords } from '../judge.ts';
import { rowsUnder } from '../rails.ts';
import { remark } from '../remark.ts';
import { setItem } from '../slots.ts';

/** Feet that put wood into the ground. */
const buried: readonly Foot['kind'][] = ['driven', 'hole', 'poked', 'concrete'];

interface Buried {
  readonly foot: Foot;
  readonly member: MemberItem;
  readonly noun: string;
  /** The block that says what it is `of`. */
  readonly said: Origin;
}

/** Wood that stands in the ground: feet, or the stubs that the feet are. */
export function woodInGround(shelter: Shelter): readonly Buried[] {
  const { roof, sidePosts } = shelter;
  const list: Buried[] = [];
  if (roof.type === 'bows' && roof.foot !== undefined)
    list.push({ foot: roof.foot, member: roof.member, noun: 'bows', said: roof.origin });
  if (sidePosts !== undefined)
    list.push({
      foot: sidePosts.foot,
      member: sidePosts.member,
      noun: 'side posts',
      said: sidePosts.origin,
    });
  for (const { posts, noun } of rowsUnder(shelter))
    if (posts.origin !== sidePosts?.origin)
      list.push({ foot: posts.foot, member: posts.member, noun: `${noun}s`, said: posts.origin });
  return list.flatMap((entry): Buried[] => {
    const { foot, noun } = entry;
    if (foot.stub !== undefined)
      return [{ foot, member: foot.stub, noun: `stubs of the ${noun}`, said: foot.origin }];
    return buried.includes(foot.kind) ? [entry] : [];
  });
}

function run(input: CheckInput): Found[] {
  return woodInGround(input.shelter).flatMap(({ foot, member, noun }) => {
    const { family, treated } = member.material;
    if (lifeInSoil(family, false) === undefined) return [];
    const life = lifeInSoil(family, treated === true);
    if (life === undefined)
      return [remark(foot, 'passes', [`The ${noun} of ${member.title} are treated.`], 'practice')];
    const source = family === 'bamboo' ? 'janssen:bamboo-life' : 'practice:wood-in-soil';
    return [
      remark(
        foot,
        'fails',
        [
          `The ${noun} of ${member.title} stand in the soil untreated; such wood lasts about `,
          { value: life, kind: 'time' },
          ' there.',
        ],
        source,
        [
          inWords(
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
  levers,
};

/** Stock that is treated for the ground and no weaker, the least first. */
function levers(input: CheckInput, finding: Finding, stock: Stock): Lever[] {
  const found = woodInGround(input.shelter).find(({ foot }) => foot.id === finding.part);
  if (found === undefined) return [];
  const strength = (member: MemberItem): number =>
    member.material.bendingStrength * sectionOf(member).sectionModulus;
  const treated = stock.items
    .filter(
      (entry): entry is MemberItem =>
        'section' in entry && entry.material.treated === true && strength(entry) >= strength(found.member),
    )
    .sort((a, b) => strength(a) - strength(b));
  return [
    {
      type: 'choice',
      options: treated.map((entry) => ({
        title: [`Use ${entry.title}`],
        edits: [setItem(found.said, 'of', entry.id)],
      })),
    },
  ];
}
