import { type Posts, postRows, type Shelter, type Site } from '@tautline/shelter';
import { type CableEnd, type Response, sectionOf } from '@tautline/structure';
import { type MemberAgeing, memberAgeing } from '../ageing.ts';
import { bracedAlong } from '../bracing.ts';
import { stayStep, whyAtTheEnd } from '../cable-end.ts';
import type { Check, CheckInput } from '../check.ts';
import { postWeight } from '../feet.ts';
import type { Found } from '../finding.ts';
import { given, judge, measured, notChecked, step } from '../judge.ts';
import { closer, stouter, tiedHeads } from '../levers.ts';
import { mostPressed, type Pressed } from '../pressed.ts';
import { loadedRails, rowsUnder } from '../rails.ts';
import { inSoil } from '../resistance.ts';
import { leastRadius } from '../slender.ts';
import { stressAt } from '../stress.ts';

/** Slenderness of posts along the house; undefined where nothing holds them upright. */
export function postSlenderness(
  shelter: Shelter,
  posts: Posts,
): { readonly factor: number; readonly slenderness: number } | undefined {
  const braced = bracedAlong(shelter);
  if (!braced && posts.foot.fixity !== 'clamped') return undefined;
  const factor = braced ? 1 : 2.1;
  return { factor, slenderness: (factor * posts.height) / leastRadius(posts.member) };
}

/**
 * Thrust and bending along the posts of the typical frame in one response. Near the soil, where rot has taken some of
 * the section, what is left bends by as much more.
 */
export function pressedIn(posts: Posts, response: Response, ageing: MemberAgeing): readonly Pressed[] {
  return response.forces
    .filter((force) => force.part === posts.id && force.axial < 0)
    .map((force) => ({
      thrust: -force.axial,
      bending: stressAt(posts.member, response, force).bendingStress / ageing.shareAt(force.at),
      loadCase: response.load.title,
      duration: response.load.duration,
      aged: ageing.stepsAt(force.at),
    }));
}

function onPosts(
  site: Site,
  shelter: Shelter,
  posts: Posts,
  noun: string,
  loads: readonly Pressed[],
  bendingAcross: boolean,
  ends: readonly CableEnd[] = [],
): Found {
  const { member } = posts;
  const section = sectionOf(member);
  const braced = bracedAlong(shelter);
  const slender = postSlenderness(shelter, posts);
  if (slender === undefined)
    return notChecked(posts, 'nothing holds the posts upright along the house: see racking');
  const { factor, slenderness } = slender;
  const worst = mostPressed(site, member, slenderness, inSoil(posts.foot), loads);
  if (worst === undefined) return notChecked(posts, 'nothing presses on the posts');
  const stress = worst.load.thrust / section.area;
  const weight = postWeight(posts);
  const end = ends.find((one) => one.down + weight === worst.load.thrust);
  return judge({
    part: posts,
    utilisation: worst.both.utilisation,
    demand: measured(worst.load.thrust, 'force'),
    capacity: measured(worst.column.stress * section.area, 'force'),
    loadCase: worst.load.loadCase,
    message: [
      `Each ${noun} of ${member.title} is pressed with `,
      measured(worst.load.thrust, 'force'),
      ...(worst.load.bending > 1e4 ? [' while it bends to ', measured(worst.load.bending, 'stress')] : []),
      ` under ${worst.load.loadCase}; ${braced ? 'braced' : 'standing free'} along the house and `,
      measured(posts.height, 'length'),
      ' tall it may be pressed with ',
      measured(worst.column.stress * section.area, 'force'),
      ...(worst.load.bending > 1e4
        ? [', or bend to ', measured(worst.limit.bending, 'stress'), ', each by itself.']
        : [' by itself.']),
      ...(end === undefined ? [] : whyAtTheEnd(end)),
    ],
    source: worst.column.source,
    steps: [
      step(
        'K L / r',
        'slenderness along the house',
        'K L / r',
        [
          given('K', braced ? 'held at top and foot' : 'standing free from a clamped foot', factor, 'ratio'),
          given('L', 'height', posts.height, 'length'),
          given('r', 'radius of gyration, weak axis', leastRadius(member), 'thickness'),
        ],
        slenderness,
        'ratio',
        'euler',
      ),
      ...worst.column.steps,
      ...(end === undefined ? [] : [stayStep(end)]),
      step(
        'f_a',
        'stress from the thrust',
        'f_a = N / A',
        [given('A', 'area', section.area, 'area')],
        stress,
        'stress',
        'timoshenko:beam',
      ),
      ...(bendingAcross ? worst.limit.steps : []),
      ...(worst.load.aged ?? []),
      worst.both.step,
    ],
  });
}

