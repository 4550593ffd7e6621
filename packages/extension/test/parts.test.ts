import type { PreviewPart, PreviewShelter } from '@tautline/language/protocol';
import { describe, expect, it } from 'vitest';
import { partAt, partOf } from '../src/preview/parts.ts';

const uri = 'file:///plots/plug-house.shelter';
const other = 'file:///plots/site.shelter';

function part(id: string, from: [number, number], to: [number, number], file = uri): PreviewPart {
  const [line, character] = from;
  const range = { start: { line, character }, end: { line: to[0], character: to[1] } };
  return { id, title: id, place: { uri: file, range } };
}

function shelterOf(...parts: PreviewPart[]): PreviewShelter {
  return {
    name: 'plug-house',
    title: '',
    range: { start: { line: 0, character: 0 }, end: { line: 40, character: 1 } },
    drawings: [],
    parts,
    findings: [],
    materials: [],
    facts: [],
    assumed: [],
    notChecked: [],
  };
}

const shelter = shelterOf(
  part('bows', [8, 2], [13, 3]),
  part('bows/foot', [12, 4], [12, 60]),
  part('purlins', [15, 2], [15, 20]),
  part('braces', [15, 22], [15, 40]),
  part('site', [5, 2], [9, 3], other),
);

describe('the part that a mark in the drawing belongs to', () => {
  it('is the part with that id', () => {
    expect(partOf(shelter, 'bows/foot')?.id).toBe('bows/foot');
  });
  it('is the nearest part above it in the id', () => {
    expect(partOf(shelter, 'bows/foot/3')?.id).toBe('bows/foot');
    expect(partOf(shelter, 'bows/joints/0')?.id).toBe('bows');
  });
  it('is none for the ground and for an empty id', () => {
    expect(partOf(shelter, 'ground')).toBeUndefined();
    expect(partOf(shelter, '')).toBeUndefined();
    expect(partOf(shelter, '/')).toBeUndefined();
  });
});

describe('the part that a line describes', () => {
  it('is the innermost block around it', () => {
    expect(partAt(shelter, uri, 10, 4)?.id).toBe('bows');
    expect(partAt(shelter, uri, 12, 4)?.id).toBe('bows/foot');
  });
  it('is told apart by column when two stand on one line', () => {
    expect(partAt(shelter, uri, 15, 4)?.id).toBe('purlins');
    expect(partAt(shelter, uri, 15, 30)?.id).toBe('braces');
  });
  it('is none outside every part, and none of another file', () => {
    expect(partAt(shelter, uri, 0, 0)).toBeUndefined();
    expect(partAt(shelter, uri, 6, 4)).toBeUndefined();
    expect(partAt(shelter, other, 6, 4)?.id).toBe('site');
  });
});
