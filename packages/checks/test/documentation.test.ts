import { readFileSync } from 'node:fs';
import { isKind } from '@tautline/quantity';
import { describe, expect, it } from 'vitest';
import { checkReference, checks, evaluate, exampleSpecs, explanationPage, sources } from '../src/index.ts';
import { brace, fastening, ridgedHouse, sprungHouse, withCover } from './houses.ts';

describe('what the checks say of themselves', () => {
  it('has one id for each, in small letters', () => {
    const ids = checks.map((check) => check.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
  });

  it.each(checks.map((check) => [check.id, check] as const))(
    '%s names known sources and kinds',
    (_, check) => {
      expect(check.asks).toMatch(/\?$/);
      for (const text of [check.matters, check.leavesOut, check.mayBeAccepted]) expect(text).toMatch(/\.$/);
      for (const id of check.sources) expect(sources[id], `${check.id}: ${id}`).toBeDefined();
      for (const { kind } of check.symbols) expect(isKind(kind), `${check.id}: ${kind}`).toBe(true);
    },
  );

  it.each(checks.map((check) => [check.id, check] as const))('%s has a page of its own', (id, check) => {
    const page = explanationPage(check);
    for (const part of [check.asks, check.matters, check.formula, check.leavesOut, check.mayBeAccepted])
      expect(page).toContain(part);
    const specs = exampleSpecs(id);
    for (const text of Object.values(specs ?? {})) expect(page).toContain(text.trimEnd());
    expect(page).not.toMatch(/undefined|NaN/);
  });

  it('stands in CHECKS.md as `npm run generate` writes it', () => {
    const written = readFileSync(new URL('../CHECKS.md', import.meta.url), 'utf8');
    expect(checkReference()).toBe(written);
  });
});

describe('calculations of findings', () => {
  const houses = [
    sprungHouse(),
    {
      ...ridgedHouse(),
      braces: [brace()],
      gutters: [{ id: 'gutter', origin: brace().origin, where: 'sides', across: 0.1 }],
    } as const,
    withCover(ridgedHouse(), {
      fastening: fastening(2000),
      straps: { item: fastening(1500, 'piece'), spacing: 1.2 },
    }),
  ];

  it('name known sources and kinds in every step, and hold no number that is none', () => {
    for (const shelter of houses) {
      for (const finding of evaluate(shelter, { on: '2027-01-01' }).findings) {
        expect(sources[finding.source], `${finding.id}: ${finding.source}`).toBeDefined();
        for (const step of finding.steps) {
          expect(sources[step.source], `${finding.id}: ${step.source}`).toBeDefined();
          for (const { value, kind } of [step, ...step.inputs]) {
            expect(isKind(kind), `${finding.id}: ${kind}`).toBe(true);
            expect(Number.isFinite(value), `${finding.id}: ${step.symbol}`).toBe(true);
          }
        }
      }
    }
  });

  it('are the same bytes for the same house', () => {
    expect(JSON.stringify(evaluate(houses[2]!))).toBe(JSON.stringify(evaluate(houses[2]!)));
  });
});