function run(input: CheckInput): Found[] {
  const { shelter } = input;
  const { sidePosts, site } = shelter;
  const findings: Found[] = [];
  const noFrame = input.frame.ok ? undefined : input.frame.reason;
  if (sidePosts !== undefined) {
    if (!input.frame.ok) findings.push(notChecked(sidePosts, input.frame.reason));
    else {
      const ageing = memberAgeing(shelter, input.on, sidePosts.member, sidePosts.foot);
      const loads = input.frame.analysis.responses
        .filter((response) => response.load.use !== 'service' && response.status === 'holds')
        .flatMap((response) => pressedIn(sidePosts, response, ageing));
      findings.push(
        loads.length === 0
          ? notChecked(sidePosts, 'no combination presses the posts down')
          : onPosts(site, shelter, sidePosts, 'side post', loads, true),
      );
    }
  }
  if (!input.frame.ok) findings.push(...rowsUnder(shelter).map(({ posts }) => notChecked(posts, noFrame!)));
  else
    for (const { rail, demand, post: noun } of loadedRails(shelter, input.frame.analysis)) {
      const { posts } = rail;
      if (posts === undefined || demand === undefined) continue;
      const { post, ends = [] } = demand;
      const weight = postWeight(posts);
      const loads = [post, ...ends].map(
        ({ down, loadCase, duration }): Pressed => ({
          thrust: down + weight,
          bending: 0,
          loadCase,
          duration,
        }),
      );
      findings.push(onPosts(site, shelter, posts, noun, loads, false, ends));
    }
  return findings;
}

export const postBuckling: Check = {
  id: 'post-buckling',
  title: 'Buckling of posts',
  asks: 'Is a post stout enough for its height not to bow out sideways under its load?',
  matters: 'A slender post gives no warning: it stands straight until it does not.',
  formula: 'u from N / (A F_a) and σ_b / f_b, F_a by the slenderness K L / r',
  symbols: [
    { symbol: 'N', meaning: 'thrust in the post', kind: 'force' },
    { symbol: 'F_a', meaning: 'stress at its slenderness', kind: 'stress' },
    { symbol: 'K', meaning: '1 where braced along the house, 2.1 where it stands free', kind: 'ratio' },
    { symbol: 'L', meaning: 'height of the post', kind: 'length' },
    { symbol: 'r', meaning: 'radius of gyration', kind: 'thickness' },
  ],
  sources: [
    'frame',
    'euler',
    'aisi-s100:e2',
    'en1993-1-1:6.3.1',
    'nds:3.7',
    'en1995-1-1:6.3.2',
    'iso22156:column',
    'practice:wood-in-soil',
    'janssen:bamboo-life',
  ],
  leavesOut:
    'Rot along the thrust (it is counted in the bending near the soil), posts out of plumb, bending along the house, what the braces themselves carry (see racking).',
  mayBeAccepted: 'When boards or rails half way up hold the posts that the spec does not name.',
  run,
  levers: (input, finding, stock) => {
    const posts = postRows(input.shelter).find(({ id }) => id === finding.part);
    return posts === undefined
      ? []
      : [...tiedHeads(input.shelter), stouter(posts, stock), closer(posts, 'posts')];
  },
};
