/** Small whole houses of different kinds, and their models for both solvers. */
import { loadWorkspace } from '@tautline/language';
import type { SpaceElement, SpaceLoads, SpaceModel, SpaceResult } from '@tautline/mechanics';
import { pointOn, resolveShelter, type Shelter } from '@tautline/shelter';
import {
  buildHouse,
  type Condition,
  conditionAt,
  type HouseState,
  type HouseSystem,
  houseLoads,
  houseSystem,
  layOnHouse,
  sectionOf,
} from '@tautline/structure';
import type { HouseAsked, HouseJoint, HousePiece } from './house.ts';
import { cross, unit, type Vector } from './vector.ts';

const plot = `site test-plot {
  gust 26 m/s once per 50 yr
  exposure sheltered
  elevation 0 m
  rain 100 mm/h
  soil loam
  coldest 15 degC
  hottest 50 degC
  latitude -28 deg
  basis asce7-asd
  hazard low
}
/** Source: made up for this test: members meet in one point and keep their angle. */
fitting weld { form clamp; moment 5 kN.m; pull 50 kN; takes 0 in }
/** Source: made up for this test: joints that give, some times as stiff as a metre of the pipes they join. */
fitting give-pvc { form clamp; moment 100 N.m; pull 5 kN; stiffness 200 N.m/rad; takes 0 in }
fitting give-steel { form clamp; moment 500 N.m; pull 5 kN; stiffness 1500 N.m/rad; takes 0 in }
/** Source: made up for this test: slender, so that shear, which ours leaves out, does not count. */
lumber slat { depth 30 mm; breadth 10 mm; material select-softwood; sold 12 m long }
pipe slim-16 { outside 16 mm; wall 1.5 mm; material pipe-steel; sold 12 m long }
pipe slim-20 { outside 20 mm; wall 2 mm; material pipe-steel; sold 12 m long }
pipe slim-25 { outside 25 mm; wall 2 mm; material pipe-steel; sold 12 m long }
pipe slim-32 { outside 32 mm; wall 2 mm; material pipe-steel; sold 12 m long }
pipe pvc-12 { outside 17 mm; wall 2.4 mm; material pvc; sold 12 m long }
pipe pvc-15 { outside 21.3 mm; wall 2.8 mm; material pvc; sold 12 m long }
pipe pvc-20 { outside 26.7 mm; wall 2.9 mm; material pvc; sold 12 m long }
pipe pvc-25 { outside 33.4 mm; wall 3.4 mm; material pvc; sold 12 m long }
pipe pvc-40 { outside 48.3 mm; wall 3.7 mm; material pvc; sold 12 m long }
`;

export async function houseOf(text: string): Promise<Shelter> {
  const workspace = await loadWorkspace([{ uri: 'file:///test/house.shelter', text: plot + text }]);
  const loaded = workspace.shelters[0];
  if (loaded === undefined) throw new Error(workspace.problems.map((problem) => problem.message).join('\n'));
  const { shelter, problems } = resolveShelter(loaded.name, loaded.world);
  const wrong = [...workspace.problems, ...problems].filter((problem) => problem.severity === 'error');
  if (shelter === undefined || wrong.length > 0)
    throw new Error(wrong.map((problem) => problem.message).join('\n'));
  return shelter;
}

export interface Case {
  readonly shelter: Shelter;
  readonly state: HouseState;
  readonly system: HouseSystem;
  readonly loads: SpaceLoads;
  readonly title: string;
}

/** Pieces of ours along a bow and a rafter: each is one of ccx's. */
const pieces = { bow: 32, rafter: 12 } as const;
/** Ends, middles and joins of ccx's elements along one piece of a frame. */
const shares = [0, 0.5, 1];

export interface CaseOptions {
  readonly condition?: Condition;
  /** Feet give by springs of the soil. */
  readonly soil?: boolean;
}

/** The house as built, and a share of one of its combinations brought to the nodes so that both solvers get the same forces. */
export function caseOf(
  shelter: Shelter,
  combination: RegExp,
  share: number,
  options: CaseOptions = {},
): Case {
  const { roof } = shelter;
  if (roof.type !== 'bows' && roof.type !== 'rafters') throw new Error('no frames');
  const system = withoutSwelling(
    houseSystem(shelter, roof, options.condition ?? conditionAt(shelter.site, 'built'), {
      soil: options.soil === true,
      divisions: roof.type === 'bows' ? pieces.bow : pieces.rafter,
    }),
  );
  const { loads, push } = houseLoads(shelter, system);
  const load = loads.find((one) => combination.test(one.id));
  if (load === undefined)
    throw new Error(`no such combination among ${loads.map((one) => one.id).join(', ')}`);
  return {
    shelter,
    system,
    state: buildHouse(system),
    loads: { nodal: onNodes(system.model, layOnHouse(system, load, push), share) },
    title: load.title,
  };
}

