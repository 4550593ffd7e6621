import { groundAllowedAt, type Step } from '@tautline/loads';
import type { EndFrames, Shelter } from '@tautline/shelter';
import { sectionOf, type UprightUnder } from '@tautline/structure';
import type { Check, CheckInput } from '../check.ts';
import type { FrameFoot } from '../feet.ts';
import type { Finding } from '../finding.ts';
import { footUplift } from '../ground.ts';
import { footSideways } from '../ground-sideways.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { mostPressed } from '../pressed.ts';
import { inSoil, memberLimit } from '../resistance.ts';
import { leastRadius } from '../slender.ts';
import { sidewaysUse } from './lateral-foot.ts';

function run({ shelter, house }: CheckInput): Finding[] {
  const { endFrames } = shelter;
  if (house === undefined || endFrames === undefined || endFrames.uprights.length === 0) return [];
  if (!house.ok) return [notChecked(endFrame.id, endFrames, house.reason, 'house')];
  const loaded = house.house.uprights.filter(({ load }) => load.use !== 'service');
  if (loaded.length === 0)
    return [notChecked(endFrame.id, endFrames, 'the whole house holds under no combination', 'house')];
  return [onUpright(shelter, endFrames, loaded), onFoot(shelter, endFrames, loaded)];
}

/** Bending with pull, or with thrust that may make it bow out. */
function onUpright(shelter: Shelter, part: EndFrames, loaded: readonly UprightUnder[]): Finding {
  const { site } = shelter;
  const { member, foot, uprights } = part;
  const wet = inSoil(foot);
  const section = sectionOf(member);
  const height = Math.max(...uprights.map((one) => one.height));
  const slenderness = height / leastRadius(member);
  let worst:
    | { use: number; under: UprightUnder; axial: number; moment: number; steps: readonly Step[] }
    | undefined;
  const limits = {
    steady: memberLimit(site, member, 'steady', wet),
    gust: memberLimit(site, member, 'gust', wet),
  };
  for (const under of loaded)
    for (const { axial, moment } of under.forces) {
      const bending = Math.abs(moment) / section.sectionModulus;
      const steady = under.load.sustained;
      const limit = steady ? limits.steady : limits.gust;
      const plain = bending / limit.bending + Math.max(0, axial) / section.area / limit.tension;
      const pressed =
        axial < 0
          ? mostPressed(site, member, slenderness, wet, [
              { thrust: -axial, bending, loadCase: under.load.title, steady },
            ])
          : undefined;
      const use = Math.max(plain, pressed?.both.utilisation ?? 0);
      if (worst === undefined || use > worst.use)
        worst = { use, under, axial, moment, steps: [...limit.steps, ...(pressed?.column.steps ?? [])] };
    }
  const { use, under, axial, moment, steps } = worst!;
  const limit = under.load.sustained ? limits.steady : limits.gust;
  const stress = use * limit.bending;
  return judge({
    id: endFrame.id,
    part,
    utilisation: use,
    demand: measured(stress, 'stress'),
    capacity: measured(limit.bending, 'stress'),
    loadCase: under.load.title,
    message: [
      `The upright of ${member.title} in the ${under.end} end, `,
      measured(under.x, 'length'),
      ' from the left side, is stressed to ',
      measured(stress, 'stress'),
      ` under ${under.load.title}; it may take `,
      measured(limit.bending, 'stress'),
      '.',
    ],
    source: 'house',
    steps: [
      step(
        'M',
        'bending of the upright, both ways together',
        'from the analysis of the whole house',
        [],
        moment,
        'moment',
        'house',
      ),
      step(
        'N',
        'force along it (tension positive)',
        'from the analysis of the whole house',
        [],
        axial,
        'force',
        'house',
      ),
      ...steps,
      step(
        'u',
        'utilisation, bending with pull or with thrust',
        'u = M / (W f_b) + N / (A f_t), and with thrust N / (A F_a) in its place',
        [
          given('W', 'section modulus', section.sectionModulus, 'section-modulus'),
          given('f_b', 'bending stress allowed', limit.bending, 'stress'),
          given('K L / r', 'slenderness, held at head and foot', slenderness, 'ratio'),
        ],
        use,
        'percent',
        'timoshenko:beam',
      ),
    ],
  });
}

