import type { Finding } from './finding.ts';

/** The verdict as it is told: what fails and does not bring the house down is to be watched. */
export const verdictText = ({ verdict, severity }: Pick<Finding, 'verdict' | 'severity'>): string =>
  verdict === 'fails' && severity === 'warning' ? 'to watch' : verdict;
