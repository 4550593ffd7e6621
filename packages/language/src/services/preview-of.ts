/** What the drawing sheet of a file is answered: one of its shelters, or all, and what of its text is amiss. */
import type { LangiumDocument } from 'langium';
import type { PreviewAnswer, PreviewName, PreviewQuestion } from '../protocol.ts';
import { rangeOf } from './context.ts';
import { knownProblems } from './diagnostics.ts';
import type { ServerServices } from './lsp-module.ts';
import { definitionNamed, shelterNames, withResults } from './named.ts';
import { allOf, type Seen } from './results.ts';
import { type Sheets, sheetOf } from './sheet-of.ts';

/** Problems of a text that is read only in part. */
const misread: ReadonlySet<string> = new Set([
  'unreadable',
  'unclosed',
  'stray-brace',
  'character',
  'syntax',
  'unclosed-text',
  'unclosed-comment',
  'incomplete',
  'unexpected',
]);

export async function previewOf(
  { uri, one, ...show }: PreviewQuestion,
  document: LangiumDocument | undefined,
  services: ServerServices,
  sheets: Sheets,
): Promise<PreviewAnswer> {
  const away = { uri, version: 0, broken: 'The file is not open to the language server.', shelters: [] };
  if (!document) return { ...away, names: [] };
  const names = namesIn(document);
  const wanted = one === undefined ? undefined : (names.find(({ name }) => name === one) ?? names[0])?.name;
  const seen = await see(document, wanted, services);
  if (!seen) return { ...away, names };
  const { version } = document.textDocument;
  const problems = knownProblems(document, services.context);
  const wrong = problems.find(({ severity }) => severity === 'error');
  const unreadable = problems.find(({ id }) => misread.has(id));
  const of = wanted === undefined ? {} : { one: wanted };
  if (one && one !== wanted && unreadable) {
    // It was there before, and may be again once the text can be read.
    return { uri, version, names, one, broken: unreadable.message, shelters: [] };
  }
  const shelters = seen.all.flatMap((result) => {
    // The sheet keeps its last good drawing itself.
    const drawn = result.kept ? undefined : sheetOf(result, document, seen, services.context, sheets, show);
    if (!drawn) return [];
    return unreadable && drawn.stale === undefined
      ? [{ ...drawn, stale: `What cannot be read is left out: ${unreadable.message}` }]
      : [drawn];
  });
  const unread = seen.all.find(({ evaluation, judged, kept }) => kept || !(evaluation || judged));
  const broken =
    unread?.failure ??
    (unread
      ? (wrong?.message ?? unread.problems[0]?.message)
      : shelters.length === 0
        ? wrong?.message
        : undefined);
  return { uri, version, names, ...of, shelters, ...(broken === undefined ? {} : { broken }) };
}

async function see(
  document: LangiumDocument,
  wanted: string | undefined,
  { analyses }: ServerServices,
): Promise<Seen | undefined> {
  if (wanted !== undefined) return analyses.one(document, wanted);
  const analysis = await analyses.current(document);
  return analysis && allOf(analysis);
}

const namesIn = (document: LangiumDocument): readonly PreviewName[] =>
  shelterNames(document, withResults).flatMap((name) => {
    const cst = definitionNamed(document, name)?.$cstNode;
    return cst ? [{ name, range: rangeOf(document, cst.offset, cst.end) }] : [];
  });
