import { type Posts, postRows, type Shelter } from '@tautline/shelter';
import { type CableEnd, type Response, sectionOf } from '@tautline/structure';
import { type MemberAgeing, memberAgeing } from '../ageing.ts';
import { bracedAlong } from '../bracing.ts';
import { stayStep, whyAtTheEnd } from '../cable-end.ts';
import type { Check, CheckInput } from '../check.ts';
import { postWeight } from '../feet.ts';
import { given, measured, step } from '../judge.ts';
import { closer, stouter, tiedHeads } from '../levers.ts';
import { type FrameLimit, type Limit, type Told, type Use, unknown } from '../limit.ts';
import { mostPressed, type Pressed, type PressedUse, pressedUse } from '../pressed.ts';
import { railDemands, rowsUnder } from '../rails.ts';
import { inSoil } from '../resistance.ts';
import { leastRadius } from '../slender.ts';
import { bendingForces, type Look, looksAt } from '../springing.ts';
import { stressAt } from '../stress.ts';

/** A row of posts with what a grower calls one of them. */
interface Row {
  readonly posts: Posts;
  readonly noun: string;
  readonly braced: boolean;
  readonly factor: number;
  readonly slenderness: number;
}

/** Slenderness of posts along the house; undefined where nothing holds them upright. */
function rowOf(shelter: Shelter, posts: Posts, noun: string): Row | undefined {
  const braced = bracedAlong(shelter);
  if (!braced && posts.foot.fixity !== 'clamped') return undefined;
  const factor = braced ? 1 : 2.1;
  return { posts, noun, braced, factor, slenderness: (factor * posts.height) / leastRadius(posts.member) };
}

/**
 * Thrust and bending along the posts of the typical frame in one response. Near the soil, where rot has taken some of
 * the section, what is left bends by as much more.
 */
export function pressedIn(
  posts: Posts,
  response: Response,
  ageing: MemberAgeing,
  looks: readonly Pick<Look, 'temperature' | 'loads' | 'springing' | 'relaxed'>[] = [
    { loads: response.forces },
  ],
): readonly Pressed[] {
  return looks.flatMap((look) =>
    bendingForces(look)
      .filter((force) => force.part === posts.id && force.axial < 0)
      .map((force) => ({
        thrust: -force.axial,
        bending: stressAt(posts.member, response, force).bendingStress / ageing.shareAt(force.at),
        loadCase: response.load.title,
        duration: response.load.duration,
        ...(look.temperature === undefined ? {} : { temperature: look.temperature }),
        aged: ageing.stepsAt(force.at),
      })),
  );
}

function limits(input: CheckInput): Limit[] {
  const { shelter, frame, on } = input;
  const { sidePosts, site } = shelter;
  const list: Limit[] = [];
  if (sidePosts !== undefined) {
    const { member, foot } = sidePosts;
    const ageing = memberAgeing(shelter, on, member, foot);
    const states = frame.ok ? frame.analysis.states : undefined;
    const looks =
      states && looksAt(site, member, states, { wet: inSoil(foot), sprung: states.built.system.sprung });
    list.push(
      ofRow(shelter, sidePosts, 'side post', 'no combination presses the posts down', (row, use) => ({
        use: (response) =>
          used(row, mostPressed(use, pressedIn(sidePosts, response, ageing, looks?.(response)))),
      })),
    );
  }
  for (const { posts, rail, noun } of rowsUnder(shelter))
    list.push(
      ofRow(shelter, posts, noun, 'nothing presses on the posts', (row, use) => {
        const { inResponse, calm } = railDemands(input, rail);
        const under = (demand: ReturnType<typeof inResponse>): Use | undefined => {
          if (demand === undefined) return undefined;
          const loads = [demand.post, ...(demand.ends ?? [])].map(
            ({ down, loadCase, duration }): Pressed => ({
              thrust: down + postWeight(posts),
              bending: 0,
              loadCase,
              duration,
            }),
          );
          return used(row, mostPressed(use, loads), demand.ends);
        };
        return {
          use: (response) => under(inResponse(response)),
          calm: calm.flatMap((demand) => under(demand) ?? []),
        };
      }),
    );
  return list;
}

function ofRow(
  shelter: Shelter,
  posts: Posts,
  noun: string,
  unasked: string,
  asked: (row: Row, use: (load: Pressed) => PressedUse) => Pick<FrameLimit, 'use' | 'calm'>,
): Limit {
  const row = rowOf(shelter, posts, noun);
  if (row === undefined)
    return unknown(posts, 'nothing holds the posts upright along the house: see racking');
  const use = pressedUse(shelter.site, posts.member, row.slenderness, inSoil(posts.foot));
  return {
    by: 'frame',
    part: posts,
    gives: `the ${noun} buckles`,
    sacrificial: posts.sacrificial === true,
    unasked,
    ...asked(row, use),
  };
}

function used(row: Row, worst: PressedUse | undefined, ends: readonly CableEnd[] = []): Use | undefined {
  if (worst === undefined) return undefined;
  const { both, load } = worst;
  const end = ends.find((one) => one.down + postWeight(row.posts) === load.thrust);
  return {
    utilisation: both.utilisation,
    loadCase: load.loadCase,
    tell: () => tell(row, worst, end),
  };
}

function tell(
  { posts, noun, braced, factor, slenderness }: Row,
  { load, limit, column, both }: PressedUse,
  end: CableEnd | undefined,
): Told {
  const { member } = posts;
  const section = sectionOf(member);
  const capacity = column.stress * section.area;
  const bends = load.bending > 1e4;
  return {
    demand: measured(load.thrust, 'force'),
    capacity: measured(capacity, 'force'),
    message: [
      `Each ${noun} of ${member.title} is pressed with `,
      measured(load.thrust, 'force'),
      ...(bends ? [' while it bends to ', measured(load.bending, 'stress')] : []),
      ` under ${load.loadCase}; ${braced ? 'braced' : 'standing free'} along the house and `,
      measured(posts.height, 'length'),
      ' tall it may be pressed with ',
      measured(capacity, 'force'),
      ...(bends
        ? [', or bend to ', measured(limit.bending, 'stress'), ', each by itself.']
        : [' by itself.']),
      ...(end === undefined ? [] : whyAtTheEnd(end)),
    ],
    source: column.source,
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
      ...column.steps,
      ...(end === undefined ? [] : [stayStep(end)]),
      step(
        'f_a',
        'stress from the thrust',
        'f_a = N / A',
        [given('N', 'thrust', load.thrust, 'force'), given('A', 'area', section.area, 'area')],
        load.thrust / section.area,
        'stress',
        'timoshenko:beam',
      ),
      ...(bends ? limit.steps : []),
      ...(load.aged ?? []),
      both.step,
    ],
  };
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
  needs: 'frame',
  appliesTo: (shelter) => postRows(shelter).length > 0,
  limits,
  levers: (input, finding, stock) => {
    const posts = postRows(input.shelter).find(({ id }) => id === finding.part);
    return posts === undefined
      ? []
      : [...tiedHeads(input.shelter), stouter(posts, stock), closer(posts, 'posts')];
  },
};
