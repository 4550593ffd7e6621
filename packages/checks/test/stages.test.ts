import { describe, expect, it } from 'vitest';
import { evaluate } from '../src/index.ts';
import { ridgedHouse } from './houses.ts';

const house = ridgedHouse();
/** A clock that is one second on each time it is read. */
const ticking = (): (() => number) => {
  let seconds = 0;
  return () => seconds++;
};

describe('stages of an evaluation', () => {
  it('are not timed without a clock, and change nothing when timed', () => {
    const plain = evaluate(house);
    expect(plain.stages).toBeUndefined();
    const { stages, ...timed } = evaluate(house, { clock: { now: () => 0 } });
    expect(stages?.map(({ stage }) => stage)).toEqual(['form', 'plane', 'ponding', 'gusts']);
    expect(JSON.stringify(timed)).toBe(JSON.stringify(plain));
  });

  it.each(['form', 'plane'] as const)(
    'without time for %s nothing of the frame is judged, and the reason is said',
    (id) => {
      const { stages, findings, notChecked } = evaluate(house, {
        clock: { now: ticking(), budget: { form: 1e6, [id]: 1 } },
      });
      const last = stages?.at(-1);
      expect(last).toMatchObject({ stage: id, ranOut: 1 });
      expect(last!.seconds).toBeGreaterThan(1);
      expect(findings.map((finding) => finding.id)).not.toContain('over-span');
      const reason = notChecked.find((entry) => entry.id === 'over-span')?.reason;
      expect(reason).toContain('took longer than 1 s');
    },
  );

  it('without time for standing water everything else is judged', () => {
    const { findings, notChecked, analysis } = evaluate(house, {
      clock: { now: ticking(), budget: { ponding: 1, form: 1e6, plane: 1e6, gusts: 1e6 } },
    });
    expect(analysis?.ponding).toBeUndefined();
    expect(findings.map((finding) => finding.id)).toContain('over-span');
    expect(notChecked).toContainEqual({
      id: 'frame-ponding',
      reason: 'water standing on the frame: took longer than 1 s',
    });
  });

  it('without time for the gusts there is no order of failure, and it is said', () => {
    const { gusts, notChecked } = evaluate(house, {
      clock: { now: ticking(), budget: { gusts: 1, form: 1e6, plane: 1e6, ponding: 1e6 } },
    });
    expect(gusts).toBeUndefined();
    expect(notChecked).toContainEqual({
      id: 'gusts',
      reason: 'the order in which parts give way: took longer than 1 s',
    });
  });

  it('without time for the whole house the typical frame stands, and it is said', () => {
    const {
      house: whole,
      findings,
      notChecked,
    } = evaluate(house, {
      tier: 'full',
      clock: {
        now: ticking(),
        budget: { 'whole-house': 1, form: 1e6, plane: 1e6, ponding: 1e6, gusts: 1e6 },
      },
    });
    expect(whole).toBeUndefined();
    expect(findings.map((finding) => finding.id)).toContain('over-span');
    expect(notChecked).toContainEqual({
      id: 'tier-difference',
      reason: 'the whole house in space: took longer than 1 s',
    });
  });

  it('pass a call to stop through, whatever the clock says', () => {
    expect(() => evaluate(house, { cancelled: () => true, clock: { now: () => 0 } })).toThrow();
  });
});
