/** The build book of every example, read by readers that have nothing to do with its writer. */
import { readdirSync } from 'node:fs';
import { type Book, type BookInput, buildBook } from '@tautline/book';
import { type Evaluation, evaluate } from '@tautline/checks';
import { dutiesOf, sourcesOf } from '@tautline/review';
import { newNotes, readPriceLists, readProject, readYard, type Shelter } from '@tautline/shelter';
import { materials, stockOnHand } from '@tautline/takeoff';
import ICAL from 'ical.js';
import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { example } from './loaded.ts';

const names = readdirSync(new URL('../../examples/', import.meta.url))
  .filter((file) => file.endsWith('.shelter') && !['site.shelter', 'yard.shelter'].includes(file))
  .map((file) => file.replace('.shelter', ''));

/** Evaluating is the slow part: once an example. */
const evaluated = new Map<string, Evaluation>();

function evaluationOf(shelter: Shelter): Evaluation {
  const made = evaluated.get(shelter.name) ?? evaluate(shelter, { on: '2026-11-25' });
  evaluated.set(shelter.name, made);
  return made;
}

async function inputOf(name: string, more: Partial<BookInput> = {}): Promise<BookInput> {
  const { shelter, loaded } = await example(name);
  const notes = newNotes();
  const project = readProject(loaded.world, notes);
  const evaluation = evaluationOf(shelter);
  const on = more.on !== undefined && /^\d/.test(more.on) ? more.on : '2026-11-25';
  return {
    evaluation,
    duties: dutiesOf(sourcesOf(loaded).shelter!, evaluation, { on, within: 3 }),
    materials: materials(shelter, {
      ...stockOnHand(readYard(loaded.world, notes)),
      ...(project.currency === undefined ? {} : { currency: project.currency }),
    }),
    title: loaded.title,
    ...(project.title === undefined ? {} : { project: project.title }),
    priceLists: readPriceLists(loaded.world),
    on: '2026-11-25',
    system: 'metric',
    paper: 'a4',
    ...more,
  };
}

interface Page {
  readonly text: string;
  readonly ids: readonly string[];
  readonly links: readonly string[];
  readonly tags: ReadonlySet<string>;
  readonly outside: readonly string[];
}

/** Reads the page as XML: throws when it is not well formed. */
function read(html: string): Page {
  const parser = new SaxesParser();
  const page = {
    text: '',
    ids: [] as string[],
    links: [] as string[],
    tags: new Set<string>(),
    outside: [] as string[],
  };
  parser.on('text', (piece) => {
    page.text += piece;
  });
  parser.on('opentag', ({ name, attributes }) => {
    page.tags.add(name);
    for (const [attribute, value] of Object.entries(attributes)) {
      if (attribute === 'id') page.ids.push(value);
      if (attribute === 'href' && value.startsWith('#')) page.links.push(value.slice(1));
      else if (['href', 'src'].includes(attribute)) page.outside.push(value);
    }
  });
  parser.on('error', (error) => {
    throw error;
  });
  parser.write(html.replace('<!DOCTYPE html>', '')).close();
  return page;
}

/** The usual book of an example, made once. */
const books = new Map<string, Book>();

async function bookOf(name: string): Promise<Book> {
  const made = books.get(name) ?? buildBook(await inputOf(name));
  books.set(name, made);
  return made;
}

const all = (book: Book): string => [book.html, book.ics, ...book.files.map((file) => file.text)].join('\n');

