/** Parts whose share of their limit has to be read from the frame: members, joints, rails, and through them the feet. */
import {
  type Bows,
  type Foot,
  type JointUse,
  type MemberItem,
  type Posts,
  type Rafters,
  type Rail,
  railsUnder,
  type Shelter,
} from '@tautline/shelter';
import {
  type FrameAnalysis,
  type Measure,
  type RailDemand,
  type Response,
  sectionOf,
} from '@tautline/structure';
import { asNew, type MemberAgeing, memberAgeing } from './ageing.ts';
import { bucklingIn } from './checks/bow-buckling.ts';
import { worstEdge } from './checks/edge-rail.ts';
import { postSlenderness, pressedIn } from './checks/post-buckling.ts';
import { overlapUse, slidingJoints } from './checks/splice-overlap.ts';
import { demandAt, jointsOf } from './checks/weak-coupler.ts';
import { frameFeet } from './feet.ts';
import { footMeasures, ridgePostMeasures } from './gust-feet.ts';
import type { Measured } from './gust-order.ts';
import { guyMeasures, ridgeMeasures, tieMeasures } from './gust-rigging.ts';
import { mostPressed } from './pressed.ts';
import { eaveLoad, railInResponse, railNoun } from './rails.ts';
import { inSoil, memberLimit } from './resistance.ts';
import { cableWorking } from './rigging.ts';
import { stressAt } from './stress.ts';

/** Parts whose share of their limit has to be read from the frame. */
export function measured(shelter: Shelter, analysis: FrameAnalysis, on: string | undefined): Measured[] {
  const { roof, sidePosts, eaveRail } = shelter;
  const list: Measured[] = [];
  if (roof.type === 'bows' || roof.type === 'rafters') list.push(...frameParts(shelter, roof, analysis, on));
  if (sidePosts !== undefined) list.push(...posts(shelter, sidePosts, on));
  for (const under of railsUnder(shelter))
    list.push(rail(shelter, under, railNoun(under), (response) => railInResponse(shelter, under, response)));
  if (eaveRail !== undefined && sidePosts !== undefined && sidePosts.spacing > roof.spacing * 1.001)
    list.push(
      rail(shelter, eaveRail, 'eave rail', (response) =>
        eaveLoad(shelter, { responses: [response] }, () => true),
      ),
    );
  if (roof.type === 'inflated' && eaveRail !== undefined && eaveRail.member.kind !== 'cable') {
    const { member, span } = eaveRail;
    list.push({
      part: eaveRail,
      what: 'the films bend the rail inwards past its strength',
      check: 'edge-rail',
      sacrificial: eaveRail.sacrificial === true,
      measure: (response) =>
        worstEdge(shelter, { states: analysis.states, responses: [response] }, member, span)?.utilisation,
    });
  }
  for (const held of frameFeet(shelter)) list.push(...footMeasures(shelter, held));
  if (roof.type === 'rafters' && roof.tie !== undefined)
    list.push({
      part: roof.tie,
      what: 'the tie between the rafters is pulled or pressed past its strength',
      check: 'over-span',
      sacrificial: roof.tie.sacrificial === true,
      measure: bending(shelter, roof.tie.id, roof.tie.member, undefined, asNew),
    });
  return [
    ...list,
    ...ridgePostMeasures(shelter),
    ...ridgeMeasures(shelter),
    ...tieMeasures(shelter, analysis),
    ...guyMeasures(shelter),
  ];
}

