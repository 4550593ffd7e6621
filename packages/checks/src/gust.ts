/**
 * First-failure gust: the wind is raised until each part comes to the limit its own check sets, with the
 * combinations and safety factors of the site's load basis kept. So a part whose check passes at the site's
 * gust has a higher gust here, and the real thing will usually stand more than the number says.
 */
import { groundAllowedAt } from '@tautline/loads';
import type { Bows, Cover, Foot, MemberItem, Part, Posts, Rafters, Rail, Shelter } from '@tautline/shelter';
import {
  Cancelled,
  type FrameAnalysis,
  furthestGust,
  type GustLimit,
  gustSweep,
  type Measure,
  type Response,
  ridgeDemand,
  sectionOf,
} from '@tautline/structure';
import { type MemberAgeing, memberAgeing } from './ageing.ts';
import { worstEdge } from './checks/edge-rail.ts';
import { fasteningUse } from './checks/fastening-pull.ts';
import { filmGustUse } from './checks/film-stress.ts';
import { sidewaysUse } from './checks/lateral-foot.ts';
import { rackingUses } from './checks/racking.ts';
import { demandAt, jointsOf } from './checks/weak-coupler.ts';
import { type FrameFoot, frameFeet } from './feet.ts';
import { filmLoad } from './film-pull.ts';
import { footUplift } from './ground.ts';
import { type FirstFailure, filmOffMargin, type GustOrder } from './gust-order.ts';
import { eaveLoad } from './rails.ts';
import { inSoil, memberLimit } from './resistance.ts';
import { cableWorking } from './rigging.ts';
import { stressAt } from './stress.ts';

interface Ranked {
  readonly part: Pick<Part, 'id' | 'origin'>;
  readonly what: string;
  readonly check: string;
  readonly sacrificial: boolean;
}

/** On which day, and who may stop it. */
export interface GustOptions {
  /** Day that ages are counted to, ISO; everything is as strong as new without one. */
  readonly on?: string;
  /** Asked between parts; when true `Cancelled` is thrown. */
  readonly cancelled?: () => boolean;
}

/** Every part of the typical frame with the gust it gives way at, lowest first. */
export function firstFailures(
  shelter: Shelter,
  analysis: FrameAnalysis,
  { on, cancelled = () => false }: GustOptions = {},
): readonly FirstFailure[] {
  const sweep = gustSweep(shelter, analysis);
  const failures: FirstFailure[] = [];
  const furthest = furthestGust * shelter.site.gust;
  const add = (ranked: Ranked, { gust, loadCase, estimated = false }: GustLimit): void => {
    const { part, what, check, sacrificial } = ranked;
    if (gust <= furthest)
      failures.push({
        part: part.id,
        origin: part.origin,
        what,
        check,
        gust,
        loadCase,
        sacrificial,
        estimated,
      });
  };
  for (const { measure, ...ranked } of measured(shelter, analysis, on)) {
    if (cancelled()) throw new Cancelled();
    const limit = sweep.limitOf(measure);
    if (limit !== undefined) add(ranked, limit);
  }
  for (const { use, loadCase, ...ranked } of scaledByPressure(shelter, analysis, on)) {
    if (cancelled()) throw new Cancelled();
    const gust = gustAt(shelter.site.gust, use);
    if (gust !== undefined) add(ranked, { gust, loadCase });
  }
  const broken = sweep.givesWay();
  if (broken !== undefined) {
    const what =
      broken.status === 'gives way' ? 'the whole frame gives way' : 'the frame finds no balance any more';
    const { roof } = shelter;
    add({ part: roof, what, check: 'over-span', sacrificial: roof.sacrificial === true }, broken);
  }
  return failures.sort((a, b) => a.gust - b.gust || (a.part < b.part ? -1 : 1));
}

/** The ranking with the gust by which the film should be off. */
export function gustOrder(shelter: Shelter, analysis: FrameAnalysis, options: GustOptions = {}): GustOrder {
  const failures = firstFailures(shelter, analysis, options);
  const first = failures.find((failure) => !failure.sacrificial);
  return {
    failures,
    upTo: furthestGust * shelter.site.gust,
    ...(first === undefined
      ? {}
      : { filmOff: { gust: filmOffMargin * first.gust, margin: filmOffMargin, first } }),
  };
}

/** Parts whose share of their limit has to be read from the frame. */
export function measured(
  shelter: Shelter,
  analysis: FrameAnalysis,
  on: string | undefined,
): (Ranked & { readonly measure: Measure })[] {
  const { roof, sidePosts, ridge, eaveRail } = shelter;
  const list: (Ranked & { readonly measure: Measure })[] = [];
  if (roof.type === 'bows' || roof.type === 'rafters') list.push(...frameParts(shelter, roof, on));
  if (sidePosts !== undefined) list.push(posts(shelter, sidePosts, on));
  if (ridge !== undefined)
    list.push(rail(shelter, ridge, 'ridge', (response) => ridgeDemand(shelter, ridge, [response], 0)));
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
  for (const held of frameFeet(shelter)) list.push(...feet(shelter, held));
  return list;
}