describe.each(names)('the book of %s', (name) => {
  it('is well formed, stands alone, and holds every chapter, finding and source it names', async () => {
    const input = await inputOf(name);
    const page = read((await bookOf(name)).html);
    expect(page.outside).toEqual([]);
    expect(page.tags.has('script')).toBe(false);
    expect(new Set(page.ids).size).toBe(page.ids.length);
    for (const link of page.links) expect(page.ids).toContain(link);
    for (const id of [
      'cautions',
      'assumed',
      'setting-out',
      'cutting',
      'steps',
      'inspection',
      'storm',
      'calendar',
      'calculations',
      'review',
    ])
      expect(page.ids).toContain(id);
    for (const finding of input.evaluation.findings) expect(page.text).toContain(finding.id);
    for (const one of input.evaluation.notChecked) expect(page.text).toContain(one.reason);
    for (const one of input.evaluation.assumed) expect(page.text).toContain(one.why);
    for (const line of input.materials.lines) expect(page.text).toContain(line.title);
    const bends =
      input.evaluation.shelter.roof.type === 'bows' && input.evaluation.shelter.roof.shape !== 'elastic';
    expect(page.ids.includes('bends')).toBe(bends);
  });

  it('says plainly when a check fails, and never that anything is safe', async () => {
    const input = await inputOf(name);
    const made = await bookOf(name);
    const failing = input.evaluation.findings.some((finding) => finding.severity === 'error');
    expect(made.html.includes('Do not build from this book')).toBe(failing);
    expect(read(made.html).text).not.toMatch(/\b(safe|safely|approved)\b|NaN|undefined|Infinity|\[object/i);
  });

  it('has a calendar with every cover in it', async () => {
    const { shelter } = (await inputOf(name)).evaluation;
    const calendar = new ICAL.Component(ICAL.parse((await bookOf(name)).ics));
    const ids = calendar.getAllSubcomponents('vevent').map((one) => new ICAL.Event(one).uid);
    for (const cover of shelter.covers)
      expect(ids.includes(`renewal-${cover.id}.${shelter.name}@tautline`)).toBe(
        cover.installed !== undefined,
      );
  });
});

describe('a book', () => {
  it.each(['bed-arch', 'conduit-arch', 'timber-gable', 'cable-house-flawed'])(
    'of %s is the same to the byte each time, in both systems and papers',
    async (name) => {
      for (const more of [{}, { system: 'us', paper: 'letter' }] as const) {
        expect(all(buildBook(await inputOf(name, more)))).toBe(all(buildBook(await inputOf(name, more))));
      }
    },
  );

  it('moves its dates with the day it is made, and refuses what is no day', async () => {
    const later = buildBook(await inputOf('bed-arch', { on: '2027-06-30' }));
    expect(later.ics).toContain('20270930');
    const input = await inputOf('bed-arch', { on: 'soon' });
    expect(() => buildBook(input)).toThrow(RangeError);
  });

  it('puts the film-off gust and what goes first on the storm card, and says so when it was not worked out', async () => {
    const input = await inputOf('bed-arch');
    const first = {
      part: 'bows',
      origin: input.evaluation.shelter.origin,
      what: 'the bow bends past its strength',
      check: 'over-span',
      gust: 25,
      loadCase: 'wind',
      sacrificial: false,
      estimated: false,
    };
    const told = (gusts: Evaluation['gusts']): string => {
      const { gusts: _, ...evaluation } = input.evaluation;
      return read(buildBook({ ...input, evaluation: gusts ? { ...evaluation, gusts } : evaluation }).html)
        .text;
    };
    const failures = [{ ...first, gust: 15, sacrificial: true }, first];
    const { origin } = first;
    const unranked = [
      { part: 'gutter', origin, noun: 'gutter', why: ['no check asks for wind on a gutter'], unknown: true },
      { part: 'eave-rail', origin, noun: 'eave rail', why: ['comes to no limit'], unknown: false },
    ];
    const known = told({ failures, unranked, upTo: 78, filmOff: { gust: 20, margin: 0.8, first } });
    expect(known).toContain('gutter (no check asks for wind on a gutter)');
    expect(known).not.toContain('eave rail (');
    expect(known).toContain('20 m/s');
    expect(known).toContain('meant to go first');
    expect(known).not.toContain('was not worked out');
    expect(told({ failures: [], unranked: [], upTo: 78 })).toContain(
      'Up to 78 m/s no part reached its limit',
    );
    const over = { ...first, gust: 0 };
    const still = told({ failures: [over], unranked: [], upTo: 78, withoutWind: over });
    expect(still).toContain('It does not stand without wind');
    expect(still).toContain('Do not cover this shelter');
    expect(told(undefined)).toContain('was not worked out');
  });

  it.each([
    ['seedling-cap', /Caps off and stacked before a gust of/, /lift each cap off/],
    ['lift-frame', /no film to take off: the sheets are screwed on and stay/, /every screw tight/],
  ])('tells the storm of %s by what it has, and never of film', async (name, box, deed) => {
    const book = buildBook(await inputOf(name));
    const sections = book.html.split('<section').filter((one) => /id="(storm|inspection|steps)"/.test(one));
    expect(sections).toHaveLength(3);
    const [storm] = sections.filter((one) => one.includes('id="storm"'));
    expect(storm).toMatch(box);
    expect(storm).toMatch(deed);
    for (const one of sections)
      expect(one.replace('There is no film to take off', '')).not.toMatch(/\bfilm\b/i);
    expect(read(book.html).text).not.toContain('Film off');
    const { gusts: _, ...evaluation } = (await inputOf(name)).evaluation;
    const unknown = buildBook({ ...(await inputOf(name)), evaluation }).html;
    expect(unknown).toContain('was not worked out for this shelter');
    expect(unknown).not.toContain('film must come off');
  });

  it('lays a bent bow out at full size, and says on how many sheets', async () => {
    const template = buildBook(await inputOf('conduit-arch')).files.find(
      (file) => file.name === 'bow-full-size.html',
    );
    const page = read(template?.text ?? '');
    const sheets = (template?.text.match(/<svg/g) ?? []).length;
    expect(page.text).toContain(`${sheets} sheets`);
    expect(sheets).toBeGreaterThan(10);
  });
});
