/** What drawing and takeoff put on a shelter's sheet: drawings, parts with their words, materials, facts. Pure. */
import { hardestOf } from '@tautline/checks';
import { type Drawing, describeParts, saysEnds, toSvg, views } from '@tautline/drawing';
import type { PreviewDrawing, PreviewFact, PreviewMaterial, PreviewView } from '@tautline/language/protocol';
import { beforeEdits, countedFor, type Sheets, type ToldEvaluation } from '@tautline/language/server';
import { format, type System, usedText } from '@tautline/quantity';
import type { Origin, Shelter, SpecWorld } from '@tautline/shelter';
import { buyText, type Materials } from '@tautline/takeoff';
import { variedMark } from './varied.ts';

type Draw = NonNullable<Sheets['draw']>;

/** In the order of the tabs; a front end only where something is said of the ends. */
const tabs = ['section', 'plan', 'side', 'end', 'setting-out'] as const satisfies readonly PreviewView[];

export const draw: Draw = (evaluation, world, system, { wide, view: wanted, gustsOld } = {}) => {
  const { shelter } = evaluation;
  const counted = countedFor(shelter, world);
  const currency = currencyOf(world);
  const varied = variedMark(shelter.name, world);
  return {
    drawings: tabs
      .filter((view) => view !== 'end' || saysEnds(shelter))
      .map((view) => {
        if (wanted !== undefined && view !== wanted) return { view };
        const drawing = views[view](shelter, { system, ...(wide === undefined ? {} : { wide }) });
        return drawing === undefined ? { view } : drawn(view, drawing);
      }),
    parts: partsOf(shelter, system),
    materials: materialRows(counted, currency, system),
    facts: factsOf(evaluation, counted, currency, system, gustsOld === true ? beforeEdits : ''),
    ...(varied === undefined ? {} : { varied }),
  };
};

/** ISO code the project names, or ''. */
export function currencyOf(world: SpecWorld): string {
  for (const definition of world.definitions.values()) {
    if (definition.word === 'project') {
      const value = definition.children.find(({ word }) => word === 'currency')?.slots['value'];
      return value?.type === 'word' ? value.word : '';
    }
  }
  return '';
}

export function drawn(view: PreviewView, drawing: Drawing): PreviewDrawing {
  return { view, description: `${drawing.title}. ${drawing.description}`, svg: toSvg(drawing, 'editor') };
}

function partsOf(shelter: Shelter, system: System): ReturnType<Draw>['parts'] {
  const described = describeParts(shelter, system);
  const origins = new Map<string, Origin>();
  collectOrigins(shelter, new Set(described.map(({ part }) => part)), origins);
  return described.flatMap(({ part, words }) => {
    const origin = origins.get(part);
    return origin === undefined ? [] : [{ id: part, title: words, origin }];
  });
}

/** The model is a tree of parts; each knows its id and where it was said. */
function collectOrigins(node: unknown, wanted: ReadonlySet<string>, into: Map<string, Origin>): void {
  if (Array.isArray(node)) {
    for (const one of node) {
      collectOrigins(one, wanted, into);
    }
  } else if (typeof node === 'object' && node !== null) {
    const { id, origin } = node as { readonly id?: unknown; readonly origin?: unknown };
    if (typeof id === 'string' && typeof origin === 'string' && wanted.has(id) && !into.has(id)) {
      into.set(id, origin as Origin);
    }
    for (const child of Object.values(node)) {
      collectOrigins(child, wanted, into);
    }
  }
}

export function materialRows(counted: Materials, currency: string, system: System): PreviewMaterial[] {
  const rows = counted.lines.map((line) => ({
    title: line.title,
    quantity: format(line.total, line.kind, system),
    note: buyText(line, system),
    cost: onHand(line) ? 'on hand' : line.cost === undefined ? '' : money(line.cost, currency, system),
  }));
  const gaps = counted.gaps.map((gap) => ({
    title: gap.what,
    quantity: 'not counted',
    note: '',
    cost: '',
  }));
  const [total] = costFact(counted, currency, system);
  const missing = counted.lines.filter((line) => line.cost === undefined).length;
  const note = missing === 0 ? '' : `${missing} of ${counted.lines.length} without a price`;
  const sum: PreviewMaterial[] =
    total === undefined ? [] : [{ title: total.label, quantity: '', note, cost: total.value, sum: true }];
  return [...rows, ...gaps, ...sum];
}

/** Nothing of it has to be bought. */
const onHand = ({ buy, fromHand, cuts }: Materials['lines'][number]): boolean =>
  (buy === 0 && fromHand !== undefined) ||
  (cuts !== undefined && cuts.bars.length > 0 && cuts.bars.every((bar) => bar.onHand));

function factsOf(
  evaluation: ToldEvaluation,
  counted: Materials,
  currency: string,
  system: System,
  mark: string,
): PreviewFact[] {
  const { shelter } = evaluation;
  const hardest = hardestOf(evaluation.findings.filter((finding) => finding.accepted === undefined));
  const { gusts } = evaluation;
  const first = gusts?.filmOff?.first ?? gusts?.withoutWind ?? gusts?.failures[0];
  return [
    {
      label: 'Ground under cover',
      value: `${format(shelter.width, 'length', system)} by ${format(shelter.length, 'length', system)}`,
    },
    ...(first === undefined
      ? []
      : [
          {
            label: 'First to fail',
            value: `${first.what}, ${first.gust > 0 ? `gust ${format(first.gust, 'speed', system)}` : 'without wind'}${mark}`,
          },
        ]),
    ...(hardest === undefined
      ? []
      : [{ label: 'Most used up', value: `${hardest.id}, ${usedText(hardest.utilisation)}` }]),
    ...costFact(counted, currency, system),
  ];
}

/** Nothing where nothing has a price. */
export function costFact({ cost, lines }: Materials, currency: string, system: System): PreviewFact[] {
  if (lines.every((line) => line.cost === undefined)) return [];
  const label = cost.complete ? 'Cost' : 'Cost of what has a price';
  return [{ label, value: money(cost.total, currency, system) }];
}

function money(amount: number, currency: string, system: System): string {
  const text = format(amount, 'money', system);
  return currency === '' ? text : `${text} ${currency}`;
}
