/** Everything the drawing sheet of one shelter or range shows, with places in the text as it is now. */
import { type Finding, messageText, sources, verdictText } from '@tautline/checks';
import type { System } from '@tautline/quantity';
import type { Origin, SpecWorld } from '@tautline/shelter';
import { assumedText } from '@tautline/shelter';
import type { LangiumDocument } from 'langium';
import type { ToldEvaluation, ToldFinding, ToldRange } from '../analyst/result.ts';
import type {
  CalculationAnswer,
  PlainPlace,
  PreviewDrawing,
  PreviewFact,
  PreviewFinding,
  PreviewMaterial,
  PreviewQuestion,
  PreviewShelter,
} from '../protocol.ts';
import { docOf } from '../spec/to-spec.ts';
import { type EditorContext, rangeOf } from './context.ts';
import { findingSpan } from './diagnostics.ts';
import { definitionNamed, nameSpan } from './named.ts';
import {
  assumedIn,
  findingsOf,
  guestFindings,
  type RangeResult,
  type Seen,
  type ShelterResult,
} from './results.ts';
import { shown, systemFor } from './settings.ts';
import { locate } from './written.ts';

/** What is drawn and counted of a shelter or a range. */
export interface Drawn {
  readonly drawings: readonly PreviewDrawing[];
  readonly parts: readonly { readonly id: string; readonly title: string; readonly origin: Origin }[];
  readonly materials: readonly PreviewMaterial[];
  readonly facts: readonly PreviewFact[];
  readonly varied?: string;
}

/** What is drawn, and how wide. */
export type Shown = {
  readonly [key in 'wide' | 'view']?: PreviewQuestion[key] | undefined;
} & {
  /** Set where the order of failure is that of an earlier text. */
  readonly gustsOld?: boolean | undefined;
};

/** What drawing, takeoff and book put on a sheet; handed in by whoever bundles the server. */
export interface Sheets {
  readonly draw?: (evaluation: ToldEvaluation, world: SpecWorld, system: System, shown?: Shown) => Drawn;
  readonly drawRange?: (judged: ToldRange, world: SpecWorld, system: System, shown?: Shown) => Drawn;
  /** The calculation of some findings of the shelter or range of that name. */
  readonly calculation?: (name: string, findings: readonly Finding[], system: System) => CalculationAnswer;
}

/** Undefined when it has no verdict, or the text no longer has it. */
export function sheetOf(
  result: ShelterResult | RangeResult,
  document: LangiumDocument,
  { world, stale }: Seen,
  context: EditorContext,
  sheets: Sheets,
  show: Shown,
): PreviewShelter | undefined {
  const { shelter: name, evaluation, judged } = result;
  const definition = definitionNamed(document, name);
  const cst = definition?.$cstNode;
  const verdict = evaluation ?? judged?.verdict;
  if (!definition || !cst || !verdict) return undefined;
  const documents = context.view.shared.workspace.LangiumDocuments;
  const settings = context.settings();
  const system = systemFor(world, settings);
  const { start, end } = nameSpan(document, name);
  const home: PlainPlace = { uri: document.uri.toString(), range: rangeOf(document, start, end) };
  const place = (origin: Origin): PlainPlace => {
    const found = locate(origin, documents, result.written);
    if (!found) return home;
    return { uri: found.document.uri.toString(), range: rangeOf(found.document, found.start, found.end) };
  };
  const { whole, gustsOld, awaited }: Partial<ShelterResult> = result;
  const drawn = evaluation
    ? sheets.draw?.(evaluation, world, system, { ...show, gustsOld })
    : judged && sheets.drawRange?.(judged, world, system, show);
  return {
    name,
    ...(judged ? { kind: 'range' } : {}),
    title: docOf(definition).split('\n')[0] ?? '',
    range: rangeOf(document, cst.offset, cst.end),
    drawings: drawn?.drawings ?? [],
    parts: (drawn?.parts ?? []).map(({ id, title, origin }) => ({ id, title, place: place(origin) })),
    materials: drawn?.materials ?? [],
    facts: [
      ...(drawn?.facts ?? []),
      ...(whole
        ? [{ label: 'Whole house', value: whole.old ? 'as before the last edit' : 'worked out' }]
        : []),
    ],
    findings: [...findingsOf(result), ...('guests' in result ? guestFindings(result) : [])].map((finding) => {
      const at = findingSpan(finding, result, document, context);
      const tier = whole?.findings.some((one) => one === finding)
        ? { tier: 'full' as const, ...(whole.old ? { old: true as const } : {}) }
        : awaited?.includes(finding)
          ? { old: true as const }
          : {};
      return {
        ...told(finding, system),
        place: { ...home, range: rangeOf(document, at.start, at.end) },
        ...tier,
      };
    }),
    assumed: assumedIn(result).map((one) => ({
      what: `${one.part}: ${one.fact}`,
      value: assumedText(one, (si, kind) => shown(si, kind, system, settings)),
      place: place(one.origin),
    })),
    notChecked: (whole?.old === false ? whole : verdict).notChecked.map(({ id, reason }) => ({
      what: id,
      why: reason,
    })),
    ...(drawn?.varied === undefined ? {} : { varied: drawn.varied }),
    ...(gustsOld ? { gustsOld } : {}),
    ...(whole ? { wholeHouse: whole.old ? ('old' as const) : ('now' as const) } : {}),
    ...(stale ? { stale: 'The text has changed since these results were worked out.' } : {}),
  };
}

/** A finding in words, without its place. */
function told(finding: ToldFinding, system: System): Omit<PreviewFinding, 'place'> {
  const { id, verdict, severity, message, part, source, utilisation, loadCase, accepted } = finding;
  return {
    id,
    verdict,
    severity,
    word: accepted === undefined ? verdictText(finding) : 'accepted',
    message: messageText(message, system),
    part,
    source: sources[source]?.title ?? source,
    ...(utilisation === undefined ? {} : { utilisation }),
    ...(loadCase === undefined ? {} : { loadCase }),
    ...(accepted === undefined ? {} : { accepted: accepted.because }),
  };
}
