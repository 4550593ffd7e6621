/** What the program worked out or assumed, shown in the text beside what was written. */
import type { Evaluation, Finding } from '@tautline/checks';
import type { Bows } from '@tautline/shelter';
import type { LangiumDocument } from 'langium';
import type { CodeLensProvider, InlayHintProvider } from 'langium/lsp';
import { type CodeLens, type InlayHint, InlayHintKind, type InlayHintParams } from 'vscode-languageserver';
import type { AnalysisResult } from '../analyst/analyst.ts';
import { type EditorContext, rangeOf } from './context.ts';
import { locate, nameSpan } from './diagnostics.ts';
import { shown, systemFor } from './settings.ts';

export class ShelterHints implements InlayHintProvider {
  private readonly context: () => EditorContext;

  constructor(context: () => EditorContext) {
    this.context = context;
  }

  getInlayHints(document: LangiumDocument, { range }: InlayHintParams): InlayHint[] {
    const context = this.context();
    const analysis = context.analyses.of(document.uri.toString());
    if (!analysis) return [];
    const from = document.textDocument.offsetAt(range.start);
    const to = document.textDocument.offsetAt(range.end);
    const system = systemFor(analysis.world, context.settings());
    const documents = context.view.shared.workspace.LangiumDocuments;
    const byPlace = new Map<number, string[]>();
    const add = (origin: Parameters<typeof locate>[0], text: string): void => {
      const place = locate(origin, documents);
      if (place?.document !== document || place.end < from || place.end > to) return;
      byPlace.set(place.end, [...(byPlace.get(place.end) ?? []), text]);
    };
    for (const { evaluation } of analysis.results) {
      if (!evaluation) continue;
      const { hintsAssumed, hintsDerived } = context.settings();
      const { roof } = evaluation.shelter;
      if (hintsDerived && roof.type === 'bows')
        add(
          roof.origin,
          lengthOf(roof, (si) => shown(si, 'length', system, context.settings())),
        );
      if (hintsDerived) {
        for (const [origin, share] of mostUsed(evaluation)) add(origin, `${Math.round(share * 100)} % used`);
      }
      if (!hintsAssumed) continue;
      for (const { fact, value, kind, origin } of evaluation.assumed) {
        const text = typeof value === 'number' ? shown(value, kind, system, context.settings()) : value;
        add(origin, `${fact} ${text}`);
      }
    }
    return [...byPlace].map(([offset, texts]) => ({
      position: document.textDocument.positionAt(offset),
      label: ` ${[...new Set(texts)].slice(0, 4).join(', ')}${texts.length > 4 ? ', ...' : ''}`,
      kind: InlayHintKind.Parameter,
      paddingLeft: true,
      tooltip: `Worked out or assumed: ${[...new Set(texts)].join(', ')}`,
    }));
  }
}

/** By place, the largest share of a limit that is used up, from half upwards. */
function mostUsed({ findings }: Evaluation): ReadonlyMap<Finding['origin'], number> {
  const used = new Map<Finding['origin'], number>();
  for (const { origin, utilisation } of findings) {
    if (utilisation === undefined || utilisation < 0.5) continue;
    used.set(origin, Math.max(used.get(origin) ?? 0, utilisation));
  }
  return used;
}

const lengthOf = (bows: Bows, text: (si: number) => string): string => `pipe ${text(bows.length)}`;

export class ShelterLenses implements CodeLensProvider {
  private readonly context: () => EditorContext;

  constructor(context: () => EditorContext) {
    this.context = context;
  }

  provideCodeLens(document: LangiumDocument): CodeLens[] {
    const context = this.context();
    if (!context.settings().lenses) return [];
    const analysis = context.analyses.of(document.uri.toString());
    return (analysis?.results ?? []).flatMap((result) => {
      const title = summaryOf(result);
      if (title === undefined) return [];
      const { start, end } = nameSpan(document, result.shelter);
      const range = rangeOf(document, start, end);
      const mark = analysis?.stale ? ' (before the last change)' : '';
      const command = { title: `${title}${mark}`, command: 'tautline.openPreview' };
      return [{ range, command }];
    });
  }
}

/** One line on a shelter: how much fails, and what governs. */
export function summaryOf({ evaluation, failure }: AnalysisResult): string | undefined {
  if (failure !== undefined) return 'could not be worked out';
  if (!evaluation) return undefined;
  const open = evaluation.findings.filter(({ accepted }) => accepted === undefined);
  const fails = open.filter(({ verdict }) => verdict === 'fails').length;
  const near = open.filter(({ verdict }) => verdict === 'near its limit').length;
  const governing = open
    .filter(({ utilisation }) => utilisation !== undefined)
    .sort((a, b) => (b.utilisation ?? 0) - (a.utilisation ?? 0))[0];
  const count =
    fails > 0
      ? `${fails} fail${fails === 1 ? 's' : ''}`
      : near > 0
        ? `${near} near the limit`
        : 'nothing fails in what is checked';
  const used = governing
    ? `, governed by ${governing.id} (${Math.round((governing.utilisation ?? 0) * 100)} % used)`
    : '';
  return `${count}${used}`;
}
