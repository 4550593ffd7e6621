import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  cutText,
  handText,
  materials,
  moneyText,
  priceKey,
  pricesFromCsv,
  stockOnHand,
} from '../src/index.ts';
import { bows, foot, joint, origin, per, rebar, shelter } from './fixture.ts';

const socket = { id: 'bows/joint-1', origin, item: joint('socket', 'socket'), at: 6, assumed: false };
const house = shelter({
  roof: bows({ joints: [socket], foot: foot('stub', 0.6, { stub: rebar, length: 1.2 }) }),
});

describe('stock on hand', () => {
  it('adds up lengths and pieces by item', () => {
    const { onHand, piecesOnHand } = stockOnHand([
      { item: 'pvc', count: 10, length: 6, origin },
      { item: 'pvc', count: 2, length: 4, origin },
      { item: 'socket', count: 3, origin },
      { item: 'socket', count: 1, origin },
    ]);
    expect(onHand.get('pvc')).toEqual([
      { length: 6, count: 10 },
      { length: 4, count: 2 },
    ]);
    expect(piecesOnHand.get('socket')).toBe(4);
  });

  it('takes counted pieces off what is bought: 11 sockets less 4 at 1.50', () => {
    const line = materials(house, { piecesOnHand: new Map([['socket', 4]]) }).lines.find(
      (one) => one.item?.id === 'socket',
    );
    expect(line).toMatchObject({ total: 11, fromHand: 4, cost: 10.5 });
    expect(handText(line!, 'metric')).toBe('4');
  });

  it('costs nothing for what is all there, even without a price', () => {
    const free = { ...socket, item: { ...socket.item, prices: [] } };
    const bare = shelter({ roof: bows({ joints: [free] }) });
    const { cost } = materials(bare, { piecesOnHand: new Map([['socket', 50]]) });
    expect(cost.missing).not.toContain(free.item.title);
  });
});

describe('things that no item stands for', () => {
  it('take a price from a list by a word made from their title', () => {
    const set = shelter({ roof: bows({ foot: foot('concrete', 0.6, { across: 0.3 }) }) });
    const line = (prices?: Parameters<typeof materials>[1]) =>
      materials(set, prices).lines.find((one) => one.title === 'Concrete');
    expect(line()?.cost).toBeUndefined();
    const { prices } = pricesFromCsv('item,price,per\nconcrete,100,m3', 'yard.csv');
    // 22 holes of pi / 4 x 0.3^2 x 0.6 = 0.04241 m3, less a bow of 34 mm in each, 0.00054 m3, and a tenth.
    expect(line({ prices })?.cost).toBeCloseTo(22 * 4.1867 * 1.1, 1);
    expect(priceKey(line()!)).toBe('concrete');
  });
});

describe('what dominates the cost', () => {
  it('is told dearest first, and the shares of all priced lines add up to one', () => {
    const { cost } = materials(house, { prices: new Map([['socket', [per(100, 'piece')]]]) });
    expect(cost.shares[0]?.title).toBe('socket');
    expect(cost.shares[0]?.share).toBeCloseTo(1100 / cost.total, 12);
    expect(cost.shares.reduce((sum, one) => sum + one.share, 0)).toBeCloseTo(1, 12);
  });
});

describe('money', () => {
  // Decimals of each currency: ISO 4217, list one.
  it.each([
    ['USD', 'USD 4.20'],
    ['JPY', 'JPY 4'],
    ['KWD', 'KWD 4.200'],
    ['XTS', 'XTS 4.20'],
    [undefined, '4.20'],
  ])('in %s', (currency, text) => {
    expect(moneyText(4.2, currency)).toBe(text);
  });

  it('is never a number that is none', () => {
    expect(() => moneyText(Number.NaN, 'USD')).toThrow(RangeError);
  });
});

describe('lengths to cut', () => {
  it('are told to the millimetre or the sixteenth', () => {
    expect(cutText(3.0485, 'metric')).toBe('3.049 m');
    expect(cutText(0.0123, 'metric')).toBe('12 mm');
    expect(cutText(9.4488, 'us')).toBe('31 ft');
    expect(cutText(9.4488 + 0.0254 / 16, 'us')).toBe('31 ft 1/16 in');
  });
});

describe('a price list as CSV', () => {
  const read = (text: string) => pricesFromCsv(text, 'yard.csv');

  it('reads lengths, areas, volumes and pieces, in any order of columns', () => {
    const { prices, problems } = read(
      'per,item,note,price\r\n20 ft,pvc,"long, white",6.20\r\n100 m2,film,,210\r\nyd3,concrete,,90\r\npiece,socket,,0.80\r\nm,wire,,0.4\r\n\r\n',
    );
    expect(problems).toEqual([]);
    const found = [...prices].map(([item, [point]]) => [
      item,
      point?.amount,
      point?.per.unit,
      point?.per.value,
    ]);
    expect(found).toEqual([
      ['pvc', 6.2, 'length', 6.096],
      ['film', 210, 'area', 100],
      ['concrete', 90, 'volume', 0.764554857984],
      ['socket', 0.8, 'piece', 1],
      ['wire', 0.4, 'length', 1],
    ]);
  });

  it('names the line and the fault of every row it cannot read, and keeps the rest', () => {
    const { prices, problems } = read(
      'item,price,per\npvc,6.20,20 ft\npvc,six,20 ft\n,5,piece\nfilm,2,30 deg\nmesh,2,\nwire,-1,m\nstrap,3,0 m',
    );
    expect([...prices.keys()]).toEqual(['pvc']);
    expect(problems.map((one) => one.line)).toEqual([3, 4, 5, 6, 7, 8]);
    expect(problems[0]?.message).toContain("it is 'six'");
  });

  it('says which columns are lacking, and finds a quote that is never closed', () => {
    expect(read('thing,price\npvc,4').problems[0]?.message).toContain('lacks item and per');
    expect(read('item,price,per\n"pvc,4,20 ft').problems.length).toBeGreaterThan(0);
  });

  it('never throws and never gives a price that is no number', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        for (const points of read(`item,price,per\n${text}`).prices.values()) {
          for (const { amount, per: of } of points) {
            expect(Number.isFinite(amount) && amount >= 0 && of.value > 0).toBe(true);
          }
        }
      }),
    );
  });
});
