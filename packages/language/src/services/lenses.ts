/** What stands above a shelter: how much fails and what governs, what fails first, what it costs. */
import { hardestOf, type Severity } from '@tautline/checks';
import { usedText } from '@tautline/quantity';
import type { LangiumDocument } from 'langium';
import type { CodeLensProvider } from 'langium/lsp';
import type { CodeLens, CodeLensParams, Command } from 'vscode-languageserver';
import type { Analyst, CancelToken } from '../analyst/analyst.ts';
import type { Billed } from '../analyst/bill.ts';
import type { AnalysisResult } from '../analyst/result.ts';
import { billText } from './amount.ts';
import { type EditorContext, rangeOf } from './context.ts';
import { definitionNamed, nameSpan, shelterNames } from './named.ts';
import {
  allOf,
  beforeEdits,
  type FileAnalysis,
  findingsOf,
  type RangeResult,
  type ShelterResult,
} from './results.ts';
import { shown, systemFor } from './settings.ts';
import { moved } from './written.ts';

/** Always as many lenses at a shelter, from the first: lines must not jump when results come in. */
const waiting = ['working it out ...', 'first to fail: ...', 'cost: ...'];
const rangeWaiting = ['working it out ...', 'cost: ...'];

export class ShelterLenses implements CodeLensProvider {
  private readonly context: () => EditorContext;
  private readonly analyst: () => Analyst;

  constructor(context: () => EditorContext, analyst: () => Analyst) {
    this.context = context;
    this.analyst = analyst;
  }

  async provideCodeLens(
    document: LangiumDocument,
    _params?: CodeLensParams,
    token?: CancelToken,
  ): Promise<CodeLens[]> {
    const context = this.context();
    if (!context.settings().lenses) return [];
    const uri = document.uri.toString();
    const bills = await this.bills(context.analyses.of(uri), token);
    // As it is by now: there may be more of it than when the bills were asked for.
    const analysis = context.analyses.of(uri);
    const said = new Set<string>();
    const lenses: CodeLens[] = [];
    const add = (name: string, commands: readonly Command[]): void => {
      const range = placeOf(name, document, analysis);
      if (!range || said.has(name)) return;
      said.add(name);
      lenses.push(...commands.map((command) => ({ range, command })));
    };
    const system = systemFor(analysis?.world, context.settings());
    for (const result of analysis?.results ?? []) {
      const position = placeOf(result.shelter, document, analysis)?.start;
      const { line, character } = position ?? { line: 0, character: 0 };
      const page = [document.uri.toString(), { line, character }];
      const mark = result.kept ? ' (as last worked out)' : '';
      const governing = governingOf(result)?.id;
      add(result.shelter, [
        governing === undefined
          ? drawing(`${summaryOf(result) ?? waiting[0]}${mark}`)
          : {
              title: `${summaryOf(result)}${mark}`,
              command: 'tautline.showCalculation',
              arguments: [...page, governing],
            },
        drawing(
          `${firstToFail(result, (si) => shown(si, 'speed', system, context.settings())) ?? waiting[1]}${mark}`,
        ),
        drawing(`${costOf(result, bills.get(result.shelter))}${mark}`),
      ]);
    }
    for (const range of analysis?.ranges ?? [])
      add(range.shelter, [
        drawing(rangeText(range, analysis)),
        drawing(costOf(range, bills.get(range.shelter))),
      ]);
    for (const name of shelterNames(document)) add(name, waiting.map(drawing));
    for (const name of shelterNames(document, ['range'])) add(name, rangeWaiting.map(drawing));
    return lenses;
  }

  /** What each costs, by its name. Asked for here alone: findings do not wait for sums of money. */
  private async bills(
    analysis: FileAnalysis | undefined,
    token: CancelToken | undefined,
  ): Promise<ReadonlyMap<string, Billed | undefined>> {
    const billed = (analysis ? allOf(analysis).all : []).map(
      async ({ shelter, world }) => [shelter, await this.analyst().bill(world, shelter, token)] as const,
    );
    return new Map(await Promise.all(billed));
  }
}

const drawing = (title: string): Command => ({ title, command: 'tautline.openPreview' });

