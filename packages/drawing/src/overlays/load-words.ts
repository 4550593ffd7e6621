/** Loads in words: to choose from, and under a drawing. */
import type { FrameAnalysis, Response } from '@tautline/structure';

export interface LoadChoice {
  readonly id: string;
  readonly title: string;
}

/** The load combinations that can be drawn; the same combination on the frame as built has an id of its own. */
export function loadChoices(analysis: FrameAnalysis): readonly LoadChoice[] {
  return analysis.responses.map((response) => ({ id: responseId(response), title: titleOf(response) }));
}

export const responseId = ({ condition, load }: Response): string => `${condition}:${load.id}`;
const titleOf = ({ condition, load }: Response): string => {
  const title = load.title.replaceAll(/\d+\.\d{3,}/g, (factor) => String(Number(Number(factor).toFixed(2))));
  return condition === 'built' ? `${title}, newly built in the cold` : title;
};

/** Which load it is, and whether the frame carries all of it. */
export function loadCaption(response: Response): string {
  const reached = Math.round(response.reached * 100);
  const title = `Load: ${titleOf(response)}.`;
  if (response.status === 'holds') return title;
  return response.status === 'gives way'
    ? `${title} The frame gives way at ${reached} % of it, and is drawn there.`
    : `${title} No balance was found beyond ${reached} % of it; drawn there.`;
}
