import { describe, expect, test } from 'vitest';
import { newNotes, readPriceLists, readProject, readYard } from '../src/index.ts';
import { worldOf } from './reading.ts';

describe('project, prices and yard', () => {
  const world = worldOf(
    'project { title "Gully houses"; currency XTS; units us }',
    'project { currency USD; units metric }',
    'prices { from "yard, March"; asked 2026-03-10; price of thin 6 per 20 ft }',
    'prices { price of thin 5 per 10 ft }',
    'yard { have 3 of thin at 20 ft; have 7 of cross }',
    'yard { have 2 of thin at 10 ft }',
  );

  test('the nearest project block goes before those of imported files', () => {
    expect(readProject(world, newNotes())).toEqual({ title: 'Gully houses', currency: 'XTS', units: 'us' });
  });

  test('price lists say where they come from and when they were asked, if they do', () => {
    const lists = readPriceLists(world).map(({ from, asked }) => [from, asked]);
    expect(lists).toEqual([
      ['yard, March', '2026-03-10'],
      [undefined, undefined],
    ]);
  });

  test('stock on hand is gathered from every yard, by item and length', () => {
    const notes = newNotes();
    const have = readYard(world, notes).map(({ item, count, length }) => [item, count, length]);
    expect(have).toEqual([
      ['thin', 3, 6.096],
      ['cross', 7, undefined],
      ['thin', 2, 3.048],
    ]);
    expect(notes.problems).toEqual([]);
  });

  test.each([
    [
      'project { currency dollars }',
      (w: ReturnType<typeof worldOf>, n: ReturnType<typeof newNotes>) => readProject(w, n),
    ],
    [
      'yard { have 2 of thin at 0 ft }',
      (w: ReturnType<typeof worldOf>, n: ReturnType<typeof newNotes>) => readYard(w, n),
    ],
  ])('%s is a problem', (text, read) => {
    const notes = newNotes();
    read(worldOf(text), notes);
    expect(notes.problems).toHaveLength(1);
  });
});