/** The bow or rafter itself and its joints. */
function frameParts(
  shelter: Shelter,
  roof: Bows | Rafters,
  on: string | undefined,
): (Ranked & { readonly measure: Measure })[] {
  const total = roof.line.at(-1)!.s;
  const sacrificial = roof.sacrificial === true;
  const list: (Ranked & { readonly measure: Measure })[] = [
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
  for (const joint of jointsOf(shelter, roof)) {
    const { momentCapacity, pullCapacity } = joint.item;
    if (momentCapacity <= 0 || pullCapacity <= 0) continue;
    list.push({
      part: joint,
      what: `${joint.item.title} gives`,
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

function posts(
  shelter: Shelter,
  part: Posts,
  on: string | undefined,
): Ranked & { readonly measure: Measure } {
  return {
    part,
    what: 'the side post bends past its strength',
    check: 'over-span',
    sacrificial: part.sacrificial === true,
    measure: bending(
      shelter,
      part.id,
      part.member,
      part.foot,
      memberAgeing(shelter, on, part.member, part.foot),
    ),
  };
}

function rail(
  shelter: Shelter,
  part: Rail,
  noun: string,
  demandIn: (response: Response) => ReturnType<typeof ridgeDemand> | undefined,
): Ranked & { readonly measure: Measure } {
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

function feet(shelter: Shelter, held: FrameFoot): (Ranked & { readonly measure: Measure })[] {
  const { site } = shelter;
  const { foot, owner, noun, frames } = held;
  const sacrificial = foot.sacrificial === true || owner.sacrificial === true;
  const uplift = footUplift(foot, owner.member, site);
  const list: (Ranked & { readonly measure: Measure })[] = [];
  if (!('reason' in uplift)) {
    const allowed = Math.max(groundAllowedAt(uplift, site.basis), 1e-6);
    list.push({
      part: foot,
      what: `the foot of the ${noun} is pulled up`,
      check: 'pull-out',
      sacrificial,
      measure: (response) =>
        largest(response, foot.id, (reaction) => (Math.max(0, -reaction.vertical) * frames) / allowed),
    });
  }
  list.push({
    part: foot,
    what: `the foot of the ${noun} is pushed over`,
    check: 'lateral-foot',
    sacrificial,
    measure: (response) =>
      largest(response, foot.id, (reaction) => sidewaysUse(site, held, reaction, 'gust')),
  });
  return list;
}

function largest(
  response: Response,
  foot: string,
  measure: (reaction: Response['reactions'][number]) => number | undefined,
): number | undefined {
  let most: number | undefined;
  for (const reaction of response.reactions) {
    const value = reaction.part === foot ? measure(reaction) : undefined;
    if (value !== undefined && (most === undefined || value > most)) most = value;
  }
  return most;
}

interface Scaled extends Ranked {
  readonly loadCase: string;
  /** Share of the limit when the wind pressure is multiplied by a factor. */
  readonly use: (factor: number) => number | undefined;
}

/** Parts whose load follows from the wind pressure alone: film, its fastenings, the bracing along. */
export function scaledByPressure(
  shelter: Shelter,
  analysis: FrameAnalysis,
  on: string | undefined,
): Scaled[] {
  const covers = shelter.covers.filter((cover) => cover.place === 'roof' && cover.skin.kind === 'film');
  const braces = rackingUses({ shelter, frame: { ok: true, analysis } }).map((finding): Scaled => {
    const brace = shelter.braces.find((entry) => entry.id === finding.part);
    return {
      part: { id: finding.part, origin: finding.origin },
      what:
        brace === undefined
          ? 'the house leans over along its length'
          : `the ${brace.role} along the house gives`,
      check: 'racking',
      sacrificial: brace?.sacrificial === true,
      loadCase: finding.loadCase ?? 'wind along the house',
      use: (factor) => factor * (finding.utilisation ?? 0),
    };
  });
  return [...covers.flatMap((cover) => ofCover(shelter, cover, on)), ...braces];
}

function ofCover(shelter: Shelter, cover: Cover, on: string | undefined): Scaled[] {
  const base = { part: cover, sacrificial: cover.sacrificial === true, loadCase: 'gust on the film' };
  const list: Scaled[] = [
    {
      ...base,
      what: 'the film is stretched for good',
      check: 'film-stress',
      use: (factor) => filmGustUse(shelter, cover, factor, on),
    },
  ];
  if (cover.fastening !== undefined)
    list.push({
      ...base,
      what: `${cover.fastening.title} lets the film go`,
      check: 'fastening-pull',
      use: (factor) => fasteningUse(shelter, cover, factor, on)?.edge,
    });
  const load = filmLoad(shelter, cover);
  if (!('reason' in load) && load.straps !== undefined)
    list.push({
      ...base,
      what: `${load.straps.item.title} gives`,
      check: 'fastening-pull',
      use: (factor) => fasteningUse(shelter, cover, factor, on)?.strap,
    });
  return list;
}

/** Gust at which a share that grows with the pressure passes 1, by halving; undefined when it does not. */
function gustAt(site: number, use: (factor: number) => number | undefined): number | undefined {
  const at = (multiple: number): number | undefined => use(multiple * multiple);
  const most = at(furthestGust);
  const calm = at(0);
  if (most === undefined || most < 1) return undefined;
  if (calm !== undefined && calm >= 1) return 0;
  let low = 0;
  let high = furthestGust;
  for (let pass = 0; pass < 30; pass++) {
    const middle = (low + high) / 2;
    if ((at(middle) ?? 0) >= 1) high = middle;
    else low = middle;
  }
  return high * site;
}
