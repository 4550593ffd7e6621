/** Everything that can be said of a shelter. */
import { cover, crop, ends, placed, sides, water } from './cover-words.ts';
import type { Entry } from './entry.ts';
import { frames } from './frame-words.ts';
import { alongWords } from './rail-words.ts';
import { fact, members, several, skins } from './write.ts';

/** Up to five items to choose from, `{first} or {second} ...`. */
const oneOf = (kinds: string, slots: readonly string[]): string =>
  slots.reduceRight(
    (rest, slot, index) =>
      index === 0 ? `{${slot}: item ${kinds}}${rest}` : ` [or {${slot}: item ${kinds}}${rest}]`,
    '',
  );

/** All in its sentence and nothing in its block, so that no other fact is said to belong in `vary`. */
const vary = fact(
  'vary',
  [
    '{part: word bows|rafters|ridge|ridge-posts|posts|purlins|foot|roof}',
    '[{fact: word spaced|rise|length|height|span|deep} from {from: length} to {to: length} [by {step: length}]]',
    '[pitch from {flattest: angle} to {steepest: angle} [by {angle: angle}]]',
    `[of ${oneOf(`${members}|cable`, ['first', 'second', 'third', 'fourth', 'fifth'])}]`,
    `[with ${oneOf(skins, ['skin', 'secondSkin', 'thirdSkin', 'fourthSkin', 'fifthSkin'])}]`,
  ].join(' '),
  'Tries a fact of a part over a range, or several stock items in turn, to see what it does to findings and cost: `tautline explore` works out every combination. The shelter itself stays as it is said elsewhere. `foot` is that of the bows, or of the posts where bows have none; `roof` is the cover of the roof.',
  'vary bows spaced from 3 ft to 5 ft by 6 in',
  several,
);

/** Of a shelter, and of shelters side by side. */
export const accept = fact(
  'accept',
  '{check: check} because {reason: text} [until {until: date}]',
  'A finding you have decided to live with, and why. It stays in the reports, and is an error once it no longer applies.',
  'accept bow-deflection because "beds are inside the line" until 2027-06-30',
  several,
);

const claims: readonly Entry[] = [
  fact(
    'require',
    '{subject: word headroom|ridge-height|clear-width} {comparison: comparison} {value: length} [at {at: length} [from side]]',
    'Something of your own that must hold; it is checked. Headroom may be asked at a distance from the side.',
    'require headroom >= 1.7 m at 0.5 m from side',
    several,
  ),
  fact(
    'withstand',
    '{value: speed}',
    'Nothing but sacrificial parts may give way below this gust.',
    'withstand 38 m/s',
  ),
  accept,
  vary,
];

const whole: readonly Entry[] = [
  fact(
    'footprint',
    '{width: length} by {length: length}',
    'Width across the house, between the outer foot lines, by length along it, between the end frames.',
    'footprint 14 ft by 40 ft',
    { required: true },
  ),
  fact(
    'orientation',
    '{value: angle}',
    'Direction of the ridge, clockwise from north.',
    'orientation 20 deg',
  ),
  fact(
    'worked',
    'from {value: word inside|outside}',
    'Whether people work under the roof, or from outside (then no headroom is asked).',
    'worked from outside',
  ),
  fact(
    'people',
    '{value: word climb|keep-off}',
    'Whether people climb on the frame, hang a ladder on it or lean against it. Where they climb, their weight and push are among the loads.',
    'people climb',
  ),
  fact(
    'season',
    'from {from: date} to {to: date}',
    'The part of the year it stands; it is taken away for the rest.',
    'season from 2026-11-01 to 2027-04-15',
  ),
  fact('lifted', 'by {value: count}', 'The frames are lifted off by this many people.', 'lifted by 2'),
  fact(
    'built',
    '{value: date}',
    'The day the frame stood. The age of what rots is counted from it.',
    'built 2026-03-15',
  ),
  fact(
    'inspected',
    '{on: date} [{told: text}]',
    'One entry of the inspection log: the day, and what was found or done.',
    'inspected 2026-05-01 "strap renewed at bay 3"',
    several,
  ),
  fact(
    'note',
    '{value: text}',
    'A remark for whoever builds or keeps it.',
    'note "the standpipe stays reachable"',
    several,
  ),
];

export const shelterFacts: readonly Entry[] = [
  ...whole,
  ...frames,
  ...alongWords,
  sides,
  ends,
  cover,
  crop,
  ...placed,
  ...water,
  ...claims,
];

/** In a variant nothing is required: what is not said stays as in the shelter it varies. */
export const variantFacts: readonly Entry[] = shelterFacts.map(withoutNeeds);

function withoutNeeds(entry: Entry): Entry {
  const { required: _required, facts, ...rest } = entry;
  return facts ? { ...rest, facts: facts.map(withoutNeeds) } : rest;
}
