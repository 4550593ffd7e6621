/** Frames near the ends of a house: which are looked at by themselves, and under what. */
import { endCoefficients, lasts, windActions } from '@tautline/loads';
import { type Bows, gableLine, heightAt, type Rafters, type Shelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import {
  analyseFrame,
  analyseHouse,
  conditionAt,
  type FrameAnalysis,
  houseLoads,
  houseSystem,
  layOnHouse,
  windShape,
} from '../src/index.ts';
import { postStock, site, sprungHouse } from './fixtures.ts';

const pitch = 20;
const rise = 2 * Math.tan((pitch * Math.PI) / 180);

/** A gable 4 m wide, held at its eaves 2 m up, with clad sides. */
function gable(spacing: number, count: number, basis = site.basis): Shelter {
  const base = sprungHouse();
  const rafters: Rafters = {
    type: 'rafters',
    id: 'rafters',
    origin: base.origin,
    form: 'gable',
    member: postStock,
    spacing,
    stations: Array.from({ length: count }, (_, k) => k * spacing),
    span: 4,
    rise,
    camber: 0,
    overhang: 0,
    springing: 2,
    length: Math.hypot(2, rise),
    line: gableLine(4, rise, 0).map((point) => ({ ...point, y: point.y + 2 })),
    joints: [],
    wrapped: false,
  };
  const length = (count - 1) * spacing;
  return { ...base, width: 4, length, roof: rafters, site: { ...site, basis } };
}

function analysed(shelter: Shelter): FrameAnalysis {
  const answer = analyseFrame(shelter);
  if (!answer.ok) throw new Error(answer.reason);
  return answer.analysis;
}

const judgedOn = ({ responses }: FrameAnalysis): string[] => [
  ...new Set(responses.flatMap(({ load }) => load.on ?? [])),
];

describe('frames near the ends of a gable by ASCE 7', () => {
  const shelter = gable(1, 7);
  const analysis = analysed(shelter);

  it('the second frame stands wholly in the zone of 1.8 m and is looked at; the end frame carries half of that', () => {
    expect(judgedOn(analysis)).toEqual(['the second frame from the end']);
  });

  it('its windward slope carries q (2E - GC_pi) over the part of its breadth inside the zone', () => {
    const q = windActions(shelter.site, windShape(shelter)).velocityPressure;
    const blown = analysis.cases.find(({ id }) => id === 'end-across-inside-plus/1')!;
    const { system } = analysis.states.built;
    const first = blown.lines.find(({ element }) => element === system.roof[0])!;
    const { end } = endCoefficients(pitch).across;
    // It reaches from 0.5 to 1.5 m.
    const p = q * (end.windwardRoof - 0.18);
    expect(Math.hypot(first.wx, first.wy)).toBeCloseTo(Math.abs(p), 6);
    expect(first.wy).toBeGreaterThan(0);
  });

  it('says in its title and steps which frame and which zone', () => {
    const { load } = analysis.responses.find(({ load }) => load.on !== undefined)!;
    expect(load.title).toMatch(/in the end zone.*, on the second frame from the end$/);
    const reach = load.steps!.find(({ symbol }) => symbol === '2a')!;
    expect(reach).toMatchObject({ value: 1.8, source: 'asce7-16:28.3-1' });
    expect(load.steps!.find(({ symbol }) => symbol === 'b_e')!.value).toBeCloseTo(1, 12);
    const usual = analysis.responses.find(({ load }) => load.wind !== undefined && load.on === undefined)!;
    expect(usual.load.title).toMatch(/, on the typical frame$/);
  });

  it('where frames stand far apart the end frame alone is in the zone, with half the film and all of its own weight', () => {
    const wide = analysed(gable(3.6, 4));
    expect(judgedOn(wide)).toEqual(['the end frame']);
    const weightOf = (id: string): number =>
      wide.cases
        .find((one) => one.id === id)!
        .lines.reduce(
          (sum, { element, wy }) => sum - wy * wide.states.built.system.elements[element]!.length,
          0,
        );
    const own = 2 * Math.hypot(2, rise) * 550 * 9.80665 * (3.5 * 0.0254) ** 2;
    const film = weightOf('dead') - own;
    expect(film).toBeGreaterThan(0);
    expect(weightOf('dead/the end frame')).toBeCloseTo(own + film / 2, 6);
  });

  it('other combinations stay as they were', () => {
    const sustained = analysis.responses.filter(({ load }) => lasts(load.duration));
    expect(sustained.every(({ load }) => load.on === undefined && !load.title.includes(' on '))).toBe(true);
    expect(new Set(analysis.responses.map(({ load, condition }) => load.id + condition)).size).toBe(
      analysis.responses.length,
    );
  });
});

describe('where a load basis gives frames no end zone', () => {
  it('arches: the typical bow stands for the end bow, and that is said', () => {
    const analysis = analysed(sprungHouse());
    expect(judgedOn(analysis)).toEqual([]);
    expect(analysis.endsUnseen).toMatch(
      /end bow carries half the breadth: the typical bow stands for it; ASCE 7 gives frames no end zones under arched roofs/,
    );
  });

  it('EN: zone F of the second frame governs with its own coefficient', () => {
    const analysis = analysed(gable(0.5, 13, 'eurocode'));
    expect(judgedOn(analysis)).toContain('the second frame from the end');
  });
});

describe('the whole house', () => {
  const shelter = gable(1, 7);

  it('carries the wind of the end zone on its end frames, and the inner zone on the others', () => {
    const house = houseSystem(shelter, shelter.roof as Rafters, conditionAt(site, 'gust'));
    const { loads, push } = houseLoads(shelter, house);
    const load = loads.find(({ wind, use }) => wind === 'end-across-inside-plus' && use === 'strength')!;
    const { line = [] } = layOnHouse(house, load, push);
    const up = house.frames.map((frame) =>
      frame.elements.reduce((sum, element) => {
        const own = line.find((entry) => entry.element === element);
        return sum + (own === undefined ? 0 : own.wy * house.elements[element]!.length);
      }, 0),
    );
    const q = windActions(shelter.site, windShape(shelter)).velocityPressure;
    const { inner, end } = endCoefficients(pitch).across;
    const lift = (c: typeof inner): number => -2 * q * (c.windwardRoof + c.leewardRoof - 0.36);
    const factor = 0.6;
    // The second frame lies within 1.8 m, the third from 1.5 to 2.5 m, the fourth in the middle.
    expect(up[1]! - up[3]!).toBeCloseTo(factor * (lift(end) - lift(inner)), 4);
    expect(up[2]! - up[3]!).toBeCloseTo(0.3 * factor * (lift(end) - lift(inner)), 4);
    expect(up[5]).toBeCloseTo(up[1]!, 6);
  });
});

describe('uprights in clad ends', () => {
  const base = sprungHouse({ spacing: 1.5 });
  const shelter: Shelter = {
    ...base,
    opening: { ends: 'clad', sides: 'clad' },
    endFrames: {
      id: 'end-frames',
      origin: base.origin,
      member: postStock,
      uprights: [1.4, 2.9].map((x) => ({ x, height: heightAt(base.roof.line, x)! })),
      foot: { id: 'end-frames/foot', origin: base.origin, kind: 'hole', driven: 0.6, fixity: 'clamped' },
    },
  };
  const roof = shelter.roof as Bows;
  const house = houseSystem(shelter, roof, conditionAt(site, 'gust'));

  it('stand in both ends with a foot each, under the end bow', () => {
    expect(house.uprights.map(({ end }) => end)).toEqual(['front', 'front', 'back', 'back']);
    for (const { x } of house.uprights) expect([1.4, 2.9].some((at) => Math.abs(at - x) < 0.05)).toBe(true);
    expect(
      house.supports.filter(({ part, acts }) => part === 'end-frames/foot' && acts === 'y'),
    ).toHaveLength(4);
  });

  it('share the whole push on the end wall with the end bow, and nothing else gets any', () => {
    const { loads, push } = houseLoads(shelter, house);
    const load = loads.find(({ wind, use }) => wind === 'along-uplift' && use === 'strength')!;
    const { line = [] } = layOnHouse(house, load, push);
    const along = line.map(({ element, wz = 0 }) => ({ element, N: wz * house.elements[element]!.length }));
    const total = along.reduce((sum, { N }) => sum + N, 0);
    const force = windActions(shelter.site, windShape(shelter)).cases.at(-1)!.alongForce!;
    expect(total).toBeCloseTo(0.6 * force, 6);
    const front = new Set([
      ...house.uprights.filter(({ end }) => end === 'front').flatMap(({ elements }) => elements),
      ...house.frames[0]!.elements,
    ]);
    expect(along.every(({ element, N }) => N === 0 || front.has(element))).toBe(true);
    const onUprights = along.filter(({ element }) => house.elements[element]!.role === 'upright');
    const share = onUprights.reduce((sum, { N }) => sum + N, 0) / total;
    // Each takes half the way to its neighbours: about two thirds of an arch with two of them.
    expect(share).toBeGreaterThan(0.5);
    expect(share).toBeLessThan(0.8);
  });

  it('carry their bending to their feet, and hold the end bow up', () => {
    const answer = analyseHouse(shelter);
    if (!answer.ok) throw new Error(answer.reason);
    const { uprights, notes } = answer.house;
    const blown = uprights.filter(({ load, end }) => load.wind === 'along-uplift' && end === 'front');
    expect(blown.length).toBeGreaterThan(0);
    for (const { reaction, forces } of blown) {
      expect(reaction.part).toBe('end-frames/foot');
      expect(reaction.horizontal).toBeGreaterThan(1);
      expect(Math.max(...forces.map(({ moment }) => moment))).toBeGreaterThan(1);
    }
    expect(notes.join(' ')).toMatch(/Doors in the ends hold nothing/);
  });
});
