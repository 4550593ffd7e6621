/** Side guys and their anchors, with pulls worked out by hand: a guy that runs 1.5 m out and 2 m down, 3:4:5. */
import type { CableItem, Shelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import type { CheckInput } from '../src/check.ts';
import type { Finding } from '../src/finding.ts';
import { checkOf } from '../src/registry.ts';
import { runCheck } from '../src/run-check.ts';
import { brace, inputOf, origin, sprungHouse } from './houses.ts';

const wire: CableItem = {
  ...{ kind: 'cable', id: 'wire', title: 'wire', source: 'test', origin, prices: [] },
  ...{ diameter: 0.004, breakingLoad: 12_000, modulus: 195e9, area: 12.6e-6, massPerLength: 0.1 },
};
/** 0.8 · 12 000 N / 3 */
const working = 3200;

const house = sprungHouse();
const { frame } = inputOf(house);

/** A guy to each frame and side, or to fewer places along a side. */
const guyed = (tension?: number, places = house.roof.stations.length): Shelter => ({
  ...house,
  braces: [
    brace({
      ...{ id: 'guys', role: 'guy', member: wire, plane: 'across', count: 2 * places },
      ...{ from: { x: 0, y: 2, z: 0 }, to: { x: -1.5, y: 0, z: 0 } },
      foot: { id: 'guys/foot', origin, kind: 'ballast', mass: 200, driven: 0, fixity: 'pinned' },
      ...(tension === undefined ? {} : { tension }),
    }),
  ],
});

/** The analysis of the frame, with these reactions as its only answer. */
function reacting(shelter: Shelter, ...horizontal: readonly { part: string; h: number }[]): CheckInput {
  if (!frame.ok) throw new Error(frame.reason);
  const { analysis } = frame;
  const one = analysis.responses.find(
    ({ load, status, condition }) => load.use !== 'service' && status === 'holds' && condition !== 'built',
  )!;
  const reactions = horizontal.map(({ part, h }) => ({
    ...{ part, side: 'left' as const, horizontal: h, vertical: 0, moment: 0 },
  }));
  return { shelter, frame: { ok: true, analysis: { ...analysis, responses: [{ ...one, reactions }] } } };
}

const told = (id: string, input: CheckInput): Finding => runCheck(checkOf(id)!, input)[0]!;
const pushed = (tension: number | undefined, push: number): CheckInput =>
  reacting(guyed(tension), { part: 'a', h: 0.75 * push }, { part: 'b', h: 0.25 * push });

describe('side guys on a frame that does not know them', () => {
  it('are taken to hold the whole push: 600 N level is 1 000 N along 3:4:5', () => {
    const found = told('guy-pull', pushed(undefined, 600));
    expect(found).toMatchObject({ verdict: 'passes', part: 'guys' });
    expect(found.demand!.value).toBeCloseTo(1000, 9);
    expect(found.capacity!.value).toBeCloseTo(working, 9);
  });

  it('share the push with the lee guy until that hangs slack', () => {
    expect(told('guy-pull', pushed(700, 600)).demand!.value).toBeCloseTo(700 + 500, 9);
    expect(told('guy-pull', pushed(300, 600)).demand!.value).toBeCloseTo(1000, 9);
  });

  it('fail by their own pull alone, and are not judged where only all of the wind would be too much', () => {
    expect(told('guy-pull', pushed(3300, 600))).toMatchObject({ verdict: 'fails' });
    expect(told('guy-pull', pushed(3300, 600)).demand!.value).toBe(3300);
    const unknown = told('guy-pull', pushed(undefined, 3000));
    expect(unknown.verdict).toBe('not checked');
    expect(unknown.reason).toMatch(/whole house/);
  });

  it('lift their anchors with four fifths of their pull', () => {
    const found = told('guy-anchor', pushed(undefined, 300));
    expect(found.part).toBe('guys/foot');
    expect(found.demand!.value).toBeCloseTo(400, 9);
    expect(found.utilisation).toBeCloseTo(400 / found.capacity!.value, 9);
  });
});

describe('side guys whose pull is known', () => {
  it('take it from the whole house, the one that is pulled most', () => {
    const piece = { part: 'guys', push: 0, moment: 0, loadCase: 'wind across' };
    const pieces = [
      { ...piece, piece: 0, pull: 900 },
      { ...piece, piece: 1, pull: 4000 },
    ];
    const house = { ok: true, house: { racking: { bracing: pieces } } } as unknown as NonNullable<
      CheckInput['house']
    >;
    const found = told('guy-pull', { ...pushed(undefined, 600), house });
    expect(found).toMatchObject({ verdict: 'fails', loadCase: 'wind across' });
    expect(found.utilisation).toBeCloseTo(4000 / working, 9);
  });

  it('add what blown-up films pull to what they were set up with, for all frames that a guy stands for', () => {
    const few = guyed(400, 2);
    const blown = { ...few, roof: { ...few.roof, type: 'inflated' } } as unknown as Shelter;
    const found = told('guy-pull', reacting(blown, { part: 'guys', h: -30 }, { part: 'posts', h: 5000 }));
    const frames = house.length / house.roof.spacing;
    expect(frames).toBeCloseTo(2, 9);
    expect(found.demand!.value).toBeCloseTo(400 + (30 * frames) / 0.6, 9);
  });
});

it('guys along the house are left to racking', () => {
  const along = { ...guyed(), braces: guyed().braces.map((one) => ({ ...one, plane: 'along' as const })) };
  expect(runCheck(checkOf('guy-pull')!, inputOf(along))).toEqual([]);
  expect(runCheck(checkOf('guy-anchor')!, inputOf(along))).toEqual([]);
});
