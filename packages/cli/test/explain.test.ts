import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { tell } from './tell.ts';

const file = fileURLToPath(new URL('../../../examples/timber-gable.shelter', import.meta.url));

const said = (...words: string[]) => tell('explain', ...words);

describe('explain', () => {
  it('shows a finding step by step: formula, numbers with units, result, source and its standing', async () => {
    const { code, out } = await said(file, '--finding', 'heat', '--on', '2026-11-25', '--units', 'metric');
    expect(code).toBe(0);
    expect(out).toMatch(/^heat on shelter: passes/);
    expect(out).toMatch(/1\. sun on level ground at noon of midsummer/);
    expect(out).toMatch(/I = I_0 τ cos\(max\(0, \|φ\| - δ\)\)/);
    expect(out).toMatch(/v = 1 m\/s {2}light air {2}\(assumed\)/);
    expect(out).toMatch(/\(from memory\)/);
    expect(out).toMatch(/site topography = 1: flat ground/);
  });

  it('shows the order of failure in the units asked for', async () => {
    const { out } = await said(file, '--gusts', '--units', 'us');
    expect(out).toMatch(/mph {2}.*\[pull-out\]/);
    expect(out).toMatch(/Have the film off before a gust of/);
  });

  it.each([
    ['seedling-cap', /Have the caps lifted off and stacked before a gust of/],
    ['lift-frame', /no film to take off and the sheets stay on: keep clear of it before a gust of/],
  ])('tells what to do about a gust at %s', async (name, what) => {
    const { out } = await said(file.replace('timber-gable', name), '--gusts', '--units', 'metric');
    expect(out).toMatch(what);
  });

  it('works the whole house out for what only that tells', async () => {
    const ends = fileURLToPath(new URL('../../checks/specs/end-frame.bad.shelter', import.meta.url));
    const finding = await said(ends, '--finding', 'end-frame', '--part', 'end-frames/foot');
    expect(finding.code).toBe(0);
    expect(finding.out).toMatch(/^end-frame on end-frames\/foot: fails/);
    const [quick, full] = [await said(ends, '--gusts'), await said(ends, '--gusts', '--full')];
    expect(quick.out).toMatch(/feet of the end frames .*only the whole house in space/);
    expect(full.out).toMatch(/the foot of an upright in an end is pushed over {2}\[end-frame\]/);
  }, 30_000);

  it('says why a check has no finding', async () => {
    const { code, err } = await said(file, '--finding', 'no-such-check');
    expect(code).toBe(2);
    expect(err).toMatch(/There is no finding 'no-such-check' here/);
  });
});
