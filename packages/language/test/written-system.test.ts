import { toSpecText } from '@tautline/quantity';
import { unitsOf } from '@tautline/shelter';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadWorkspace } from '../src/index.ts';
import { writtenSystem } from '../src/text/written-system.ts';

describe('the units a text speaks in', () => {
  it('are those of most of its quantities', () => {
    expect(writtenSystem('footprint 14 ft by 48 ft\n gust 40 m/s')).toBe('us');
    expect(writtenSystem('footprint 4.2 m by 14 m\n at 3/4 in')).toBe('metric');
    expect(writtenSystem('spaced 4 ft\n gust 40 m/s\n tension 150 N/m')).toBe('us');
    expect(writtenSystem('spaced 4 ft\n rise 1 m\n gust 40 m/s')).toBe('metric');
    expect(writtenSystem('leg 7 ft 6 in')).toBe('us');
    expect(writtenSystem('at 3 m')).toBe('metric');
  });

  it('are not told by numbers without a unit, units of both, comments, quotes or names', () => {
    expect(writtenSystem('count 4\nlean 85 deg\nrenewed 4 yr')).toBeUndefined();
    expect(writtenSystem('// 3 ft\n/** 4 ft */ "5 ft" \nspaced 1 m')).toBe('metric');
    expect(writtenSystem('of pvc40-25')).toBeUndefined();
    expect(writtenSystem('1 m and 1 ft')).toBeUndefined();
  });

  it('come back from texts written in either (property)', () => {
    const lengths = fc.array(fc.double({ min: 0.01, max: 90, noNaN: true }), { minLength: 1, maxLength: 9 });
    fc.assert(
      fc.property(lengths, fc.constantFrom('metric' as const, 'us' as const), (values, system) => {
        const text = values.map((value) => `spaced ${toSpecText(value, 'length', system).text}`).join('\n');
        expect(writtenSystem(text)).toBe(system);
      }),
    );
  });

  it('give way to what the project says, and are metric where nothing tells', async () => {
    const shown = async (text: string) => {
      const uri = 'file:///units.shelter';
      const world = (await loadWorkspace([{ uri, text }])).worldOf(uri);
      return world === undefined ? undefined : unitsOf(world);
    };
    const plot = 'site plot {\n  gust 85 mph\n  elevation 900 ft\n}\n';
    expect(await shown(plot)).toBe('us');
    expect(await shown(`project yard {\n  units metric\n}\n${plot}`)).toBe('metric');
    expect(await shown('')).toBe('metric');
  });
});
