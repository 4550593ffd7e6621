/** Ridge posts, the end anchors of a ridge cable, ties and side guys by what the frame brings them at a gust. */
import { groundAllowedAt } from '@tautline/loads';
import { type Brace, type CableItem, type Rail, railsUnder, type Shelter } from '@tautline/shelter';
import type { FrameAnalysis, HouseAnswer } from '@tautline/structure';
import { upwardPull } from './cable-end.ts';
import { loadedUprights, railPart } from './checks/end-frame.ts';
import { postSlenderness } from './checks/post-buckling.ts';
import { tieUse } from './checks/tie-buckling.ts';
import { bracingUses } from './checks/whole-house.ts';
import { endFootUse, endRailUse, uprightUse } from './end-uses.ts';
import { postWeight } from './feet.ts';
import { footUplift } from './ground.ts';
import type { Measured, Scaled } from './gust-order.ts';
import { guyAlone, guyInFrame, guyInHouse, guySlope, sideGuys } from './guys.ts';
import { mostPressed } from './pressed.ts';
import { railInResponse, railNoun, rowsUnder } from './rails.ts';
import { inSoil } from './resistance.ts';
import { cableWorking } from './rigging.ts';

type Guy = Brace & { readonly member: CableItem };

export function ridgeMeasures(shelter: Shelter): Measured[] {
  return [...railsUnder(shelter).flatMap((rail) => anchored(shelter, rail)), ...pressedPosts(shelter)];
}

function pressedPosts(shelter: Shelter): Measured[] {
  return rowsUnder(shelter).flatMap(({ posts, rail, noun }): Measured[] => {
    const slenderness = postSlenderness(shelter, posts)?.slenderness;
    if (slenderness === undefined) return [];
    const weight = postWeight(posts);
    return [
      {
        part: posts,
        what: `the ${noun} buckles`,
        check: 'post-buckling',
        sacrificial: posts.sacrificial === true,
        measure: (response) => {
          const { post, ends = [] } = railInResponse(shelter, rail, response);
          const loads = [post, ...ends].map(({ down, loadCase, duration }) => ({
            thrust: down + weight,
            bending: 0,
            loadCase,
            duration,
          }));
          return mostPressed(shelter.site, posts.member, slenderness, inSoil(posts.foot), loads)?.both
            .utilisation;
        },
      },
    ];
  });
}

function anchored(shelter: Shelter, rail: Rail): Measured[] {
  const { endAnchor } = rail;
  if (endAnchor === undefined || rail.member.kind !== 'cable') return [];
  const hold = footUplift(endAnchor, undefined, shelter.site);
  if ('reason' in hold) return [];
  const allowed = Math.max(groundAllowedAt(hold, shelter.site.basis), 1e-6);
  return [
    {
      part: endAnchor,
      what: `the anchor of the ${railNoun(rail)} cable is pulled up`,
      check: 'cable-anchor',
      sacrificial: rail.sacrificial === true || endAnchor.sacrificial === true,
      measure: (response) => {
        const ends = railInResponse(shelter, rail, response).ends ?? [];
        return ends.length === 0 ? undefined : Math.max(...ends.map(upwardPull)) / allowed;
      },
    },
  ];
}

/** Ties between post heads, where the frame analysis has them. */
export function tieMeasures(shelter: Shelter, analysis: FrameAnalysis): Measured[] {
  const inFrame = new Set(analysis.states.built.system.elements.map(({ part }) => part));
  return shelter.braces.flatMap((tie): Measured[] => {
    if (tie.role !== 'tie' || !inFrame.has(tie.id)) return [];
    return [
      {
        part: tie,
        what: tie.member.kind === 'cable' ? 'the tie parts' : 'the tie buckles or parts',
        check: 'tie-buckling',
        sacrificial: tie.sacrificial === true,
        measure: (response) => tieUse(shelter, response, tie),
      },
    ];
  });
}

const wires = (shelter: Shelter): readonly Guy[] =>
  sideGuys(shelter).filter((guy): guy is Guy => guy.member.kind === 'cable');