/**
 * Poisson's ratio 0 on both sides: where members meet ccx makes a rigid knot, which keeps the section from swelling
 * and so stiffens half an element on either side. Round sections then have GJ = EI. One brick across, as ccx has it,
 * warps with xy only, and a rectangle a by b then has J = a³b³ / 3(a² + b²) (from its integration points).
 */
function withoutSwelling(system: HouseSystem): HouseSystem {
  const elements = system.model.elements.map((e, k) => {
    const { item } = system.elements[k]!;
    if (item === undefined || item.kind === 'cable' || e.truss === true) return e;
    const E = e.EA / sectionOf(item).area;
    const { section } = item;
    const GJ = section.shape === 'rectangle' ? (E / 2) * brickTorsion(section.depth, section.breadth) : e.EIz;
    return { ...e, GJ };
  });
  return { ...system, model: { ...system.model, elements } };
}

function onNodes(model: SpaceModel, loads: SpaceLoads, share: number): NonNullable<SpaceLoads['nodal']> {
  const sums = new Map<number, [number, number, number]>();
  for (const line of loads.line ?? []) {
    const e = model.elements[line.element]!;
    const [a, b] = [model.nodes[e.i]!, model.nodes[e.j]!];
    const length = e.restLength ?? Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z);
    for (const node of [e.i, e.j]) {
      const at = sums.get(node) ?? [0, 0, 0];
      sums.set(node, [
        at[0] + (share * line.wx * length) / 2,
        at[1] + (share * line.wy * length) / 2,
        at[2] + (share * line.wz * length) / 2,
      ]);
    }
  }
  return [...sums].map(([node, [fx, fy, fz]]) => ({ node, fx, fy, fz }));
}

/** The same house for the other solver; `slack` names cables that hang slack and are left out there. */
export function askedOf(c: Case, nonlinear: boolean, slack: (element: number) => boolean): HouseAsked {
  const { system, shelter } = c;
  const { model } = system;
  const fixed = new Set(model.supports.flatMap((s) => (s.kind === 'fixed' ? [`${s.node}/${s.dof}`] : [])));
  const springs = model.supports.flatMap(({ node, dof, kind, stiffness }) => {
    if (kind === 'contact') throw new Error('contacts are not compared');
    return kind === 'spring' && stiffness !== undefined ? [{ node, dof, stiffness }] : [];
  });
  const pieces = model.elements.flatMap((e, k): HousePiece[] => {
    const meaning = system.elements[k]!;
    const { item } = meaning;
    if (item === undefined) return [linkOf(model, e)];
    const ends = { i: e.i, j: e.j, ...jointsOf(model, e) };
    const bar = (area: number): HousePiece => {
      const length = Math.hypot(
        ...(['x', 'y', 'z'] as const).map((axis) => model.nodes[e.j]![axis] - model.nodes[e.i]![axis]),
      );
      const short = e.restLength === undefined ? undefined : 1 - e.restLength / length;
      return {
        ...ends,
        E: e.EA / area,
        poisson: 0,
        section: { kind: 'bar', area },
        towards: [0, 0, 1],
        ...(short === undefined ? {} : { short }),
      };
    };
    if (item.kind === 'cable') return slack(k) ? [] : [bar(item.area)];
    const { area } = sectionOf(item);
    if (e.truss === true) return [bar(area)];
    const E = Number((e.EA / area).toPrecision(10));
    const poisson = 0;
    const shape = item.section;
    const frame = meaning.role === 'frame';
    const towards = e.towards ?? [0, 0, 1];
    const section: HousePiece['section'] =
      shape.shape === 'round-hollow'
        ? { kind: 'pipe', outside: shape.outside, wall: shape.wall }
        : shape.shape === 'round-solid'
          ? { kind: 'circle', outside: shape.outside }
          : frame
            ? { kind: 'rectangle', depth: shape.breadth, breadth: shape.depth }
            : { kind: 'rectangle', depth: shape.depth, breadth: shape.breadth };
    if (!frame) return [{ ...ends, E, poisson, section, towards }];
    const { line } = shelter.roof;
    const { z } = model.nodes[e.i]!;
    const off = system.slice.nodes[system.slice.model.elements[system.slice.roof[0]!]!.i]!;
    const base = pointOn(line, 0);
    const at = (share: number) => pointOn(line, meaning.from + share * (meaning.to - meaning.from));
    const between = shares.slice(1, -1).map((share) => {
      const p = at(share);
      return [p.x + off.x - base.x, p.y + off.y - base.y, z] as const;
    });
    const sprung =
      e.restBent !== undefined && shelter.roof.type === 'bows' && shelter.roof.shape === 'elastic';
    const locked = sprung ? shares.map((share) => at(share).curvature) : undefined;
    return [{ ...ends, E, poisson, section, towards, between, ...(locked === undefined ? {} : { locked }) }];
  });
  return {
    nodes: model.nodes,
    pieces,
    held: [...fixed].map((key) => {
      const [node, dof] = key.split('/');
      return { node: Number(node), dof: dof as HouseAsked['held'][number]['dof'] };
    }),
    springs,
    loads: (c.loads.nodal ?? []).map(({ node, fx, fy, fz }) => ({ node, fx, fy, fz })),
    nonlinear,
  };
}

