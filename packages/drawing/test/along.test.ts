import { analyseFrame, type FrameAnalysis, type Response } from '@tautline/structure';
import { describe, expect, it } from 'vitest';
import {
  overlaysOf,
  responseId,
  type SectionOverlays,
  sideView,
  toSvg,
  viewOfOverlay,
} from '../src/index.ts';
import { loadedRails } from '../src/overlays/rails.ts';
import { cableArch, emtGable, smallArch, timberGable } from './fixtures/shelters.ts';
import { overlappingTexts } from './overlapping-texts.ts';
import { xmlProblems } from './well-formed.ts';

function analysed(shelter: typeof emtGable): FrameAnalysis {
  const answer = analyseFrame(shelter);
  if (!answer.ok) throw new Error(answer.reason);
  return answer.analysis;
}
const over = (shelter: typeof emtGable, analysis: FrameAnalysis, response: Response): SectionOverlays =>
  overlaysOf(shelter, analysis, [], { overlay: 'along', load: responseId(response) }, 'metric');

describe('bending along the house', () => {
  const house = analysed(timberGable);

  it('belongs over the side', () => {
    expect(viewOfOverlay('along')).toBe('side');
    expect(viewOfOverlay('bending')).toBe('section');
  });

  it('is nothing at the posts and w L²/8 half way between, of every rail', () => {
    for (const response of house.responses) {
      const { moments = [] } = over(timberGable, house, response);
      const rails = loadedRails(timberGable, house, response).filter(
        ({ demand }) => demand.moment !== undefined,
      );
      expect(moments.map(({ part }) => part)).toEqual(rails.map(({ demand }) => demand.rail.id));
      for (const [i, { demand, carried }] of rails.entries()) {
        const points = moments[i]!.points;
        for (const z of carried)
          for (const { moment } of points.filter(({ x }) => Math.abs(x - z) < 1e-9))
            expect(moment).toBeCloseTo(0, 9);
        const [a = 0, b = 0] = carried;
        const middle = points.find(({ x }) => Math.abs(x - (a + b) / 2) < 1e-9)!;
        const expected = (demand.moment ?? 0) * ((b - a) / demand.rail.span) ** 2;
        expect(Math.abs(middle.moment)).toBeCloseTo(expected, 6);
        // What presses down stretches the underside, which lies to the right of travel.
        expect(Math.sign(middle.moment)).toBe(demand.load >= 0 ? -1 : 1);
      }
    }
  });

  it('shows the sag of a cable and its pull', () => {
    const cable = analysed(cableArch);
    const response = cable.responses[0]!;
    const { deflected, along = [], moments, captions = [] } = over(cableArch, cable, response);
    const { demand } = loadedRails(cableArch, cable, response)[0]!;
    const y = demand.rail.lines[0]!.y;
    expect(moments).toBeUndefined();
    expect(along[0]?.text).toMatch(/^ridge cable pulls \d/);
    const lowest = Math.max(...deflected!.lines[0]!.map((p) => Math.abs(p.y - y)));
    expect(lowest).toBeCloseTo(deflected!.factor * demand.sag, 9);
    expect(captions.join(' ')).toMatch(/Ridge cable: .* pulls it to \d/);
  });

  it('says so where nothing carries the frames along the house', () => {
    const { ridge: _ridge, ...bare } = smallArch;
    const alone = analysed(bare);
    const drawn = over(bare, alone, alone.responses[0]!);
    expect(drawn.moments).toBeUndefined();
    expect(drawn.captions?.[0]).toContain('No ridge and no eave rail');
  });

  it.each([emtGable, timberGable, cableArch])('leaves texts apart on the side of $name', (shelter) => {
    const analysis = analysed(shelter);
    for (const response of analysis.responses.slice(0, 4)) {
      const drawing = sideView(shelter, { system: 'us', overlays: over(shelter, analysis, response) });
      expect(overlappingTexts(drawing)).toEqual([]);
      expect(xmlProblems(toSvg(drawing, 'contrast'))).toEqual([]);
    }
  });
});
