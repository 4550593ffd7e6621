/** The explanation of a check as a page of Markdown, made from the check's own words. */
import { checkOf, sources } from '@tautline/checks';
import { explanationScheme } from '../protocol.ts';

/** Address of the page of a check; undefined when there is no such check. */
export function explanationAddress(check: string): string | undefined {
  return checkOf(check) ? `${explanationScheme}:/${check}.md` : undefined;
}

/** The page at such an address; undefined when there is none. */
export function explanationAt(address: string): string | undefined {
  const id = new RegExp(`^${explanationScheme}:/+([a-z0-9-]+)\\.md$`).exec(address)?.[1];
  return id === undefined ? undefined : explanationOf(id);
}

function explanationOf(id: string): string | undefined {
  const check = checkOf(id);
  if (!check) return undefined;
  const symbols = check.symbols.map(({ symbol, meaning }) => `- \`${symbol}\`: ${meaning}`);
  const from = check.sources.map((one) => {
    const source = sources[one];
    return `- ${source ? `${source.title}, ${source.where} (${source.standing})` : one}`;
  });
  const part = (title: string, body: string | readonly string[]): string => {
    const text = typeof body === 'string' ? body : body.join('\n');
    return text === '' ? '' : `## ${title}\n\n${text}`;
  };
  return `${[
    `# ${check.title}`,
    `*Check \`${check.id}\` of a screening aid: local codes, permits and a licensed engineer decide.*`,
    check.asks,
    part('Why it matters', check.matters),
    part('How it is worked out', `\`\`\`text\n${check.formula}\n\`\`\``),
    part('What the letters mean', symbols),
    part('What it leaves out', check.leavesOut),
    part('When it may be accepted', check.mayBeAccepted),
    part('Where the numbers come from', from),
  ]
    .filter((text) => text !== '')
    .join('\n\n')}\n`;
}
