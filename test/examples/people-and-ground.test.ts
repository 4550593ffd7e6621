/** What a spec says of its people and its ground is what is judged; the options are for trying the other. */
import { type EvaluateOptions, type Evaluation, evaluate } from '@tautline/checks';
import { describe, expect, it } from 'vitest';
import { textOf } from './fixture.ts';
import { fromText } from './loaded.ts';

const arch = textOf('stub-arch.shelter');
const site = textOf('site.shelter');
const judged = async (text: string, options: EvaluateOptions = {}): Promise<Evaluation> =>
  evaluate((await fromText(text, 'people.shelter')).shelter, { gusts: false, ...options });
const climbed = arch.replace(/(footprint [^\n]*)/, '$1\n  people climb');
const keptOff = arch.replace(/(footprint [^\n]*)/, '$1\n  people keep-off');
/** The example with its site in the same file, so that the site can be changed. */
const onGround = (word: string): string =>
  arch.replace('import "site.shelter"', site.replace(/(site gully-terrace[^{]*\{)/, `$1\n  ground ${word}`));
const reasons = ({ notChecked }: Evaluation): string => notChecked.map(({ reason }) => reason).join('\n');
const bending = ({ findings }: Evaluation): number =>
  findings.find(({ id }) => id === 'over-span')!.utilisation!;

describe('people on the frame', () => {
  it('are among the loads where the spec says that they climb, as with the option', async () => {
    const said = await judged(climbed);
    expect(said.analysis?.cases.some(({ nature }) => nature === 'person')).toBe(true);
    const shown = ({ findings }: Evaluation) => findings.map(({ id, utilisation }) => [id, utilisation]);
    expect(shown(said)).toEqual(shown(await judged(arch, { person: true })));
    expect(shown(said)).not.toEqual(shown(await judged(arch)));
    expect(reasons(said)).not.toContain('a person on or against the frame');
    expect(
      (await judged(climbed, { person: false })).analysis?.cases.some(({ nature }) => nature === 'person'),
    ).toBe(false);
  });

  it('are told as not checked elsewhere, with how to say it and what they would weigh', async () => {
    expect(reasons(await judged(arch))).toMatch(/say `people climb`.*one person weighs \d+ times as much/);
    expect(reasons(await judged(keptOff))).toMatch(/the spec keeps people off it/);
  });
});

describe('ground', () => {
  it('gives where the site says so, as with the option', async () => {
    const giving = await judged(onGround('giving'));
    const firm = await judged(onGround('firm'));
    expect(bending(giving)).toBe(bending(await judged(arch, { soil: true })));
    expect(bending(firm)).toBe(bending(await judged(arch)));
    expect(bending(giving)).not.toBe(bending(firm));
    expect(reasons(giving)).not.toContain('feet stand firm');
    expect(reasons(firm)).toContain('say `ground giving`');
  });
});