/** The joints at a member's ends: it turns freely or by a spring about its two axes across, and never spins by itself. */
function jointsOf(model: SpaceModel, e: SpaceElement): Pick<HousePiece, 'jointI' | 'jointJ'> {
  const [x, y, z] = localAxes(model, e);
  const joint = (spring: SpaceElement['springI']): HouseJoint | undefined =>
    spring?.y === undefined && spring?.z === undefined
      ? undefined
      : [{ axis: x }, ...about(y, spring.y), ...about(z, spring.z)];
  const [jointI, jointJ] = [joint(e.springI), joint(e.springJ)];
  return { ...(jointI === undefined ? {} : { jointI }), ...(jointJ === undefined ? {} : { jointJ }) };
}

const about = (axis: Vector, stiffness: number | undefined): HouseJoint =>
  stiffness === undefined ? [{ axis }] : stiffness > 0 ? [{ axis, stiffness }] : [];

/** A link between crossing members: a round rod of the same stiffness; what it twists more softly is put into its joint. */
function linkOf(model: SpaceModel, e: SpaceElement): HousePiece {
  const [x, y, z] = localAxes(model, e);
  const E = e.EA ** 2 / (4 * Math.PI * e.EIy);
  const [a, b] = [model.nodes[e.i]!, model.nodes[e.j]!];
  const length = Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z);
  const twist = 1 / (length / e.GJ - length / e.EIy);
  return {
    i: e.i,
    j: e.j,
    E,
    poisson: 0,
    section: { kind: 'circle', outside: 2 * Math.sqrt(e.EA / E / Math.PI) },
    towards: z,
    jointJ: [
      ...about(x, Number.isFinite(twist) && twist > 0 ? twist : undefined),
      ...about(y, e.springJ?.y),
      ...about(z, e.springJ?.z),
    ],
  };
}

/** Axes of a member as our solver lays them: along it, then across. */
function localAxes(model: SpaceModel, e: SpaceElement): readonly [Vector, Vector, Vector] {
  const [a, b] = [model.nodes[e.i]!, model.nodes[e.j]!];
  const x = unit([b.x - a.x, b.y - a.y, b.z - a.z]);
  const wish = e.towards ?? (Math.abs(x[2]) > 0.999 ? [0, 1, 0] : [0, 0, 1]);
  const y = unit(cross(wish, x));
  return [x, y, cross(x, y)];
}

/** Cables that hang slack in a state of the house: shorter there than at rest. */
export function slackIn(system: HouseSystem, result: SpaceResult): (element: number) => boolean {
  const place = (n: number): number[] => {
    const [p, d] = [system.model.nodes[n]!, result.displacements[n]!];
    return [p.x + d.dx, p.y + d.dy, p.z + d.dz];
  };
  const far = (a: number[], b: number[]): number => Math.hypot(...a.map((v, k) => v - b[k]!));
  return (element) => {
    const e = system.model.elements[element]!;
    if (e.tensionOnly !== true) return false;
    const [p, q] = [system.model.nodes[e.i]!, system.model.nodes[e.j]!];
    const rest = e.restLength ?? far([p.x, p.y, p.z], [q.x, q.y, q.z]);
    return far(place(e.i), place(e.j)) < rest * (1 - 1e-12);
  };
}

const brickTorsion = (a: number, b: number): number => (a * b) ** 3 / (3 * (a * a + b * b));
