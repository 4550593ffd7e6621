import type { PreviewFinding } from '@tautline/language/protocol';

type Told = Pick<PreviewFinding, 'verdict' | 'severity' | 'accepted'>;

/** How a finding stands, as a class of the style sheet: what brings the house down, what is to be watched, the rest. */
export type Standing = 'fails' | 'near' | 'passes' | 'unknown' | 'accepted';

export function standingOf({ verdict, severity, accepted }: Told): Standing {
  if (accepted !== undefined) return 'accepted';
  if (verdict === 'not checked') return 'unknown';
  return severity === 'error' ? 'fails' : severity === 'warning' ? 'near' : 'passes';
}

/** Whether somebody has to look at it: it fails, or is to be watched. */
export const isOpen = (finding: Told): boolean => ['fails', 'near'].includes(standingOf(finding));
