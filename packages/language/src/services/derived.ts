/** What follows for a part from all that was said: sizes, the largest moment, what uses it up most. */
import { hardestOf } from '@tautline/checks';
import { formatBoth, type System, usedText } from '@tautline/quantity';
import type { Origin, Roof } from '@tautline/shelter';
import type { LangiumDocument } from 'langium';
import { type EditorContext, rangeOf } from './context.ts';
import type { ShelterResult } from './results.ts';
import { systemFor } from './settings.ts';
import { locate } from './written.ts';

interface PlacedPart {
  readonly id: string;
  readonly start: number;
  readonly end: number;
}

/** Markdown for the part written at an offset, or '' when there is none with results. */
export function derivedAt(document: LangiumDocument, offset: number, context: EditorContext): string {
  const analysis = context.analyses.of(document.uri.toString());
  for (const result of analysis?.results ?? []) {
    const part = partAt(result, document, offset, context);
    if (!part) continue;
    const system = systemFor(analysis?.world, context.settings());
    const place = rangeOf(document, part.start, part.end).start;
    const lines = [
      sizes(result, part.id, system),
      moment(result, part.id, system),
      governing(result, part.id, [document.uri.toString(), place]),
    ].filter((line) => line !== '');
    if (lines.length === 0) continue;
    const old = analysis?.stale || result.kept ? ' *(before the last change)*' : '';
    return `Worked out${old}:\n\n${lines.map((line) => `- ${line}`).join('\n')}`;
  }
  return '';
}

/** The part whose words are nearest around an offset. */
function partAt(
  { evaluation, written }: ShelterResult,
  document: LangiumDocument,
  offset: number,
  { view }: EditorContext,
): PlacedPart | undefined {
  const documents = view.shared.workspace.LangiumDocuments;
  let nearest: PlacedPart | undefined;
  for (const { id, origin } of partsIn(evaluation?.shelter)) {
    const place = locate(origin, documents, written);
    if (place?.document !== document || offset < place.start || offset > place.end) continue;
    const { start, end } = place;
    if (!nearest || end - start < nearest.end - nearest.start) nearest = { id, start, end };
  }
  return nearest;
}

/** The model is a tree of parts; each knows its id and where it was said. */
function* partsIn(node: unknown): Generator<{ readonly id: string; readonly origin: Origin }> {
  if (typeof node !== 'object' || node === null) return;
  if (Array.isArray(node)) {
    // Long lists are points of a curve and stations, not parts.
    if (node.length < 100) for (const one of node) yield* partsIn(one);
    return;
  }
  // Stock items have a name and a place of their own, but are no parts of the shelter.
  if ('prices' in node) return;
  const { id, origin } = node as { readonly id?: unknown; readonly origin?: unknown };
  if (typeof id === 'string' && typeof origin === 'string') yield { id, origin: origin as Origin };
  for (const [name, child] of Object.entries(node)) if (name !== 'site') yield* partsIn(child);
}

function sizes({ evaluation }: ShelterResult, id: string, system: System): string {
  const roof: Roof | undefined = evaluation?.shelter.roof;
  if (roof?.id !== id) return '';
  const length = (si: number): string => formatBoth(si, 'length', system);
  const list = [`span ${length(roof.span)}`, `rise ${length(roof.rise)}`, `${roof.stations.length} of them`];
  if (roof.type === 'bows' || roof.type === 'rafters') list.unshift(`length ${length(roof.length)}`);
  return list.join(', ');
}

function moment({ moments }: ShelterResult, id: string, system: System): string {
  const largest = moments?.find(({ part }) => part === id);
  if (!largest) return '';
  const size = formatBoth(largest.moment, 'moment', system);
  const at = formatBoth(largest.at, 'length', system);
  return `largest moment ${size}, ${at} along, under ${largest.loadCase}`;
}

/** The finding of a part that uses it up most, with a link to its calculation. */
function governing({ evaluation }: ShelterResult, id: string, place: readonly unknown[]): string {
  const most = hardestOf((evaluation?.findings ?? []).filter((finding) => finding.part === id));
  if (!most) return '';
  const under = most.loadCase === undefined ? '' : `, under ${most.loadCase}`;
  const target = `command:tautline.showCalculation?${encodeURIComponent(JSON.stringify([...place, most.id]))}`;
  return `governed by ${most.id}: ${usedText(most.utilisation)} used${under} ([calculation](${target}))`;
}
