/** What goes over the frame, as steps: soft covers are unrolled and pulled, sheets are laid one by one. */
import { format, type System } from '@tautline/quantity';
import type { Cover, Shelter } from '@tautline/shelter';
import { lengthText } from '../words.ts';
import type { WorkStep } from './work-step.ts';

export function beforeCover({ roof: of, covers }: Shelter): WorkStep {
  const wrapped = 'wrapped' in of && of.wrapped;
  const soft = ['film', 'mesh'].find((kind) => covers.some(({ skin }) => skin.kind === kind));
  return {
    title: `Before the ${soft ?? 'sheets'} go${soft ? 'es' : ''} on`,
    does: [
      `Measure the diagonals again.${soft ? ` Run a hand over everything the ${soft} will touch: tape or file what is rough or sharp.` : ''}`,
      ...(wrapped ? [`Wrap the members that the ${soft ?? 'sheets'} lie${soft ? 's' : ''} on.`] : []),
    ],
    tools: soft ? ['tape', 'file', 'cloth tape'] : ['tape'],
    hands: 1,
  };
}

export function covers(shelter: Shelter, system: System): readonly WorkStep[] {
  return shelter.covers.map((cover) => {
    if (cover.skin.kind === 'sheet') return sheets(cover);
    const hands = cover.place === 'roof' ? Math.max(3, Math.ceil(shelter.length / 6) + 1) : 2;
    const pull =
      cover.tension > 0 && cover.skin.kind === 'film'
        ? [
            `Pull it to about ${format(cover.tension, 'line-load', system)} along every edge; film goes slack when it is warm, so do it on a mild day.`,
          ]
        : [];
    const fastened = cover.fastening ? ` with: ${cover.fastening.title}` : '';
    return {
      title: `Cover the ${cover.place}`,
      does: [
        `${cover.skin.title}${cover.layers === 2 ? ', two layers' : ''}. Unroll it along the side that lies away from the wind, draw it over by ropes, and fasten one long edge, then the other, then the ends${fastened}.`,
        ...pull,
        ...(cover.straps
          ? [
              `Then the straps, one every ${lengthText(cover.straps.spacing, system)}: ${cover.straps.item.title}.`,
            ]
          : []),
      ],
      tools: ['ropes', 'ladders', 'knife', 'drill or screwdriver', 'cloth tape'],
      hands,
      caution: `${cover.skin.kind === 'film' ? 'Film' : 'Mesh'} is a sail while it goes on: in still air only.`,
    };
  });
}

function sheets({ place, skin, fastening }: Cover): WorkStep {
  return {
    title: `Cover the ${place}`,
    does: [
      `${skin.title}. Begin at the end that lies away from the wind that brings rain, and let each sheet lap over the one before${fastening ? `; fasten each before you let go of it, with: ${fastening.title}` : '; fasten each before you let go of it'}.`,
    ],
    tools: ['string line', 'drill or screwdriver', 'ladders', 'gloves'],
    hands: 2,
    caution: 'A sheet is a sail: in still air only. Nobody stands on a sheet.',
  };
}
