/** Quick fixes: remedies of language problems, computed fixes of findings, and accepting a finding. */

import { messageText, wholeHouseChecks } from '@tautline/checks';
import { usedText } from '@tautline/quantity';
import { type Origin, originOf, reasonToCome, type SpecEdit } from '@tautline/shelter';
import { type LangiumDocument, URI } from 'langium';
import type { CodeActionProvider } from 'langium/lsp';
import {
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  CodeActionTriggerKind,
  type Diagnostic,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import type { Analyst, CancelToken } from '../analyst/analyst.ts';
import type { LongWork } from '../analyst/long-work.ts';
import type { FixRequest, PricedFix } from '../analyst/result.ts';
import { type HouseFixesInput, houseFixesJob } from '../analyst/whole-house.ts';
import { applySpecEdits, editsByFile } from '../edit/apply-spec-edits.ts';
import type { LanguageProblem, TextChange } from '../problems/problem.ts';
import { reasonCommand } from '../protocol.ts';
import { costChange } from './amount.ts';
import { type EditorContext, rangeOf } from './context.ts';
import { knownProblems, type PlacedFinding, shownFindings } from './diagnostics.ts';
import { mostSwaps, stockAt, swapTitle } from './other-stock.ts';
import type { FileAnalysis } from './results.ts';
import { isCatalogue } from './scope.ts';
import { systemFor } from './settings.ts';

/** Puts right, all at once, what has only one remedy; asked for by hand or on saving. */
export const fixAllKind = 'source.fixAll.tautline';
/** Another stock item in the place of one. */
export const otherStockKind = `${CodeActionKind.RefactorRewrite}.stock`;
/** Problems whose remedies bring in something to choose: each is the grower's to take. */
const chosen: ReadonlySet<LanguageProblem['id']> = new Set(['unknown-name', 'wrong-kind', 'missing-fact']);

export class ShelterActions implements CodeActionProvider {
  private readonly context: () => EditorContext;
  private readonly analyst: () => Analyst;
  private readonly work: LongWork;

  constructor(context: () => EditorContext, analyst: () => Analyst, work: LongWork) {
    this.context = context;
    this.analyst = analyst;
    this.work = work;
  }

  async getCodeActions(
    document: LangiumDocument,
    params: CodeActionParams,
    token?: CancelToken,
  ): Promise<CodeAction[]> {
    if (isCatalogue(document.uri)) return [];
    const start = document.textDocument.offsetAt(params.range.start);
    const end = document.textDocument.offsetAt(params.range.end);
    const touches = (span: { start: number; end: number }): boolean => span.start <= end && start <= span.end;
    const problems = knownProblems(document, this.context());
    const only = params.context.only;
    const wants = (kind: string): boolean =>
      !only || only.some((one) => kind === one || kind.startsWith(`${one}.`));
    const all = wants(fixAllKind) ? fixAll(document, problems) : [];
    const quick = wants(CodeActionKind.QuickFix);
    const { analyses } = this.context();
    // Somebody who asks by hand gets what belongs to the text as it is; a light bulb can wait.
    const asked = params.context.triggerKind === CodeActionTriggerKind.Invoked;
    const analysis = asked ? await analyses.current(document) : analyses.of(document.uri.toString());
    const swaps =
      analysis && !analysis.stale && (quick || wants(otherStockKind))
        ? await this.swapsAt(document, start, analysis, params.context.diagnostics, token)
        : [];
    if (!quick) return [...all, ...swaps.filter(({ kind }) => kind === otherStockKind)];
    const own = problems.filter(touches).flatMap((problem) =>
      (problem.remedies ?? []).map(
        (remedy): CodeAction => ({
          title: remedy.title,
          kind: CodeActionKind.QuickFix,
          diagnostics: matching(params.context.diagnostics, problem.id),
          isPreferred: problem.remedies?.length === 1,
          edit: { changes: { [document.uri.toString()]: textEdits(document, remedy.changes) } },
        }),
      ),
    );
    if (!analysis || analysis.stale) return [...all, ...own];
    const found = shownFindings(analysis, document, this.context()).filter(
      ({ span, result }) => result && !result.kept && touches(span),
    );
    const fixes: CodeAction[] = [];
    for (const finding of found) {
      if (token?.isCancellationRequested) return [...all, ...own];
      // Fixes of the whole house take many seconds: only for who asks by hand, and never for the light bulb.
      if (asked || !wholeHouseChecks.has(finding.id))
        fixes.push(...(await this.fixesOf(finding, analysis, params.context.diagnostics, token)));
      const accept = this.accept(finding, analysis, params.context.diagnostics);
      if (accept) fixes.push(accept);
    }
    return [...all, ...own, ...fixes, ...swaps];
  }

  /** Other stock for the item that is named at a place, in the shelter around it, with what comes of it. */
  private async swapsAt(
    document: LangiumDocument,
    offset: number,
    analysis: FileAnalysis,
    diagnostics: readonly Diagnostic[],
    token?: CancelToken,
  ): Promise<CodeAction[]> {
    const named = stockAt(document, offset);
    const result = analysis.results.find(({ shelter }) => shelter === named?.shelter);
    if (!named || !result?.evaluation || result.kept) return [];
    const { from, shelter } = named;
    const on = this.context().today();
    const actions: CodeAction[] = [];
    for (let nth = 0; nth < mostSwaps; nth += 1) {
      const request = { from, nth, ...(on === undefined ? {} : { on }) };
      const swapped = await this.analyst().swap(analysis.world, shelter, request, token);
      if (token?.isCancellationRequested) return [];
      const edit = swapped && this.workspaceEdit(swapped.edits, analysis);
      if (!swapped || !edit) continue;
      const { gone, came, eased, worsened } = swapped;
      const mended = [...gone, ...eased];
      const mends = mended.length > 0 && came.length + worsened.length === 0;
      actions.push({
        title: swapTitle(from, swapped),
        kind: mends ? CodeActionKind.QuickFix : otherStockKind,
        ...(mends ? { diagnostics: mended.flatMap((id) => matching(diagnostics, id)) } : {}),
        edit,
      });
    }
    return actions;
  }

  private async fixesOf(
    finding: PlacedFinding,
    analysis: FileAnalysis,
    diagnostics: readonly Diagnostic[],
    token?: CancelToken,
  ): Promise<CodeAction[]> {
    const system = systemFor(analysis.world, this.context().settings());
    const request = { finding: { id: finding.id, part: finding.part }, system };
    const { world } = analysis;
    const fixes = wholeHouseChecks.has(finding.id)
      ? await this.fixesInSpace(finding.shelter, request, world, token)
      : await this.analyst().fixes(world, finding.shelter, request, token);
    return fixes.flatMap((fix: PricedFix, index) => {
      const edit = this.workspaceEdit(fix.edits, analysis);
      if (!edit) return [];
      const price = fix.cost ? `, ${costChange(fix.cost)}` : '';
      const after = ` (${usedText(fix.utilisationAfter)} used after${price})`;
      return [
        {
          title: messageText(fix.title, system) + after,
          kind: CodeActionKind.QuickFix,
          diagnostics: matching(diagnostics, finding.id),
          isPreferred: index === 0,
          edit,
        },
      ];
    });
  }

  /** Fixes of a finding of the whole house, by the worker that does what takes seconds. */
  private async fixesInSpace(
    shelter: string,
    request: FixRequest,
    world: FileAnalysis['world'],
    token?: CancelToken,
  ): Promise<readonly PricedFix[]> {
    const on = this.context().today();
    const input: HouseFixesInput = { shelter, ...request, ...(on === undefined ? {} : { on }) };
    const asking = token === undefined ? {} : { token };
    return (await this.work.run<readonly PricedFix[]>(houseFixesJob, [world], input, asking)) ?? [];
  }

  private accept(
    finding: PlacedFinding,
    analysis: FileAnalysis,
    diagnostics: readonly Diagnostic[],
  ): CodeAction | undefined {
    const definition = analysis.world.definitions.get(finding.shelter);
    if (!definition) return undefined;
    const nowhere: Origin = originOf('');
    const edit = this.workspaceEdit(
      [
        {
          type: 'add',
          block: definition.origin,
          node: {
            word: 'accept',
            slots: {
              check: { type: 'word', word: finding.id, origin: nowhere },
              reason: { type: 'text', text: reasonToCome, origin: nowhere },
            },
            children: [],
            origin: nowhere,
          },
        },
      ],
      analysis,
    );
    return (
      edit && {
        title: `Accept \`${finding.id}\` here, with a reason`,
        kind: CodeActionKind.QuickFix,
        diagnostics: matching(diagnostics, finding.id),
        edit,
        command: { title: 'Write the reason', command: reasonCommand, arguments: [reasonToCome] },
      }
    );
  }

  /** Edits of the spec as edits of the files; undefined when one of them cannot be changed. */
  private workspaceEdit(edits: readonly SpecEdit[], analysis: FileAnalysis): WorkspaceEdit | undefined {
    const documents = this.context().view.shared.workspace.LangiumDocuments;
    const system = systemFor(analysis.world, this.context().settings());
    const changes: Record<string, TextEdit[]> = {};
    for (const [uri, own] of editsByFile(edits)) {
      const document = uri === '' ? undefined : documents.getDocument(URI.parse(uri));
      if (!document || isCatalogue(document.uri)) return undefined;
      const result = applySpecEdits(document.textDocument.getText(), own, system);
      if (!result.ok) return undefined;
      changes[uri] = textEdits(document, result.changes);
    }
    return { changes };
  }
}

/** One action for all problems with a single remedy, where there are several; those that overlap wait. */
function fixAll(document: LangiumDocument, problems: readonly LanguageProblem[]): CodeAction[] {
  const changes: TextChange[] = [];
  let count = 0;
  for (const { id, remedies } of problems) {
    const [remedy, another] = remedies ?? [];
    if (!remedy || another || chosen.has(id)) continue;
    const clash = remedy.changes.some((one) =>
      changes.some((other) => one.start <= other.end && other.start <= one.end),
    );
    if (clash) continue;
    changes.push(...remedy.changes);
    count += 1;
  }
  if (count < 2) return [];
  const edit = { changes: { [document.uri.toString()]: textEdits(document, changes) } };
  return [{ title: `Put right ${count} slips of writing`, kind: fixAllKind, edit }];
}

export function textEdits(document: LangiumDocument, changes: readonly TextChange[]): TextEdit[] {
  return changes.map(({ start, end, newText }) => ({ range: rangeOf(document, start, end), newText }));
}

const matching = (diagnostics: readonly Diagnostic[], id: string): Diagnostic[] =>
  diagnostics.filter(({ code }) => code === id);