/** The bow or rafter itself and its joints. */
function frameParts(
  shelter: Shelter,
  roof: Bows | Rafters,
  analysis: FrameAnalysis,
  on: string | undefined,
): Measured[] {
  const total = roof.line.at(-1)!.s;
  const sacrificial = roof.sacrificial === true;
  const list: Measured[] = [
    {
      part: roof,
      what: `the ${roof.type === 'bows' ? 'bow' : 'rafter'} bends past its strength`,
      check: 'over-span',
      sacrificial,
      measure: bending(
        shelter,
        roof.id,
        roof.member,
        roof.foot,
        memberAgeing(shelter, on, roof.member, roof.foot, total),
      ),
    },
  ];
  const buckling = bucklingIn(shelter, roof, analysis.states);
  if (buckling !== undefined)
    list.push({
      part: roof,
      what: `the ${roof.type === 'bows' ? 'bow' : 'rafter'} bows out along the house`,
      check: 'bow-buckling',
      sacrificial,
      measure: (response) => buckling(response)?.use,
    });
  // Twins on both sides of a bow are told apart.
  const named = ({ at, item }: JointUse): string => {
    if (roof.type !== 'bows') return item.title;
    const off = at / total - 0.5;
    const place = Math.abs(off) < 0.01 ? 'at the crown' : off < 0 ? 'on the left' : 'on the right';
    return `the joint ${place} (${item.title})`;
  };
  for (const joint of slidingJoints(roof))
    list.push({
      part: joint,
      what: `${named(joint)} levers itself open`,
      check: 'splice-overlap',
      sacrificial: sacrificial || joint.sacrificial === true,
      measure: (response) => overlapUse(shelter, roof, joint, response),
    });
  for (const joint of jointsOf(shelter, roof)) {
    const { momentCapacity, pullCapacity } = joint.item;
    if (momentCapacity <= 0 || pullCapacity <= 0) continue;
    list.push({
      part: joint,
      what: `${named(joint)} gives`,
      check: 'weak-coupler',
      sacrificial: sacrificial || joint.sacrificial === true,
      measure: (response) => {
        const demand = demandAt({ responses: [response] }, roof.id, total, joint.at, joint.item);
        return demand === undefined ? undefined : demand.moment / momentCapacity + demand.pull / pullCapacity;
      },
    });
  }
  return list;
}

function bending(
  shelter: Shelter,
  part: string,
  member: MemberItem,
  foot: Foot | undefined,
  ageing: MemberAgeing,
): Measure {
  const limit = memberLimit(shelter.site, member, 'gust', inSoil(foot));
  return (response) => {
    let most: number | undefined;
    for (const force of response.forces) {
      if (force.part !== part) continue;
      const place = stressAt(member, response, force);
      const fresh = place.axialStress / limit.axial + place.bendingStress / limit.bending;
      const use = fresh / ageing.shareAt(force.at);
      if (most === undefined || use > most) most = use;
    }
    return most;
  };
}

function posts(shelter: Shelter, part: Posts, on: string | undefined): Measured[] {
  const { member, foot } = part;
  const sacrificial = part.sacrificial === true;
  const slenderness = postSlenderness(shelter, part)?.slenderness;
  const ageing = memberAgeing(shelter, on, member, foot);
  const bent: Measured = {
    part,
    what: 'the side post bends past its strength',
    check: 'over-span',
    sacrificial,
    measure: bending(shelter, part.id, member, foot, ageing),
  };
  if (slenderness === undefined) return [bent];
  return [
    bent,
    {
      part,
      what: 'the side post buckles',
      check: 'post-buckling',
      sacrificial,
      measure: (response) =>
        mostPressed(shelter.site, member, slenderness, inSoil(foot), pressedIn(part, response, ageing))?.both
          .utilisation,
    },
  ];
}

function rail(
  shelter: Shelter,
  part: Rail,
  noun: string,
  demandIn: (response: Response) => RailDemand | undefined,
): Measured {
  const { member } = part;
  const capacity =
    member.kind === 'cable'
      ? cableWorking(member)
      : memberLimit(shelter.site, member, 'gust').bending * sectionOf(member).sectionModulus;
  return {
    part,
    what: member.kind === 'cable' ? `the ${noun} cable is overpulled` : `the ${noun} bends past its strength`,
    check: 'rail-span',
    sacrificial: part.sacrificial === true,
    measure: (response) => {
      const demand = demandIn(response);
      return demand === undefined ? undefined : (demand.pull ?? demand.moment ?? 0) / capacity;
    },
  };
}
