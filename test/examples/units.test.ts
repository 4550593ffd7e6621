/** The same house written in feet and in metres gets the same findings, to the byte. */
import { evaluate } from '@tautline/checks';
import { loadWorkspace } from '@tautline/language';
import { resolveShelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import { day, sound, textOf } from './fixture.ts';

/** `13 ft`, `3 ft 6 in`, `20 in` in decimal metres, exactly: an inch is 25.4 mm. */
function inMetres(text: string): string {
  const inches = (feet: string | undefined, inch: string | undefined): number =>
    Number(feet ?? 0) * 12 + Number(inch ?? 0);
  const written = (total: number): string => `${Number((total * 0.0254).toFixed(6))} m`;
  return text
    .split('\n')
    .map((line) =>
      line.startsWith('//')
        ? line
        : line
            .replaceAll(/(?<![\w.-])(\d+(?:\.\d+)?) ft(?: (\d+(?:\.\d+)?) in)?(?![\w.])/g, (_, feet, inch) =>
              written(inches(feet, inch)),
            )
            .replaceAll(/(?<![\w.-])(\d+(?:\.\d+)?) in(?![\w.])/g, (_, inch) =>
              written(inches(undefined, inch)),
            ),
    )
    .join('\n');
}

/** Everything that is said of each shelter, without the places it is said at, as bytes. */
async function verdicts(change: (text: string) => string): Promise<Map<string, string>> {
  const files = [...inFeet, 'site.shelter', 'yard.shelter'].map((name) => ({
    uri: `file:///${name}`,
    text: change(textOf(name)),
  }));
  const { shelters, problems } = await loadWorkspace(files);
  expect(problems).toEqual([]);
  const told = new Map<string, string>();
  for (const one of shelters.filter(({ kind }) => kind !== 'range')) {
    const { shelter } = resolveShelter(one.name, one.world);
    const { findings, notChecked } = evaluate(shelter!, { on: day });
    told.set(
      one.name,
      JSON.stringify(
        { findings, notChecked },
        (key, value) => (key === 'origin' || key === 'related' ? undefined : value),
        1,
      ),
    );
  }
  return told;
}

const inFeet = sound.filter((name) => / ft/.test(textOf(name)));

describe('the same house in feet and in metres', () => {
  it('is written in other words', () => {
    expect(inMetres('footprint 13 ft by 40 ft\n  spaced 2 ft 6 in')).toBe(
      'footprint 3.9624 m by 12.192 m\n  spaced 0.762 m',
    );
    for (const name of inFeet) expect(inMetres(textOf(name)), name).not.toBe(textOf(name));
  });

  it('gets the same findings, to the byte', { timeout: 120_000 }, async () => {
    const feet = await verdicts((text) => text);
    const metres = await verdicts(inMetres);
    expect(feet.size).toBe(inFeet.length);
    for (const [name, told] of feet) expect(metres.get(name), name).toBe(told);
  });
});
