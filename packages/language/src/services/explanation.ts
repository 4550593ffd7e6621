/** Where the explanation of a check is found. The page itself is made with the checks; the client opens it. */
import { checkOf } from '@tautline/checks';
import { explanationScheme } from '../protocol.ts';

/** Address of the page of a check; undefined when there is no such check. */
export function explanationAddress(check: string): string | undefined {
  return checkOf(check) ? `${explanationScheme}:/${check}.md` : undefined;
}
