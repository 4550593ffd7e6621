import { type Bearing, type Duration, tubeCrushing, woodBearing, woodBearingEn } from '@tautline/loads';
import { railsUnder, type Site } from '@tautline/shelter';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import { type Contact, contactsOf, type Press } from '../contacts.ts';
import type { Finding } from '../finding.ts';
import { given, inWords, measured } from '../judge.ts';
import { closer, stouter } from '../levers.ts';
import { type Limit, type Told, type Use, unknown } from '../limit.ts';
import { memberLimit } from '../resistance.ts';

const isPipe = ({ member: { section, material } }: Contact): boolean =>
  section.shape === 'round-hollow' && material.family !== 'bamboo';

/** What the pressed member may carry at the contact under a load that stays so long, or why that cannot be told. */
function mayCarry(site: Site, contact: Contact): ((duration: Duration) => Bearing) | { reason: string } {
  const { member, length: l, width } = contact;
  const { section, material } = member;
  if (isPipe(contact) && section.shape === 'round-hollow')
    return (duration) => {
      const { axial } = memberLimit(site, member, duration);
      return tubeCrushing(axial, section.outside, section.wall, l);
    };
  if (section.shape !== 'rectangle')
    return { reason: `how far ${member.id} may be pressed from its side is not known` };
  const strength = material.bearingStrength;
  if (strength === undefined)
    return { reason: `the catalogue gives ${material.id} no strength across the grain` };
  return site.basis === 'eurocode'
    ? (duration) => woodBearingEn(strength, l, width, duration, true)
    : () => woodBearing(strength, l, width, true, site.basis);
}

function ofContact(site: Site, contact: Contact): Limit {
  const may = mayCarry(site, contact);
  if ('reason' in may) return unknown(contact.part, may.reason);
  const use = (press: Press): Use => {
    const bearing = may(press.duration);
    return {
      utilisation: press.force / bearing.force,
      loadCase: press.loadCase,
      tell: () => tell(contact, press, bearing),
    };
  };
  return {
    by: 'frame',
    part: contact.part,
    gives: `${contact.what} is ${isPipe(contact) ? 'pressed flat' : 'crushed'}`,
    sacrificial: contact.part.sacrificial === true,
    use: (response) => {
      const press = contact.press(response);
      return press && use(press);
    },
    calm: contact.calm.map(use),
  };
}

function tell(contact: Contact, press: Press, may: Bearing): Told {
  const { what, member } = contact;
  return {
    demand: measured(press.force, 'force'),
    capacity: measured(may.force, 'force'),
    message: [
      `${what[0]!.toUpperCase()}${what.slice(1)} presses with `,
      measured(press.force, 'force'),
      ` under ${press.loadCase}; there ${member.title} ${isPipe(contact) ? 'is pressed flat at' : 'may be pressed across its grain with'} `,
      measured(may.force, 'force'),
      '.',
    ],
    source: may.step.source,
    steps: [
      inWords(
        'R',
        `what presses ${what}`,
        'from the frame analysis',
        [
          given('l', 'length of the place along the member', contact.length, 'length'),
          given('b', 'its width', contact.width, 'length'),
        ],
        press.force,
        'force',
        'frame',
      ),
      may.step,
    ],
  };
}

function limits(input: CheckInput): Limit[] {
  const found = contactsOf(input).map((contact) => ofContact(input.shelter.site, contact));
  // The same reason twice tells no more.
  const reason = (limit: Limit): string | undefined => (limit.by === 'unknown' ? limit.reason : undefined);
  return found.filter(
    (limit, index) =>
      limit.by !== 'unknown' || found.findIndex((one) => reason(one) === limit.reason) === index,
  );
}

export const beamBearing: Check = {
  id: 'beam-bearing',
  title: 'Bearing of rails and frames',
  asks: 'Where a rail lies on a post, or a bow or rafter on a rail, is the wood crushed across its grain, or the pipe pressed flat?',
  matters:
    'A rail that sinks into its post by a thumb slackens the film, and a dented pipe folds at the dent in the next storm.',
  formula:
    'u = R / P; wood P = F_c⊥ l b C_b C_M or k_c,90 k_mod f_c,90,k A_ef / γ_M; pipe P = 5 f t² (1 + 0.25 η)',
  symbols: [
    { symbol: 'R', meaning: 'force between the two', kind: 'force' },
    {
      symbol: 'l, b',
      meaning: 'length of the contact along the pressed member, and its width',
      kind: 'length',
    },
    { symbol: 'F_c⊥', meaning: 'strength across the grain', kind: 'stress' },
    { symbol: 't', meaning: 'wall of the pipe', kind: 'thickness' },
    { symbol: 'η', meaning: 'length of contact over outside diameter', kind: 'ratio' },
  ],
  sources: ['nds:3.10', 'en1995-1-1:6.1.5', 'en1993-1-8:7.3', 'frame'],
  leavesOut:
    'Posts pressed on their end grain, which stand far more; contacts nearer than 75 mm to the end of a rail; notches; round members dug into wood; bamboo and green poles. The rule for pipe is one for welded steel tubes, and is used for plastic for want of another.',
  mayBeAccepted:
    'When a plate, saddle or block spreads the load, or the pipe is plugged with wood at the place.',
  needs: 'frame',
  appliesTo: (shelter) => shelter.eaveRail !== undefined || railsUnder(shelter).length > 0,
  limits,
  levers,
};

/** Closer posts, then stouter stock. */
function levers({ shelter }: CheckInput, finding: Finding, stock: Stock): Lever[] {
  const { eaveRail, sidePosts, roof } = shelter;
  const rail = [eaveRail, ...railsUnder(shelter)].find((entry) => entry?.id === finding.part);
  const posts = rail === undefined ? undefined : rail === eaveRail ? sidePosts : rail.posts;
  const list: Lever[] = posts === undefined ? [] : [closer(posts, 'posts'), stouter(posts, stock)];
  if (rail !== undefined && rail.member.kind !== 'cable')
    list.push(stouter({ origin: rail.origin, member: rail.member }, stock));
  if (finding.part === roof.id && (roof.type === 'bows' || roof.type === 'rafters'))
    list.push(closer(roof, roof.type), stouter(roof, stock));
  return list;
}
