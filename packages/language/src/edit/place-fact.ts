/** Where a new fact goes in a text, and what goes with a fact that is taken out. */
import type { Line } from '../match/match-file.ts';
import type { TextChange } from '../problems/problem.ts';

const indentAt = (text: string, offset: number): string => {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  return /^[ \t]*/.exec(text.slice(start, offset))?.[0] ?? '';
};

const lineBreak = (text: string): string => (text.includes('\r\n') ? '\r\n' : '\n');

/** Puts facts at the end of a line's block; gives the line a block when it has none. */
export function appendFacts(text: string, line: Line, facts: readonly string[]): TextChange {
  const cst = line.$cstNode;
  const block = line.block?.$cstNode;
  const end = cst?.end ?? text.length;
  if (!block) return { start: end, end, newText: ` { ${facts.join('; ')} }` };
  const close = text[block.end - 1] === '}' ? block.end - 1 : block.end;
  const last = line.block?.facts.at(-1)?.$cstNode;
  if (!text.slice(block.offset, close).includes('\n')) {
    if (last) return { start: last.end, end: last.end, newText: facts.map((fact) => `; ${fact}`).join('') };
    const gap = text[close - 1] === '{' ? ' ' : '';
    return { start: block.offset + 1, end: block.offset + 1, newText: ` ${facts.join('; ')}${gap}` };
  }
  const indent = last ? indentAt(text, last.offset) : `${indentAt(text, cst?.offset ?? 0)}  `;
  const lineStart = text.lastIndexOf('\n', close - 1) + 1;
  const alone = text.slice(lineStart, close).trim() === '';
  const eol = lineBreak(text);
  const lines = facts.map((fact) => `${indent}${fact}${eol}`).join('');
  return alone
    ? { start: lineStart, end: lineStart, newText: lines }
    : { start: close, end: close, newText: `${eol}${lines}` };
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
