import { analyseFrame, type FrameAnalysis, type Response, stateIn } from '@tautline/structure';
import { describe, expect, it } from 'vitest';
import { loadChoices, overlaysOf, responseId, responseOf, sectionView } from '../src/index.ts';
import { magnification, useByPart } from '../src/overlays/of-analysis.ts';
import { emtGable, smallArch, stubArch } from './fixtures/shelters.ts';
import { overlappingTexts } from './overlapping-texts.ts';

function analysed(shelter: typeof stubArch): FrameAnalysis {
  const answer = analyseFrame(shelter);
  if (!answer.ok) throw new Error(answer.reason);
  return answer.analysis;
}
const analysis = analysed(stubArch);
const overlay = (name: 'deflected' | 'bending' | 'water', load?: string, from = analysis) =>
  overlaysOf(stubArch, from, [], { overlay: name, ...(load === undefined ? {} : { load }) }, 'metric');
const withResponse = (change: Partial<Response>): FrameAnalysis => ({
  ...analysis,
  responses: analysis.responses.map((response) => ({ ...response, ...change })),
});

describe('overlays of an analysis', () => {
  it('name every load once, with factors a person can read', () => {
    const choices = loadChoices(analysis);
    expect(choices).toHaveLength(analysis.responses.length);
    expect(new Set(choices.map(({ id }) => id)).size).toBe(choices.length);
    for (const { title } of choices) expect(title).not.toMatch(/\d\.\d{3}/);
  });
  it('stand a sprung bow that has not moved on the line of the section', () => {
    const still = withResponse({
      displacements: (analysis.responses[0] as Response).displacements.map(() => ({ dx: 0, dy: 0 })),
    });
    const [line = []] = overlay('deflected', undefined, still).deflected?.lines ?? [];
    expect(line.length).toBeGreaterThan(10);
    for (const { x, y } of line) {
      const away = Math.min(...stubArch.roof.line.map((p) => Math.hypot(p.x - x, p.y - y)));
      expect(away).toBeLessThan(0.15);
    }
    expect(Math.max(...line.map(({ y }) => y))).toBeCloseTo(stubArch.roof.rise, 1);
  });
  it('draw the movement at the crown as many times as they say', () => {
    const response = analysis.responses[1] as Response;
    const { deflected, captions } = overlay('deflected', responseId(response));
    const state = stateIn(analysis.states, response.condition);
    const middle = state.system.roof[Math.floor(state.system.roof.length / 2)] as number;
    const node = state.system.model.elements[middle]?.i as number;
    const [nodes, built, moved] = [state.system.nodes, state.result.displacements, response.displacements];
    const factor = deflected?.factor as number;
    expect(factor).toBeGreaterThan(1);
    const drawn = deflected?.lines[0]?.[Math.floor(state.system.roof.length / 2)];
    expect(drawn?.y).toBeCloseTo(
      (nodes[node]?.y ?? 0) + (built[node]?.dy ?? 0) + factor * (moved[node]?.dy ?? 0),
      9,
    );
    expect(captions?.[0]).toContain(`${factor} times as large`);
  });
  it('choose the load that moves the frame most when none is named, and say when one is gone', () => {
    const most = (r: Response): number =>
      Math.max(...r.displacements.map(({ dx, dy }) => Math.hypot(dx, dy)));
    const chosen = responseOf(analysis, undefined) as Response;
    expect(most(chosen)).toBe(Math.max(...analysis.responses.map(most)));
    expect(overlay('bending', 'service:no-such').captions?.[0]).toMatch(/not among/);
  });
  it('put the bending locked into a sprung pipe on its outside', () => {
    const { moments = [] } = overlay('bending', responseId(analysis.responses[0] as Response));
    const moment = moments.find(({ part }) => part === stubArch.roof.id);
    const middle = moment?.points.filter(({ x }) => x > 1.5 && x < 2.7) ?? [];
    expect(middle.length).toBeGreaterThan(2);
    for (const point of middle) expect(point.moment).toBeGreaterThan(0);
  });
  it('draw what bends beside the roof too, posts to the measure of the rafters, rails in numbers', () => {
    const house = analysed(emtGable);
    for (const response of house.responses) {
      const choice = { overlay: 'bending', load: responseId(response) } as const;
      const drawn = overlaysOf(emtGable, house, [], choice, 'metric');
      const posts = drawn.moments?.filter(({ part }) => part === emtGable.sidePosts?.id) ?? [];
      const own = response.forces.filter(({ part }) => part === emtGable.sidePosts?.id);
      const most = Math.max(...own.map(({ moment }) => Math.abs(moment)));
      const shown = posts.flatMap(({ points }) => points.map(({ moment }) => Math.abs(moment)));
      if (posts.length === 2) expect(Math.max(...shown)).toBeCloseTo(most, 9);
      for (const { points } of posts)
        for (const { y } of points) expect(y).toBeLessThanOrEqual((emtGable.sidePosts?.height ?? 0) + 0.01);
      expect(drawn.along?.map(({ part }) => part)).toContain('ridge');
      expect(drawn.captions?.at(-1)).toMatch(/^Along the house, between posts: the ridge bends by \d/);
      const picture = sectionView(emtGable, { system: 'metric', overlays: drawn });
      expect(overlappingTexts(picture)).toEqual([]);
    }
    const both = house.responses.filter(
      (response) =>
        overlaysOf(emtGable, house, [], { overlay: 'bending', load: responseId(response) }, 'us').moments
          ?.length === 3,
    );
    expect(both.length).toBeGreaterThan(0);
  });
  it('keep the factor of a movement at another gust, until it would leave the sheet', () => {
    const still = analysis.responses.at(-1) as Response;
    const times = (by: number) =>
      withResponse({
        displacements: still.displacements.map(({ dx, dy }) => ({ dx: by * dx, dy: by * dy })),
      });
    const factorAt = (by: number): number | undefined =>
      overlaysOf(
        stubArch,
        times(by),
        [],
        { overlay: 'deflected', load: responseId(still), compared: times(1) },
        'metric',
      ).deflected?.factor;
    expect(factorAt(0.3)).toBe(factorAt(1));
    expect(factorAt(1.5)).toBe(factorAt(1));
    expect(factorAt(100)).toBeLessThan(factorAt(1) ?? 0);
  });
  it('outline standing water level at the top, under the crown, and give its volume and depth', () => {
    const { ponds = [] } = overlay('water');
    expect(ponds).toHaveLength(1);
    const [{ outline, volume, depth }] = ponds as [(typeof ponds)[number]];
    const top = Math.max(...outline.map(({ y }) => y));
    expect(top).toBeLessThan(stubArch.roof.rise);
    expect(outline[0]?.y).toBe(top);
    expect(outline.at(-1)?.y).toBe(top);
    expect(top - Math.min(...outline.map(({ y }) => y))).toBeCloseTo(depth, 9);
    const { rest, first } = analysis.ponding ?? {};
    expect(volume).toBe((rest ?? first)?.volume);
  });
  it('say when a frame gives way, and when nothing is calculated', () => {
    const { captions } = overlay('bending', undefined, withResponse({ status: 'gives way', reached: 0.63 }));
    expect(captions?.[0]).toContain('gives way at 63 %');
    const none = overlaysOf(smallArch, undefined, [], { overlay: 'water' }, 'metric');
    expect(none.captions?.[0]).toMatch(/not calculated/);
  });
  it('keep the hardest use of each part', () => {
    const uses = useByPart([
      { id: 'a', part: 'bows', utilisation: 0.4 },
      { id: 'b', part: 'bows', utilisation: 0.9 },
      { id: 'c', part: 'posts' },
      { id: 'd', part: 'ridge', utilisation: 1.2 },
    ]);
    expect(uses.map(({ part, value, id }) => [part, value, id])).toEqual([
      ['ridge', 1.2, 'd'],
      ['bows', 0.9, 'b'],
    ]);
  });
  it('never draw a movement smaller than it is', () => {
    expect(magnification(3, 4)).toBe(1);
    expect(magnification(0.01, 4)).toBe(20);
  });
  it.each(['deflected', 'bending', 'water'] as const)('leave texts apart with %s drawn', (name) => {
    expect(overlappingTexts(sectionView(stubArch, { system: 'metric', overlays: overlay(name) }))).toEqual(
      [],
    );
  });
});
