import type { Source } from './source.ts';

/** What age does to materials. The life of film stands with the film. */
export const AGEING_SOURCES: readonly Source[] = [
  {
    id: 'janssen:bamboo-life',
    title: 'J. J. A. Janssen, Building with Bamboo',
    where: 'preservation: untreated bamboo in contact with soil lasts 1 to 3 years; 2 taken',
    standing: 'published',
  },
  {
    id: 'practice:wood-in-soil',
    title: 'Untreated wood in warm wet soil',
    where: 'half the strength at the ground after 4 years, green poles 2',
    standing: 'common practice, no source',
  },
  {
    id: 'wstda:sun',
    title: 'Web Sling and Tie Down Association, exposure of web slings to the sun, 1997 to 2004',
    where:
      'polyester loses about 30 % in twelve months and then levels off; nylon 50 to 60 % in 36 months; as a public summary of the report has it',
    standing: 'published',
  },
  {
    id: 'practice:fastener-life',
    title: 'Life of straps, ropes and plastic clips in the sun',
    where:
      'half of the strength at the end of the life in the catalogue, falling evenly; no less than a quarter',
    standing: 'common practice, no source',
  },
  {
    id: 'uni-tr-5',
    title: 'Uni-Bell UNI-TR-5, The Effects of Ultraviolet Aging on PVC Pipe',
    where: 'two years in the sun: tensile strength and modulus unchanged, impact strength falls',
    standing: 'published',
  },
];
