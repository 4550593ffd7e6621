/** From a verdict to what the drawing sheet shows: texts in the reader's units, drawings, places. Pure. */
import { type Evaluation, type Finding, measuredText, messageText, sources } from '@tautline/checks';
import {
  type Drawing,
  describeParts,
  planView,
  sectionView,
  settingOutView,
  sideView,
  toSvg,
} from '@tautline/drawing';
import type {
  PlainPlace,
  PlainRange,
  PreviewDrawing,
  PreviewFact,
  PreviewFinding,
  PreviewMaterial,
  PreviewPart,
  PreviewShelter,
  PreviewView,
} from '@tautline/language/protocol';
import { format, type System } from '@tautline/quantity';
import type { Origin, Shelter } from '@tautline/shelter';
import { buyText, type Materials, materials } from '@tautline/takeoff';

export interface SheetInput {
  readonly name: string;
  readonly title: string;
  readonly range: PlainRange;
  readonly uri: string;
  readonly evaluation: Evaluation;
  readonly system: System;
  /** ISO code of the project's currency, or ''. */
  readonly currency: string;
  readonly placeOf: (origin: Origin) => PlainPlace | undefined;
  readonly stale?: string;
}

const views = [
  ['section', sectionView],
  ['plan', planView],
  ['side', sideView],
  ['setting-out', settingOutView],
] as const satisfies readonly (readonly [
  PreviewView,
  (shelter: Shelter, options: { readonly system: System }) => Drawing,
])[];

export function sheetData(input: SheetInput): PreviewShelter {
  const { evaluation, system } = input;
  const { shelter } = evaluation;
  const home: PlainPlace = { uri: input.uri, range: input.range };
  const placeOf = (origin: Origin): PlainPlace => input.placeOf(origin) ?? home;
  const counted = materials(shelter);
  return {
    name: input.name,
    title: input.title,
    range: input.range,
    drawings: views.map(([view, draw]) => drawn(view, draw(shelter, { system }))),
    parts: partsOf(shelter, system, input.placeOf),
    findings: evaluation.findings.map((finding) => shownFinding(finding, system, placeOf)),
    materials: materialRows(counted, input),
    facts: factsOf(evaluation, counted, input),
    assumed: evaluation.assumed.map((one) => ({
      what: `${one.part}: ${one.fact}`,
      value:
        typeof one.value === 'number'
          ? measuredText({ value: one.value, kind: one.kind }, system)
          : one.value,
      place: placeOf(one.origin),
    })),
    notChecked: evaluation.notChecked.map(({ id, reason }) => ({ what: id, why: reason })),
    ...(input.stale === undefined ? {} : { stale: input.stale }),
  };
}

function drawn(view: PreviewView, drawing: Drawing): PreviewDrawing {
  return { view, description: `${drawing.title}. ${drawing.description}`, svg: toSvg(drawing, 'editor') };
}

function partsOf(
  shelter: Shelter,
  system: System,
  placeOf: (origin: Origin) => PlainPlace | undefined,
): PreviewPart[] {
  const described = describeParts(shelter, system);
  const origins = new Map<string, Origin>();
  collectOrigins(shelter, new Set(described.map(({ part }) => part)), origins);
  return described.flatMap(({ part, words }) => {
    const origin = origins.get(part);
    const place = origin === undefined ? undefined : placeOf(origin);
    return place === undefined ? [] : [{ id: part, title: words, place }];
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

function shownFinding(
  finding: Finding,
  system: System,
  placeOf: (origin: Origin) => PlainPlace,
): PreviewFinding {
  const { utilisation, loadCase, accepted } = finding;
  const source = sources[finding.source]?.title ?? finding.source;
  return {
    id: finding.id,
    verdict: finding.verdict,
    severity: finding.severity,
    message: messageText(finding.message, system),
    part: finding.part,
    place: placeOf(finding.origin),
    source,
    ...(utilisation === undefined ? {} : { utilisation }),
    ...(loadCase === undefined ? {} : { loadCase }),
    ...(accepted === undefined ? {} : { accepted: accepted.because }),
  };
}

function materialRows(counted: Materials, { system, currency }: SheetInput): PreviewMaterial[] {
  const rows = counted.lines.map((line) => ({
    title: line.title,
    quantity: format(line.total, line.kind, system),
    note: buyText(line, system),
    cost: line.cost === undefined ? '' : money(line.cost, currency, system),
  }));
  const gaps = counted.gaps.map((gap) => ({
    title: gap.what,
    quantity: 'not counted',
    note: '',
    cost: '',
  }));
  return [...rows, ...gaps];
}

function factsOf(
  evaluation: Evaluation,
  counted: Materials,
  { system, currency }: SheetInput,
): PreviewFact[] {
  const { shelter } = evaluation;
  const hardest = evaluation.findings
    .filter((finding) => finding.accepted === undefined && finding.utilisation !== undefined)
    .reduce<Finding | undefined>(
      (most, finding) =>
        most === undefined || (finding.utilisation ?? 0) > (most.utilisation ?? 0) ? finding : most,
      undefined,
    );
  const { cost } = counted;
  const priced = counted.lines.some((line) => line.cost !== undefined);
  return [
    {
      label: 'Ground under cover',
      value: `${format(shelter.width, 'length', system)} by ${format(shelter.length, 'length', system)}`,
    },
    ...(hardest?.utilisation === undefined
      ? []
      : [{ label: 'Most used up', value: `${hardest.id}, ${Math.round(hardest.utilisation * 100)} %` }]),
    ...(priced
      ? [
          {
            label: cost.complete ? 'Cost' : 'Cost of what has a price',
            value: money(cost.total, currency, system),
          },
        ]
      : []),
  ];
}

function money(amount: number, currency: string, system: System): string {
  const text = format(amount, 'money', system);
  return currency === '' ? text : `${text} ${currency}`;
}
