/** Where the end anchors of a ridge cable stand, and what wires are pulled up to: said in the spec, used everywhere. */
import { evaluate } from '@tautline/checks';
import { planView, settingOutView, sideView, toSvg } from '@tautline/drawing';
import { takeoff } from '@tautline/takeoff';
import { describe, expect, it } from 'vitest';
import { textOf } from './fixture.ts';
import { fromText } from './loaded.ts';

const house = textOf('cable-house.shelter');
const withRidge = (said: string) =>
  fromText(house.replace(/(ridge cable[^{]*\{)/, `$1\n    ${said}`), 'cable-house-anchors.shelter');
const cableLength = (shelter: Parameters<typeof takeoff>[0]): number =>
  Math.max(
    ...takeoff(shelter).lines.flatMap(({ parts, pieces = [] }) =>
      parts.some(({ id }) => id === 'ridge') ? pieces.map(({ length }) => length) : [],
    ),
  );

describe('the anchors of a ridge cable', () => {
  it('stand as far out as the cable is high where nothing is said, and that is listed as assumed', async () => {
    const { shelter } = await fromText(house, 'cable-house.shelter');
    const { ridge } = shelter;
    expect(ridge?.anchorOut).toBeCloseTo(ridge!.lines[0]!.y, 9);
    expect(shelter.assumed.some(({ part, fact }) => part === 'ridge' && fact === 'out')).toBe(true);
  });

  it('are said by distance or by angle, and not by both', async () => {
    const far = (await withRidge('out 20 ft')).shelter;
    const flat = (await withRidge('slope 30 deg')).shelter;
    expect(far.ridge?.anchorOut).toBeCloseTo(6.096, 9);
    expect(Math.atan2(flat.ridge!.lines[0]!.y, flat.ridge!.anchorOut!)).toBeCloseTo(Math.PI / 6, 9);
    expect(far.assumed.some(({ part, fact }) => part === 'ridge' && fact === 'out')).toBe(false);
    await expect(withRidge('out 20 ft; slope 30 deg')).rejects.toThrow(/by `out` and by `slope`/);
  });

  it('are lifted less, and take more cable, the further out they stand', async () => {
    const steep = (await withRidge('slope 60 deg')).shelter;
    const flat = (await withRidge('slope 30 deg')).shelter;
    const lift = (shelter: typeof steep): number =>
      evaluate(shelter, { gusts: false }).findings.find(({ id }) => id === 'cable-anchor')!.demand!.value;
    // The lift is the level pull times the tangent of the slope.
    expect(lift(steep) / lift(flat)).toBeCloseTo(3, 1);
    const { y } = flat.ridge!.lines[0]!;
    const longer = 2 * y * (1 / Math.sin(Math.PI / 6) - 1 / Math.sin(Math.PI / 3));
    expect(cableLength(flat) - cableLength(steep)).toBeCloseTo(longer, 6);
  });

  it('are drawn where they stand, with pegs in the setting out', async () => {
    const { shelter } = await withRidge('out 20 ft');
    const pegs = settingOutView(shelter, { system: 'metric' }).description;
    expect(pegs).toMatch(/A1 -6\.1?0/);
    for (const view of [sideView, planView])
      expect(toSvg(view(shelter, { system: 'metric' }), 'paper')).not.toMatch(/not said/);
  });
});

describe('wires of braces', () => {
  const braced = (said: string) =>
    fromText(
      textOf('timber-gable.shelter').replace(
        /braces along [^\n]*/,
        `braces along of wire-4 { at corners; ${said} }`,
      ),
      'timber-gable-wires.shelter',
    );
  const pull = (shelter: Parameters<typeof evaluate>[0]): number =>
    evaluate(shelter, { gusts: false }).findings.find(({ id }) => id === 'racking')!.demand!.value;

  it('are counted on for no pull where nothing is said, which is listed', async () => {
    const { shelter } = await braced('');
    expect(shelter.braces[0]?.tension).toBe(0);
    expect(shelter.assumed.some(({ part, fact }) => part === 'braces' && fact === 'tension')).toBe(true);
  });

  it('take what they are pulled up to and half the wind, until the other one of the pair hangs slack', async () => {
    const wind = pull((await braced('')).shelter);
    const set = 0.75 * wind;
    const { shelter } = await braced(`tension ${set.toFixed(3)} N`);
    expect(pull(shelter)).toBeCloseTo(set + wind / 2, 1);
    expect(pull((await braced(`tension ${(0.25 * wind).toFixed(3)} N`)).shelter)).toBeCloseTo(wind, 1);
  });
});