/** The foot of an upright, pulled up or pushed over, whichever uses more of the ground. */
function onFoot(
  shelter: Shelter,
  { foot, member, id, origin }: EndFrames,
  loaded: readonly UprightUnder[],
): Finding {
  const { site } = shelter;
  const held: FrameFoot = { foot, owner: { id, origin, member }, noun: 'upright', frames: 1 };
  const uplift = footUplift(foot, member, site);
  if ('reason' in uplift) return notChecked(endFrame.id, foot, uplift.reason);
  const holds = Math.max(groundAllowedAt(uplift, site.basis), 1e-6);
  let worst: { use: number; under: UprightUnder; lifted: boolean } | undefined;
  for (const under of loaded) {
    const { reaction, load } = under;
    const up = Math.max(0, -reaction.vertical) / holds;
    const over = sidewaysUse(site, held, reaction, load.wind === undefined ? 'steady' : 'gust');
    if (over === undefined)
      return notChecked(endFrame.id, foot, 'what this foot holds sideways is not covered');
    const use = Math.max(up, over);
    if (worst === undefined || use > worst.use) worst = { use, under, lifted: up >= over };
  }
  const { use, under, lifted } = worst!;
  const { reaction, load } = under;
  const push = reaction.horizontal;
  const side = footSideways(foot, member, site, {
    push,
    moment: reaction.moment,
    lift: -reaction.vertical,
    stay: load.wind === undefined ? 'steady' : 'gust',
  });
  const demand = lifted ? Math.max(0, -reaction.vertical) : push;
  const capacity = lifted || 'reason' in side ? holds : groundAllowedAt(side, site.basis);
  const ground = lifted || 'reason' in side ? uplift : side;
  return judge({
    id: endFrame.id,
    part: foot,
    utilisation: use,
    demand: measured(demand, 'force'),
    capacity: measured(capacity, 'force'),
    loadCase: load.title,
    message: [
      lifted
        ? `The upright in the ${under.end} end pulls its foot up with `
        : `The upright in the ${under.end} end pushes its foot sideways with `,
      measured(demand, 'force'),
      ` under ${load.title}; in ${site.soil} the foot may be counted on for `,
      measured(capacity, 'force'),
      '.',
    ],
    source: ground.source,
    steps: [
      step(
        'F',
        lifted ? 'pull on the foot' : 'push on the foot',
        'from the analysis of the whole house',
        [],
        demand,
        'force',
        'house',
      ),
      ...ground.steps,
    ],
  });
}

export const endFrame: Check = {
  id: 'end-frame',
  title: 'End frames',
  asks: 'Do the uprights in the ends, and their feet, take the wind on the end wall and what the end frame leans on them?',
  matters:
    'The end wall is the broadside of the house: when its uprights go, the film goes and the wind is inside.',
  formula: 'u = M / (W f_b) + N / (A f_t); F / F_a at the foot',
  symbols: [
    { symbol: 'M', meaning: 'bending of an upright', kind: 'moment' },
    { symbol: 'N', meaning: 'force along it', kind: 'force' },
    { symbol: 'F', meaning: 'pull or push on its foot', kind: 'force' },
    { symbol: 'F_a', meaning: 'what the ground holds', kind: 'force' },
  ],
  sources: ['house', 'timoshenko:beam', 'euler'],
  leavesOut:
    'Looked at only in the full analysis. How the upright is fixed to the frame and the rail, doors and their hinges, the rail of the end frames itself, local suction at the corners of the wall, sinking of the foot.',
  mayBeAccepted: 'When boards or sheets that the spec does not name stiffen the end wall.',
  run,
  levers: () => [],
};
