import type { KindName } from '@tautline/quantity';
import type { Requirement, Shelter } from '@tautline/shelter';
import type { Check } from '../check.ts';
import type { Found } from '../finding.ts';
import { inWords, judge, measured, notChecked } from '../judge.ts';
import { higher, risen } from '../levers.ts';

/** What a `require` may be about, in SI. Headroom is judged after deflection, by its own check. */
function subjectOf(
  shelter: Shelter,
  requirement: Requirement,
): { value: number; kind: KindName } | undefined {
  const { roof } = shelter;
  switch (requirement.subject) {
    case 'clear-width':
      return { value: shelter.width, kind: 'length' };
    case 'ridge-height':
      return { value: roof.springing + roof.rise, kind: 'length' };
    default:
      return undefined;
  }
}

function onRequirement(shelter: Shelter, requirement: Requirement): Found[] {
  // Headroom is judged by bow-deflection, a gust by withstand.
  if (requirement.subject === 'headroom' || requirement.subject === 'gust') return [];
  const subject = subjectOf(shelter, requirement);
  if (subject === undefined)
    return [notChecked(requirement, `'${requirement.subject}' is not something that can be required`)];
  const least = requirement.comparison === '>=' || requirement.comparison === '>';
  const utilisation = least
    ? requirement.value / Math.max(subject.value, 1e-9)
    : subject.value / Math.max(requirement.value, 1e-9);
  return [
    judge({
      part: requirement,
      utilisation,
      exact: true,
      demand: measured(requirement.value, subject.kind),
      capacity: measured(subject.value, subject.kind),
      message: [
        `The ${requirement.subject.replace('-', ' ')} is `,
        measured(subject.value, subject.kind),
        `; ${least ? 'at least' : 'at most'} `,
        measured(requirement.value, subject.kind),
        ' is required.',
      ],
      source: 'derived',
      steps: [
        inWords(
          requirement.subject,
          `${requirement.subject} of the shelter`,
          'from the geometry',
          [],
          subject.value,
          subject.kind,
          'derived',
        ),
      ],
    }),
  ];
}

export const requirement: Check = {
  id: 'requirement',
  title: 'Your own requirement',
  nature: 'paperwork',
  asks: 'Does the shelter have what its spec says it must have?',
  matters: 'What was promised to the person who works in it should not be lost in a later change.',
  formula: 'u = required / actual (or the other way round for "at most")',
  symbols: [],
  sources: ['derived'],
  leavesOut:
    'Headroom is judged by bow-deflection, after the roof has settled; a gust to withstand by withstand.',
  mayBeAccepted: 'Change the requirement instead.',
  run: (input) => input.shelter.requirements.flatMap((entry) => onRequirement(input.shelter, entry)),
  levers: ({ shelter }, finding) => {
    const asked = shelter.requirements.find((entry) => entry.id === finding.part);
    const { roof } = shelter;
    if (asked?.subject !== 'ridge-height' || !asked.comparison.startsWith('>')) return [];
    if (roof.type === 'bows') return [higher(roof)];
    return roof.type === 'rafters' ? [] : [risen(roof)];
  },
};
