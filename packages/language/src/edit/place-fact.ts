/** Where a new fact goes in a text, and what goes with a fact that is taken out. */
import type { Line } from '../match/match-file.ts';
import type { TextChange } from '../problems/problem.ts';

const indentAt = (text: string, offset: number): string => {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  return /^[ \t]*/.exec(text.slice(start, offset))?.[0] ?? '';
};

const lineBreak = (text: string): string => (text.includes('\r\n') ? '\r\n' : '\n');

/** Puts a fact at the end of a line's block; gives the line a block when it has none. */
export function appendFact(text: string, line: Line, fact: string): TextChange {
  const cst = line.$cstNode;
  const block = line.block?.$cstNode;
  const end = cst?.end ?? text.length;
  if (!block) return { start: end, end, newText: ` { ${fact} }` };
  const close = text[block.end - 1] === '}' ? block.end - 1 : block.end;
  const last = line.block?.facts.at(-1)?.$cstNode;
  const inside = text.slice(block.offset, close);
  if (!inside.includes('\n')) {
    const after = last?.end ?? block.offset + 1;
    const semicolon = last && !/;\s*$/.test(text.slice(after, close)) ? ';' : '';
    return trimmed(text, after, close, `${semicolon} ${fact} `);
  }
  const indent = last ? indentAt(text, last.offset) : `${indentAt(text, cst?.offset ?? 0)}  `;
  const lineStart = text.lastIndexOf('\n', close - 1) + 1;
  const alone = text.slice(lineStart, close).trim() === '';
  const at = alone ? lineStart : close;
  const eol = lineBreak(text);
  return { start: at, end: at, newText: alone ? `${indent}${fact}${eol}` : `${eol}${indent}${fact}${eol}` };
}

/** Replaces what stands between the last fact and the brace, when that is only blanks. */
function trimmed(text: string, after: number, close: number, newText: string): TextChange {
  const between = text.slice(after, close);
  return between.trim() === ''
    ? { start: after, end: close, newText }
    : { start: close, end: close, newText };
}

/** Takes a whole fact with its block out, and its line when nothing else stands on it. */
export function removeLine(text: string, line: Line): TextChange {
  const cst = line.$cstNode;
  const start = cst?.offset ?? 0;
  const end = cst?.end ?? start;
  const lineStart = text.lastIndexOf('\n', start - 1) + 1;
  const following = text.indexOf('\n', end);
  const lineEnd = following < 0 ? text.length : following + 1;
  const aloneBefore = text.slice(lineStart, start).trim() === '';
  const aloneAfter = /^[ \t;]*\r?\n?$/.test(text.slice(end, lineEnd));
  if (aloneBefore && aloneAfter) return { start: lineStart, end: lineEnd, newText: '' };
  const semicolonAfter = /^[ \t]*;[ \t]*/.exec(text.slice(end));
  if (semicolonAfter) return { start, end: end + semicolonAfter[0].length, newText: '' };
  const semicolonBefore = /[ \t]*;[ \t]*$/.exec(text.slice(0, start));
  return semicolonBefore ? { start: semicolonBefore.index, end, newText: '' } : { start, end, newText: '' };
}
