/** What crosses to a worker: each definition once, and the same world on the other side. */
import type { SpecDefinition, SpecWorld } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import {
  type FromWorker,
  type Heard,
  nothingTold,
  type OwnWords,
  partedWorld,
  type ToWorker,
  worldWith,
} from '../src/analyst/messages.ts';
import { serveAnalyst } from '../src/analyst/worker-side.ts';
import { loadWorkspace } from '../src/index.ts';

const uri = 'file:///gully/told.shelter';
const text = (gust: number, spaced: number): string => `site terrace { gust ${gust} m/s }
shelter one on terrace { footprint 4 m by 9 m; bows spaced ${spaced} cm of pvc40-25 { shape elastic; rise 2 m } }
variant other of one { footprint 5 m by 9 m }
`;
const worldOf = async (said: string): Promise<SpecWorld> =>
  (await loadWorkspace([{ uri, text: said }])).shelters[0]!.world;

describe('the words of a world', () => {
  it('cross once, and make the same world on the other side', async () => {
    const told = nothingTold();
    const heard: Heard = new Map();
    const catalogue = new Map<string, SpecDefinition>();
    const freshOf: string[][] = [];
    for (const said of [text(40, 90), text(40, 91), text(41, 91), text(40, 90)]) {
      const world = await worldOf(said);
      const { fresh, packed } = partedWorld(world, told);
      for (const [name, definition] of fresh) catalogue.set(name, definition);
      // As it crosses: by value.
      const own = structuredClone(packed.own);
      const names = new Map(own.definitions.map(([name, number]) => [number, name]));
      freshOf.push(own.fresh.map(([number]) => names.get(number) ?? ''));
      const there = worldWith(catalogue, own, heard);
      expect([...there.definitions].sort()).toEqual([...world.definitions].sort());
      expect(there.written).toBe(world.written);
    }
    expect(freshOf).toEqual([['terrace', 'one', 'other'], ['one'], ['terrace'], []]);
  });

  it('are told anew before there are too many of them', async () => {
    const told = nothingTold();
    const heard: Heard = new Map();
    const world = await worldOf(text(40, 90));
    const one = world.definitions.get('one')!;
    let most = 0;
    let again = 0;
    for (let n = 0; n < 2000; n += 1) {
      const definitions = new Map([...world.definitions, ['one', { ...one, doc: `note ${n}` }] as const]);
      const { own } = partedWorld({ ...world, definitions }, told).packed;
      const there = worldWith([], own, heard);
      expect(there.definitions.get('one')?.doc).toBe(`note ${n}`);
      expect(there.definitions.get('other')).toEqual(world.definitions.get('other'));
      most = Math.max(most, heard.size);
      if (own.anew) again += 1;
    }
    expect(most).toBeLessThan(700);
    expect(again).toBeGreaterThan(1);
  });

  it('are not made up where they were never told', async () => {
    const { own } = partedWorld(await worldOf(text(40, 90)), nothingTold()).packed;
    const untold: OwnWords = { ...own, fresh: [] };
    expect(() => worldWith([], untold, new Map())).toThrow(/terrace was never told/);
  });
});

describe('the questions of a worker', () => {
  it('are answered findings first, then bills, then what takes longer; each kind in its order', async () => {
    const world = await worldOf(text(40, 90));
    const { fresh, packed } = partedWorld(world, nothingTold());
    const answered: number[] = [];
    let ask: (message: ToWorker) => void = () => undefined;
    const all = new Promise<void>((resolve) => {
      serveAnalyst({
        post: (message: FromWorker) => {
          if (!('id' in message)) return;
          answered.push(message.id);
          if (answered.length === 7) resolve();
        },
        onMessage: (listener) => {
          ask = listener;
        },
        onGone: () => undefined,
        close: () => undefined,
      });
    });
    ask({ type: 'know', definitions: fresh });
    // Begun at once; the others find the worker at work.
    ask({ type: 'analyse', id: 1, own: packed.own, shelter: 'one', options: {} });
    const finding = { id: 'pull-out', part: 'bows/foot' };
    ask({ type: 'fixes', id: 2, shelter: 'one', request: { finding, system: 'metric' } });
    ask({ type: 'analyse', id: 3, shelter: 'one', options: { gusts: true } });
    ask({ type: 'bill', id: 4, shelter: 'one' });
    ask({ type: 'analyse', id: 5, shelter: 'other', options: {} });
    ask({ type: 'bill', id: 6, shelter: 'other' });
    ask({ type: 'analyse', id: 7, shelter: 'one', options: { steps: true } });
    await all;
    expect(answered).toEqual([1, 5, 7, 4, 6, 2, 3]);
  });
});