/** The two limits of a guy: its wire, and its anchor along the wire, N. */
function limitsOf(
  shelter: Shelter,
  guy: Guy,
): readonly { readonly ranked: Omit<Measured, 'measure'>; readonly mayTake: number }[] {
  const sacrificial = guy.sacrificial === true;
  const wire = {
    ranked: { part: guy, what: 'the side guy parts', check: 'guy-pull', sacrificial },
    mayTake: cableWorking(guy.member),
  };
  const hold = guy.foot === undefined ? undefined : footUplift(guy.foot, undefined, shelter.site);
  if (guy.foot === undefined || hold === undefined || 'reason' in hold) return [wire];
  const mayTake = groundAllowedAt(hold, shelter.site.basis) / Math.sin(guySlope(guy));
  return [
    wire,
    {
      ranked: {
        part: guy.foot,
        what: 'the anchor of the side guy is pulled up',
        check: 'guy-anchor',
        sacrificial: sacrificial || guy.foot.sacrificial === true,
      },
      mayTake: Math.max(mayTake, 1e-6),
    },
  ];
}

/** Side guys whose pull the frame under a blown-up roof knows. */
export function guyMeasures(shelter: Shelter): Measured[] {
  return shelter.roof.type === 'inflated' ? pulled(shelter, guyInFrame) : [];
}

/** What bounds a side guy whose share of the wind the typical frame does not know: as if the guys held all of it. */
export function guyBounds(shelter: Shelter): Measured[] {
  return shelter.roof.type === 'inflated' ? [] : pulled(shelter, guyAlone);
}

/** Both limits of every side guy, by the pull that `found` finds in a response. */
function pulled(shelter: Shelter, found: typeof guyInFrame | typeof guyAlone): Measured[] {
  return wires(shelter).flatMap((guy) =>
    limitsOf(shelter, guy).map(
      ({ ranked, mayTake }): Measured => ({
        ...ranked,
        measure: (response) => {
          const pull = found(shelter, guy, [response])?.pull;
          return pull === undefined ? undefined : pull / mayTake;
        },
      }),
    ),
  );
}

/** Uprights, rails and feet of the end frames by what the whole house brings them in wind, taken to grow with the pressure. */
export function endsInHouse(shelter: Shelter, house: HouseAnswer | undefined): Scaled[] {
  const { endFrames } = shelter;
  if (house?.ok !== true || endFrames === undefined) return [];
  const sacrificial = endFrames.sacrificial === true;
  const blown = loadedUprights(house.house).filter(({ load }) => load.wind !== undefined);
  const scaled = (
    part: Scaled['part'],
    what: string,
    found: { readonly use: number } | undefined,
    loadCase: string,
  ): Scaled[] =>
    found === undefined
      ? []
      : [{ part, what, check: 'end-frame', sacrificial, loadCase, use: (factor) => factor * found.use }];
  const upright = uprightUse(shelter, endFrames, blown);
  const rail = endRailUse(shelter, endFrames, house.house.endRails);
  const foot = endFootUse(shelter, endFrames, blown);
  const held = 'reason' in foot ? undefined : foot;
  return [
    ...scaled(
      endFrames,
      'the upright in an end bends past its strength',
      upright,
      upright?.under.load.title ?? 'wind',
    ),
    ...scaled(
      railPart(endFrames),
      'the rail in an end bends past its strength',
      rail,
      rail?.piece.loadCase ?? 'wind',
    ),
    ...scaled(
      endFrames.foot,
      `the foot of an upright in an end ${held === undefined ? 'gives' : gives[held.how]}`,
      held,
      held?.under.load.title ?? 'wind',
    ),
  ];
}

const gives = { up: 'is pulled up', over: 'is pushed over', down: 'sinks' } as const;

/** Guys and braces by their share in the whole house, taken to grow with the pressure. */
export function bracedInHouse(shelter: Shelter, house: HouseAnswer | undefined): Scaled[] {
  if (house?.ok !== true) return [];
  const pieces = house.house.racking.bracing;
  const guys = wires(shelter).flatMap((guy) => {
    const found = guyInHouse(pieces, guy, 1);
    if (found === undefined) return [];
    return limitsOf(shelter, guy).map(
      ({ ranked, mayTake }): Scaled => ({
        ...ranked,
        loadCase: found.loadCase,
        use: (factor) => (guyInHouse(pieces, guy, factor)?.pull ?? 0) / mayTake,
      }),
    );
  });
  const braces = bracingUses(shelter, pieces).flatMap((finding): Scaled[] => {
    const brace = shelter.braces.find(({ id }) => id === finding.part);
    const { utilisation } = finding;
    return brace === undefined || utilisation === undefined
      ? []
      : [
          {
            part: brace,
            what: `the ${brace.role} gives in the whole house`,
            check: 'whole-house',
            sacrificial: brace.sacrificial === true,
            loadCase: finding.loadCase ?? 'wind',
            use: (factor) => factor * utilisation,
          },
        ];
  });
  return [...guys, ...braces];
}
