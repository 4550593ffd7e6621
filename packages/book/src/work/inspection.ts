/** What to look at, and when. Common practice, no source; which lines appear comes from the model. */
import { stormOff } from '@tautline/checks';
import type { Shelter } from '@tautline/shelter';
import { feetOf, madeOf, membersOf, railsOf } from '../words.ts';

export interface Inspection {
  readonly when: string;
  readonly points: readonly string[];
}

export function inspections(shelter: Shelter): readonly Inspection[] {
  const { roof } = shelter;
  const film = shelter.covers.some((cover) => cover.skin.kind === 'film');
  const mesh = shelter.covers.some((cover) => cover.skin.kind === 'mesh');
  const sheet = shelter.covers.some((cover) => cover.skin.kind === 'sheet');
  const cable = membersOf(shelter).some((member) => member.kind === 'cable');
  const joints = roof.type === 'bows' && (roof.joints.length > 0 || roof.crownFitting !== undefined);
  const steel = madeOf(shelter, ['steel']);
  const wood = madeOf(shelter, ['timber', 'bamboo', 'green-wood']);
  const straps = shelter.covers.some((cover) => cover.straps);
  const over = { film: 'film', mesh: 'mesh', sheet: 'sheets', caps: 'caps', nothing: 'roof' }[
    stormOff(shelter).what
  ];
  const keep = (lines: readonly (string | false)[]): readonly string[] =>
    lines.filter((line) => line !== false);
  return [
    {
      when: 'When it is built, and every three months',
      points: keep([
        feetOf(shelter).length > 0 &&
          'Feet: none has risen, sunk or leaned since the paint mark at ground level was made.',
        roof.type === 'bows' && 'Bows: none has flattened, kinked, split or slipped on its foot.',
        roof.type === 'rafters' && 'Rafters: none has sagged, split or come off its fitting.',
        roof.type === 'inflated' && 'Fan: runs, its sign can be seen, and the films are round and tight.',
        roof.type === 'cap' &&
          'Caps: none cracked, clouded or shifted, and what holds down each rim in its place.',
        joints && 'Joints of the bows: no crack, no gap, no screw loose.',
        shelter.ridge !== undefined && 'Ridge: straight, posts plumb, every tie in place.',
        railsOf(shelter).length > 0 && 'Rails, purlins and boards: every joint tight.',
        shelter.braces.length > 0 && 'Braces and guys: none slack, none bent.',
        cable && 'Cables: clips tight, no broken strand; take up what has stretched.',
        film &&
          'Film: no tear, no rubbed place, no flapping; taut when pressed with a hand in the middle of a bay.',
        straps && 'Straps: tight, not frayed at the edges.',
        (film || mesh) &&
          `Fastenings of the ${film ? 'film' : 'mesh'}: none has sprung out or pulled through.`,
        sheet && 'Sheets: none cracked or clouded; no screw loose or pulled through.',
      ]),
    },
    {
      when: 'In and after heavy rain',
      points: keep([
        `Water runs off everywhere: no pool on the ${over}, none growing.`,
        'No wash-out round the feet; water leads away from the house.',
      ]),
    },
    {
      when: 'After every storm',
      points: keep([
        'Nobody goes under before somebody has walked round it.',
        'All points above, the windward side first.',
        roof.sacrificial === true &&
          `The parts that were meant to go first: replace what has gone before the ${over} go${over.endsWith('s') ? '' : 'es'} on.`,
      ]),
    },
    {
      when: 'Once a year',
      points: keep([
        wood &&
          'Wood and poles: probe with a knife at the ground line and under wrappings; replace what is soft.',
        steel && 'Steel: brush and paint rust at cut ends, screw holes and the ground line.',
        madeOf(shelter, ['pvc', 'polyethylene']) && 'Plastic pipe: no chalky, brittle or whitened places.',
        film && 'Film: compare its age with the renewal calendar.',
        'Read the assumptions again: has anything on the site changed (trees felled, buildings, a new crop hung)?',
      ]),
    },
  ];
}
