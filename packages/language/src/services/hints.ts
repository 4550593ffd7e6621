import { assumedText } from '@tautline/shelter';
/** What the program worked out or assumed, shown in the text beside what was written. */

import type { KindName } from '@tautline/quantity';
import { usedText } from '@tautline/quantity';
import type { Bows, Origin } from '@tautline/shelter';
import type { LangiumDocument } from 'langium';
import type { InlayHintProvider } from 'langium/lsp';
import { type InlayHint, InlayHintKind, type InlayHintParams } from 'vscode-languageserver';
import type { ToldEvaluation } from '../analyst/result.ts';
import type { EditorContext } from './context.ts';
import { assumedIn } from './results.ts';
import { shown, systemFor } from './settings.ts';
import { locate, type Written } from './written.ts';

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
    const add = (origin: Origin, written: Written, text: string): void => {
      const place = locate(origin, documents, written);
      if (place?.document !== document || place.end < from || place.end > to) return;
      byPlace.set(place.end, [...(byPlace.get(place.end) ?? []), text]);
    };
    const settings = context.settings();
    const say = (si: number, kind: KindName): string => shown(si, kind, system, settings);
    for (const result of [...analysis.results, ...analysis.ranges]) {
      const { evaluation, written } = result;
      if (settings.hintsDerived && evaluation) {
        const { roof } = evaluation.shelter;
        if (roof.type === 'bows')
          add(
            roof.origin,
            written,
            lengthOf(roof, (si) => say(si, 'length')),
          );
        for (const [origin, share] of mostUsed(evaluation)) add(origin, written, `${usedText(share)} used`);
      }
      if (!settings.hintsAssumed) continue;
      for (const one of assumedIn(result)) add(one.origin, written, `${one.fact} ${assumedText(one, say)}`);
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
function mostUsed({ findings }: ToldEvaluation): ReadonlyMap<Origin, number> {
  const used = new Map<Origin, number>();
  for (const { origin, utilisation, nature } of findings) {
    // The shares of light, life and lengths of stock are not those of a limit.
    if (utilisation === undefined || utilisation < 0.5 || nature !== undefined) continue;
    used.set(origin, Math.max(used.get(origin) ?? 0, utilisation));
  }
  return used;
}

const lengthOf = (bows: Bows, text: (si: number) => string): string => `pipe ${text(bows.length)}`;
