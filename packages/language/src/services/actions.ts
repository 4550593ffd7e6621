/** Quick fixes: remedies of language problems, computed fixes of findings, and accepting a finding. */
import { type Finding, type Fix, messageText } from '@tautline/checks';
import { type Origin, originOf, type SpecEdit } from '@tautline/shelter';
import { type LangiumDocument, URI } from 'langium';
import type { CodeActionProvider } from 'langium/lsp';
import {
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  type Diagnostic,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import type { Analyst, CancelToken } from '../analyst/analyst.ts';
import { applySpecEdits, editsByFile } from '../edit/apply-spec-edits.ts';
import type { TextChange } from '../problems/problem.ts';
import type { FileAnalysis } from './analyses.ts';
import { type EditorContext, rangeOf } from './context.ts';
import { findingSpan, shownFindings } from './diagnostics.ts';
import { problemsOf } from './file-view.ts';
import { isCatalogue } from './scope.ts';
import { systemFor } from './settings.ts';

type ShownFinding = Finding & { readonly shelter: string };

export class ShelterActions implements CodeActionProvider {
  private readonly context: () => EditorContext;
  private readonly analyst: () => Analyst;

  constructor(context: () => EditorContext, analyst: () => Analyst) {
    this.context = context;
    this.analyst = analyst;
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
    const own = problemsOf(document, this.context().view)
      .filter(touches)
      .flatMap((problem) =>
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
    const analysis = this.context().analyses.of(document.uri.toString());
    if (!analysis || analysis.stale) return own;
    const documents = this.context().view.shared.workspace.LangiumDocuments;
    const found = shownFindings(analysis, this.context()).filter((finding) =>
      touches(findingSpan(finding, document, documents)),
    );
    const fixes: CodeAction[] = [];
    for (const finding of found) {
      if (token?.isCancellationRequested) return own;
      fixes.push(...(await this.fixesOf(finding, analysis, params.context.diagnostics, token)));
      const accept = this.accept(finding, analysis, params.context.diagnostics);
      if (accept) fixes.push(accept);
    }
    return [...own, ...fixes];
  }

  private async fixesOf(
    finding: ShownFinding,
    analysis: FileAnalysis,
    diagnostics: readonly Diagnostic[],
    token?: CancelToken,
  ): Promise<CodeAction[]> {
    const system = systemFor(analysis.world, this.context().settings());
    const request = { finding: { id: finding.id, part: finding.part }, system };
    const fixes = await this.analyst().fixes(analysis.world, finding.shelter, request, token);
    return fixes.flatMap((fix: Fix, index) => {
      const edit = this.workspaceEdit(fix.edits, analysis);
      if (!edit) return [];
      const after = ` (${Math.round(fix.utilisationAfter * 100)} % used after)`;
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

  private accept(
    finding: ShownFinding,
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
              reason: { type: 'text', text: 'say why', origin: nowhere },
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

export function textEdits(document: LangiumDocument, changes: readonly TextChange[]): TextEdit[] {
  return changes.map(({ start, end, newText }) => ({ range: rangeOf(document, start, end), newText }));
}

const matching = (diagnostics: readonly Diagnostic[], id: string): Diagnostic[] =>
  diagnostics.filter(({ code }) => code === id);
