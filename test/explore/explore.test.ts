/** Exploring what a shelter says to vary, and writing a variant into its text. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { tautline } from '../review/repository.ts';

const folder = mkdtempSync(join(tmpdir(), 'tautline-explore-'));
const file = join(folder, 'row.shelter');
const text = `site terrace { gust 20 m/s once per 50 yr; exposure sheltered; elevation 480 m; rain 110 mm/h; soil loam; basis asce7-asd }
prices {
  price of pvc40-25 6.20 per 20 ft
  price of pvc40-32 9.10 per 20 ft
}
shelter low-row on terrace {
  footprint 13 ft by 40 ft
  bows spaced 3 ft of pvc40-25 { shape elastic; length 20 ft; foot stub of rebar-16 { length 6 ft; deep 3 ft 6 in; held clamped } } // kept
  ridge rail of lumber-2x4 { frames tied; posts of lumber-4x4 spaced 8 ft { foot hole { deep 2 ft; across 10 in } } }
  purlins 2 of pvc40-20 { at 5 ft; at 15 ft; joint lashing }
  braces along of lumber-1x4 { at corners; height 5 ft }
  baseboards of lumber-1x6 { joint pipe-strap }
  cover roof with film-uv-150 { fastened by board-1x3; strapped by strap-25 every 2 ft 6 in; tension 200 N/m }
  require headroom >= 5 ft at 3 ft from side
  vary bows spaced from 2 ft to 3 ft by 6 in
  vary bows of pvc40-25 or pvc40-32
}
`;

interface Variant {
  readonly number: number;
  readonly values: readonly (number | string)[];
  readonly front: boolean;
  readonly errors: number;
  readonly headroom: number;
  readonly cost: { readonly total: number };
  readonly firstFailure: { readonly gust: number };
}
interface Explored {
  readonly aims: readonly string[];
  readonly variants: readonly Variant[];
  readonly heldFixed: readonly string[];
  readonly headroomAt: number;
}

const flags = ['--on', '2026-11-25'];
let explored: Explored;

beforeAll(async () => {
  writeFileSync(file, text);
  explored = JSON.parse((await tautline('explore', file, '--format', 'json', ...flags)).out) as Explored;
}, 180_000);
beforeEach(() => writeFileSync(file, text));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the grid', () => {
  it('holds every combination, with exact steps', () => {
    expect(explored.variants.map(({ values }) => values)).toEqual([
      [0.6096, 'pvc40-25'],
      [0.6096, 'pvc40-32'],
      [0.762, 'pvc40-25'],
      [0.762, 'pvc40-32'],
      [0.9144, 'pvc40-25'],
      [0.9144, 'pvc40-32'],
    ]);
  });

  it('gives the figures that the same values give when they are written by hand', async () => {
    writeFileSync(file, text.replace('spaced 3 ft of pvc40-25', 'spaced 2 ft 6 in of pvc40-32'));
    const checked = JSON.parse((await tautline('check', file, '--format', 'json', ...flags)).out);
    const materials = JSON.parse((await tautline('materials', file, '--format', 'json')).out);
    const variant = explored.variants[3]!;
    const errors = checked.shelters[0].findings.filter(
      ({ severity }: { severity: string }) => severity === 'error',
    );
    expect(variant.errors).toBe(errors.length);
    expect(variant.cost.total).toBeCloseTo(materials.cost.total, 3);
  });

  it('is told as a page with the chart, and as Markdown, with the same words', async () => {
    const page = join(folder, 'variants.html');
    const told = await tautline('explore', file, '--format', 'html', '--out', page, ...flags);
    expect(told.out).toBe(`Wrote the variants of low-row into ${page}.\n`);
    const html = readFileSync(page, 'utf8');
    expect(html).toMatch(/^<!doctype html>[\s\S]*<svg[\s\S]*no other beats it[\s\S]*<\/html>\n$/);
    expect(html).not.toMatch(/<script|https?:(?!\/\/www\.w3\.org\/)|NaN|undefined/);
    expect(html.match(/<tr>/g)).toHaveLength(1 + explored.variants.length);
    const { out } = await tautline('explore', file, '--format', 'markdown', ...flags);
    expect(out).toMatch(/^# Variants of low-row\n/);
    for (const line of explored.heldFixed) expect(html).toContain(line.replaceAll('"', '&quot;'));
  });

  it('takes headroom where the spec requires some, and says what was held fixed', () => {
    expect(explored.headroomAt).toBeCloseTo(3 * 0.3048, 4);
    expect(explored.heldFixed.join('\n')).toContain('every fact of low-row other than bows spaced, bows of');
  });

  it('breaks at a lower gust and costs less the further apart the bows stand', () => {
    const thin = explored.variants.filter(({ values }) => values[1] === 'pvc40-25');
    const gusts = thin.map(({ firstFailure }) => firstFailure.gust);
    const costs = thin.map(({ cost }) => cost.total);
    expect(gusts).toEqual([...gusts].sort((a, b) => b - a));
    expect(costs).toEqual([...costs].sort((a, b) => b - a));
    expect(gusts[0]).toBeGreaterThan(gusts.at(-1)!);
  });
});

describe('the front', () => {
  it('holds just those in which nothing fails and that no other such variant beats', () => {
    expect(explored.aims).toEqual(['least cost', 'highest first-failure gust', 'most headroom']);
    const holding = explored.variants.filter(({ errors }) => errors === 0);
    expect(holding.length).toBeGreaterThan(0);
    const beaten = (one: Variant): boolean =>
      holding.some(
        (other) =>
          other.cost.total <= one.cost.total &&
          other.firstFailure.gust >= one.firstFailure.gust &&
          other.headroom >= one.headroom &&
          (other.cost.total < one.cost.total ||
            other.firstFailure.gust > one.firstFailure.gust ||
            other.headroom > one.headroom),
      );
    expect(explored.variants.filter(({ front }) => front).map(({ number }) => number)).toEqual(
      holding.filter((one) => !beaten(one)).map(({ number }) => number),
    );
  });
});

describe('writing a variant', () => {
  it('changes only the words it varies', async () => {
    const { code, out } = await tautline('explore', file, '--write', '4', ...flags);
    expect(code).toBe(0);
    expect(out).toContain('Wrote variant 4');
    expect(readFileSync(file, 'utf8')).toBe(
      text.replace('spaced 3 ft of pvc40-25 {', 'spaced 2.5 ft of pvc40-32 {'),
    );
  });

  it.each(['0', '7', '1.5', 'x'])('refuses variant %s', async (number) => {
    const { code, err } = await tautline('explore', file, '--write', number);
    expect([code, err]).toEqual([2, expect.stringContaining('--write takes')]);
  });
});

describe('what cannot be tried', () => {
  it.each([
    ['vary rafters spaced from 3 ft to 4 ft', 'the shelter has no rafters'],
    ['vary bows spaced from 4 ft to 3 ft by 6 in', 'from the smaller to the larger'],
    ['vary bows rise from 1 mm to 10 m by 1 mm', 'more than the 200'],
    ['vary bows', 'say what to try'],
    ['vary bows of pvc40-25', 'said twice'],
    ['', 'says nothing to vary'],
  ])('%s: %s', async (line, told) => {
    const bare = text.replace(/ {2}vary bows spaced.*\n {2}vary.*\n/, `  ${line}\n`);
    writeFileSync(file, told === 'said twice' ? text.replace('  vary', `  ${line}\n  vary`) : bare);
    const { code, err } = await tautline('explore', file);
    expect([code, err]).toEqual([2, expect.stringContaining(told)]);
  });

  it('takes the length away where the rise is varied, and the other way round', async () => {
    writeFileSync(
      file,
      text.replace(/ {2}vary bows spaced.*\n {2}vary.*\n/, '  vary bows rise from 6 ft to 8 ft by 2 ft\n'),
    );
    const { out } = await tautline('explore', file, '--format', 'json', ...flags);
    const [short, long] = (JSON.parse(out) as Explored).variants;
    expect(long!.headroom).toBeGreaterThan(short!.headroom);
  });
});