/** Where a shelter's name stands: in the text as it is or, while that lacks it, where it last stood. */
function placeOf(name: string, document: LangiumDocument, analysis: FileAnalysis | undefined) {
  if (definitionNamed(document, name)) {
    const { start, end } = nameSpan(document, name);
    return rangeOf(document, start, end);
  }
  const at = analysis?.places.get(name);
  if (!analysis || !at) return undefined;
  const { start, end } = moved(at, analysis.written, document.textDocument.getText());
  return rangeOf(document, start, end);
}

/** Of the text as it is: what the whole house told of an earlier one is left out. */
const findingsNow = ({ evaluation, whole }: AnalysisResult & Pick<Partial<ShelterResult>, 'whole'>) =>
  findingsOf({ ...(evaluation ? { evaluation } : {}), ...(whole?.old === false ? { whole } : {}) });

function governingOf(result: AnalysisResult) {
  return hardestOf(findingsNow(result).filter(({ accepted }) => accepted === undefined));
}

/** One line on a shelter: how much fails, and what governs. */
export function summaryOf(result: AnalysisResult): string | undefined {
  const { evaluation, failure } = result;
  if (failure !== undefined) return 'could not be worked out';
  if (!evaluation) return undefined;
  const open = findingsNow(result).filter(({ accepted }) => accepted === undefined);
  const fails = open.filter(({ severity }) => severity === 'error').length;
  const watched = open.filter(({ severity }) => severity === 'warning').length;
  const count =
    fails > 0
      ? `${fails} fail${fails === 1 ? 's' : ''}`
      : watched > 0
        ? `${watched} to watch`
        : 'nothing fails in what is checked';
  const governing = governingOf(result);
  const used = governing ? `, governed by ${governing.id} (${usedText(governing.utilisation)} used)` : '';
  const toCome = evaluation.awaits === undefined ? '' : `, ${evaluation.awaits.join(' and ')} to come`;
  return `${count}${used}${toCome}`;
}

/** The part that gives way first as the gust rises, marked where that is of an earlier text; undefined while it is not known. */
export function firstToFail(
  { evaluation, gustsOld }: AnalysisResult & Pick<Partial<ShelterResult>, 'gustsOld'>,
  speed: (si: number) => string,
): string | undefined {
  if (!evaluation) return undefined;
  if (!evaluation.gusts) return undefined;
  const { failures, upTo } = evaluation.gusts;
  const [first] = failures;
  const old = gustsOld ? beforeEdits : '';
  if (!first) return `nothing fails up to a gust of ${speed(upTo)}${old}`;
  const at = first.gust > 0 ? `gust ${speed(first.gust)}` : 'without wind';
  return `first to fail: ${first.what}, ${at}${old}`;
}

function costOf({ evaluation, judged }: AnalysisResult, billed: Billed | undefined): string {
  if (billed?.failure !== undefined) return 'cost: could not be worked out';
  if (billed?.bill) return `cost: ${billText(billed.bill)}`;
  return billed && (evaluation || judged) ? 'cost: no prices' : 'cost: ...';
}

/** How many shelters stand in a range, what fails between them, and the one of them that is used up most. */
function rangeText(range: RangeResult, analysis: FileAnalysis | undefined): string {
  const { members, guests } = range;
  const those = (which: Severity, word: string): string => {
    const ids = findingsOf(range).filter(({ severity, accepted }) => severity === which && !accepted);
    return ids.length === 0 ? '' : `, ${[...new Set(ids.map(({ id }) => id))].join(', ')} ${word}`;
  };
  const between = those('error', 'fails') + those('warning', 'to watch');
  const count = members.reduce((sum, member) => sum + member.count, 0);
  const results = [...(analysis?.results ?? []), ...guests.map(({ result }) => result)];
  const worst = members
    .flatMap(({ shelter }) => results.find((one) => one.shelter === shelter) ?? [])
    .sort((a, b) => (governingOf(b)?.utilisation ?? 0) - (governingOf(a)?.utilisation ?? 0))[0];
  const said = worst && summaryOf(worst);
  return `${count} shelters${between}${said === undefined ? '' : `, the weakest ${worst?.shelter}: ${said}`}`;
}

/** For the status bar: the first to fail where that is known, else how much fails. */
export function statusOf(result: ShelterResult, speed: (si: number) => string): string {
  return firstToFail(result, speed) ?? summaryOf(result) ?? 'not worked out';
}
