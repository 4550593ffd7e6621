import { beforeAll, describe, expect, it } from 'vitest';
import { loadHighs } from '../src/highs-door.ts';
import {
  csvCell,
  type MipSolver,
  materials,
  materialsCsv,
  materialsExact,
  materialsJson,
} from '../src/index.ts';
import { bows, cover, film, foot, joint, origin, per, rail, rebar, shelter } from './fixture.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadHighs();
});
const load = async (): Promise<MipSolver> => solver;

const socket = { id: 'bows/joint-1', origin, item: joint('socket', 'socket'), at: 6, assumed: false };
const house = shelter({
  roof: bows({ joints: [socket], foot: foot('stub', 0.6, { stub: rebar, length: 1.2 }) }),
  covers: [cover()],
});

describe('materials', () => {
  it('adds up by hand', () => {
    const { lines, cost } = materials(house);
    const costs = Object.fromEntries(lines.map((line) => [line.item?.id, line.cost]));
    // PVC: 11 pieces of 6 m and 11 of 4 m, one a bar: 22 bars at 9.
    // Rebar: 22 of 1.2 m and saw cuts of 3 mm: 4 to a bar of 6 m (five need 6.012 m): 6 bars at 6.
    // Sockets: 11 at 1.50. Film: a roll 7 m by 20 m at 1 a square metre.
    expect(costs).toEqual({ pvc: 198, rebar: 36, socket: 16.5, film: 140 });
    expect(cost.total).toBe(390.5);
    expect(cost.complete).toBe(true);
    expect(cost.perArea).toBeCloseTo(390.5 / 72, 12);
    // Film lasts 4 years; the frame, when asked, 10.
    expect(cost.renewalsPerYear).toBeCloseTo(35, 12);
    expect(cost.perYear).toBeUndefined();
    const year = 365.25 * 86400;
    expect(materials(house, { frameLife: 10 * year }).cost.perYear).toBeCloseTo(35 + 25.05, 12);
  });

  it('cuts five stubs out of a bar when the saw takes nothing', () => {
    expect(materials(house, { kerf: 0 }).lines.find((line) => line.item?.id === 'rebar')?.cost).toBe(30);
  });

  it('does not buy what is on hand', () => {
    const onHand = new Map([['pvc', [{ length: 6, count: 10 }]]]);
    expect(materials(house, { onHand }).lines.find((line) => line.item?.id === 'pvc')?.cost).toBe(12 * 9);
  });

  it('lets a price list go before an item’s own price', () => {
    const prices = new Map([['socket', [per(2, 'piece')]]]);
    expect(materials(house, { prices }).lines.find((line) => line.item?.id === 'socket')?.cost).toBe(22);
  });

  it('reports a missing price, and a piece longer than any bar, and does not call the sum complete', () => {
    const free = { ...film, prices: [] };
    const { cost } = materials(shelter({ covers: [cover({ skin: free })] }));
    expect(cost).toMatchObject({ complete: false, missing: ['film'], tooLong: ['pvc'], total: 0 });
  });

  it('buys an item of several groups as one', () => {
    const of = shelter({
      roof: bows({
        joints: [socket],
        foot: foot('stub', 0.6, { stub: rebar, length: 1.2 }),
        filled: { upTo: 2, with: 'rebar', member: rebar },
      }),
    });
    const lines = materials(of).lines.filter((line) => line.item?.id === 'rebar');
    expect(lines).toHaveLength(1);
    expect(lines[0]?.pieces?.reduce((sum, piece) => sum + piece.count, 0)).toBe(44);
  });

  it('is never dearer exactly than quickly', async () => {
    const of = shelter({ ...house, ridge: rail({ member: { ...rebar, id: 'bar' }, span: 2 }) });
    const quick = materials(of);
    const exact = await materialsExact(of, load);
    expect(exact.cost.total).toBeLessThanOrEqual(quick.cost.total);
    for (const { plan } of exact.cutList) expect(plan.optimal).toBe(true);
  });
});

describe('lists', () => {
  it.each([
    ['=1+1', "'=1+1"],
    ['+4', "'+4"],
    ['-4', "'-4"],
    ['@x', "'@x"],
    ['\tx', "'\tx"],
    ['=a,"b"', `"'=a,""b"""`],
    ['plain', 'plain'],
    ['a, b', '"a, b"'],
  ])('writes the cell %j as %s', (text, cell) => expect(csvCell(text)).toBe(cell));

  it('CSV has a row a line and no formula', () => {
    const evil = shelter({ covers: [cover({ skin: { ...film, title: '=HYPERLINK("x")' } })] });
    const csv = materialsCsv(materials(evil), 'metric');
    expect(csv.split('\r\n')[0]).toBe('group,item,title,quantity,value,unit,buy,cost,currency,parts,how');
    expect(csv).toContain(`"'=HYPERLINK(""x"")"`);
    expect(csv).not.toMatch(/(^|,)=/m);
    expect(csv).toContain('10.000 m is longer than any sold');
    expect(materialsCsv(materials(house), 'us')).toContain('22 x 19 ft 8-1/4 in');
  });

  it('JSON reads back, with the same bytes each time', () => {
    const text = materialsJson(materials(house));
    expect(text).toBe(materialsJson(materials(house)));
    expect(JSON.parse(text)).toMatchObject({ cost: { total: 390.5 }, gaps: [] });
  });
});
