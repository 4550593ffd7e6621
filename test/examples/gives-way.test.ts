/** A combination that the frame does not survive is a failure of the frame, told beside the worst stress of the rest. */
import { type CheckInput, checkOf, evaluate } from '@tautline/checks';
import type { Shelter } from '@tautline/shelter';
import { analyseFrame, type FrameAnalysis, type Response } from '@tautline/structure';
import { describe, expect, it } from 'vitest';
import { example } from './loaded.ts';

const psf = 47.880259;

const snowed = async (name: string, pressure: number): Promise<Shelter> => {
  const { shelter } = await example(name);
  return { ...shelter, site: { ...shelter.site, groundSnow: pressure * psf } };
};

function analysed(shelter: Shelter): FrameAnalysis {
  const frame = analyseFrame(shelter);
  if (!frame.ok) throw new Error(frame.reason);
  return frame.analysis;
}

const onFrame = (shelter: Shelter, analysis: FrameAnalysis) =>
  checkOf('frame-gives-way')!.run!({ shelter, frame: { ok: true, analysis } } as CheckInput);

describe('a frame that does not bear a combination', () => {
  it('fails, and the worst stress of its bows is told as well', async () => {
    const shelter = await snowed('stub-arch', 12);
    const { findings } = evaluate(shelter, { gusts: false });
    const gives = findings.find(({ id }) => id === 'frame-gives-way')!;
    expect(gives.verdict).toBe('fails');
    expect(gives.severity).toBe('error');
    expect(gives.utilisation).toBeCloseTo(1 / gives.capacity!.value, 9);
    expect(gives.loadCase).toContain('snow');
    expect(findings.find(({ id }) => id === 'over-span')!.verdict).toBe('fails');
  });

  it('is not relieved by more snow', async () => {
    let [before, fallen] = [0, 0];
    for (const pressure of [0, 2, 4, 6, 8, 12, 16, 24]) {
      const shelter = await snowed('stub-arch', pressure);
      const use = (id: string): number =>
        Math.max(
          0,
          ...evaluate(shelter, { gusts: false }).findings.flatMap((one) =>
            one.id === id ? [one.utilisation ?? 0] : [],
          ),
        );
      const now = use('frame-gives-way');
      expect(now).toBeGreaterThanOrEqual(fallen);
      const most = Math.max(now, use('over-span'));
      expect(most, `${pressure} lb/ft2`).toBeGreaterThanOrEqual(0.999 * before);
      [before, fallen] = [most, now];
    }
    expect(fallen).toBeGreaterThan(1);
  });

  it('fails where no balance was found, too, and none of several is left out', async () => {
    const { shelter } = await example('stub-arch');
    const analysis = analysed(shelter);
    const broken: FrameAnalysis = {
      ...analysis,
      responses: analysis.responses.map((response, k): Response => {
        if (k === 2) return { ...response, status: 'no answer', reached: 0.4 };
        return k === 3 ? { ...response, status: 'gives way', reached: 0.9 } : response;
      }),
    };
    const [told] = onFrame(shelter, broken);
    expect(told).toMatchObject({ verdict: 'fails', severity: 'error' });
    expect(told!.utilisation).toBeCloseTo(2.5, 9);
    expect(told!.message.filter((piece) => typeof piece === 'string').join('')).toContain(
      '1 other combination',
    );
    expect(told!.steps.map(({ value }) => value)).toEqual([0.4, 0.9]);
    expect(onFrame(shelter, analysis)[0]!.verdict).toBe('passes');
  });
});
