/** Reads XML as strictly as the drawings need: nesting, quoted and unique attributes, escaped text. */
export function xmlProblems(xml: string): readonly string[] {
  const problems: string[] = [];
  const open: string[] = [];
  const pieces = xml.match(/<[^>]*>|[^<]+/g) ?? [];
  if (pieces.join('') !== xml) problems.push('a tag is not closed');
  for (const piece of pieces) {
    if (!piece.startsWith('<')) {
      if (/&(?!(amp|lt|gt|quot);)/.test(piece)) problems.push(`bare ampersand in '${piece}'`);
      if (piece.includes('>')) problems.push(`bare > in '${piece}'`);
      if (open.length === 0 && piece.trim() !== '') problems.push(`text outside: '${piece}'`);
      continue;
    }
    const end = /^<\/([a-z]+)>$/.exec(piece);
    if (end) {
      if (open.pop() !== end[1]) problems.push(`${piece} does not match`);
      continue;
    }
    const start = /^<([a-z]+)((?: [a-zA-Z0-9:-]+="[^"<]*")*)(\/?)>$/.exec(piece);
    if (!start) {
      problems.push(`odd tag ${piece}`);
      continue;
    }
    const names = [...(start[2] ?? '').matchAll(/ ([a-zA-Z:-]+)="/g)].map((match) => match[1]);
    if (new Set(names).size !== names.length) problems.push(`attribute twice in ${piece}`);
    if (/&(?!(amp|lt|gt|quot);)/.test(start[2] ?? '')) problems.push(`bare ampersand in ${piece}`);
    if (start[3] !== '/') open.push(start[1] ?? '');
  }
  if (open.length > 0) problems.push(`left open: ${open.join(' ')}`);
  return problems;
}
