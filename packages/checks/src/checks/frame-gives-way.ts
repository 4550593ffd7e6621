import type { Shelter } from '@tautline/shelter';
import type { FrameAnalysis, Response } from '@tautline/structure';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import type { Finding, Found, MessagePiece } from '../finding.ts';
import { inWords, judge, measured } from '../judge.ts';
import { closer, flatter, stouter, tiedHeads } from '../levers.ts';
import type { Limit } from '../limit.ts';
import { notSurvived } from '../stress.ts';

/** Less than this share counts as this share, so that a frame that bears nothing has a number: own choice. */
const least = 1e-3;

/** As many combinations are told one by one: own choice. */
const mostTold = 5;

function run({ shelter: { roof }, frame }: CheckInput): Found[] {
  if (!frame.ok) return [];
  const { analysis } = frame;
  const failing = notSurvived(analysis);
  const worst = failing[0];
  if (worst === undefined) return [stands(roof, analysis)];
  const reached = Math.max(worst.reached, least);
  return [
    judge({
      part: roof,
      utilisation: 1 / reached,
      demand: measured(1, 'percent'),
      capacity: measured(worst.reached, 'percent'),
      loadCase: worst.load.title,
      message: [...words(roof, analysis, worst), ...andMore(failing)],
      source: worst.load.source,
      steps: failing.slice(0, mostTold).map(shareStep),
    }),
  ];
}

/** The frame bears the whole of every combination; how much more it would bear is not looked for. */
function stands({ id, origin }: Shelter['roof'], { responses }: FrameAnalysis): Found {
  return {
    verdict: 'passes',
    severity: 'information',
    part: id,
    origin,
    related: [],
    message: [`The frame finds its balance under each of ${responses.length} combinations of loads.`],
    source: 'timoshenko:stability',
    steps: [],
  };
}

function words(
  roof: Shelter['roof'],
  analysis: FrameAnalysis,
  { status, reached, load, condition }: Response,
): MessagePiece[] {
  if (analysis.built.status !== 'holds' || (condition === 'built' && reached < least))
    return [
      analysis.built.result.status === 'mechanism'
        ? 'The frame does not stand by itself: nothing keeps its feet and joints from turning, and it folds to the side.'
        : 'The frame does not stand as built: no balance was found for it before any load lies on it.',
    ];
  const stock = roof.type === 'bows' || roof.type === 'rafters' ? roof.member.title : 'the frame';
  const under = condition === 'built' ? `${load.title} on the day it goes up` : load.title;
  return status === 'gives way'
    ? [
        'The frame gives way at ',
        measured(reached, 'percent'),
        ` of ${under}: ${stock} is too limber for it.`,
      ]
    : ['No balance was found for the frame beyond ', measured(reached, 'percent'), ` of ${under}.`];
}

function andMore(failing: readonly Response[]): MessagePiece[] {
  const more = failing.length - 1;
  return [
    more > 0
      ? ` It does not bear ${more} other ${more === 1 ? 'combination' : 'combinations'} of loads either.`
      : '',
    ' What other checks tell is of the loads that it does bear.',
  ];
}

const shareStep = ({ status, reached, load }: Response) =>
  inWords(
    'λ',
    status === 'gives way'
      ? `share of ${load.title} at which the frame loses its stiffness`
      : `share of ${load.title} up to which a balance was found`,
    'det K(λ) = 0 along the load path',
    [],
    reached,
    'percent',
    'timoshenko:stability',
  );

/** In the order of failure it stands by itself: the gust from which the frame finds no balance. */
function limits({ shelter: { roof } }: CheckInput): Limit[] {
  const gives = 'the whole frame gives way';
  return [{ by: 'balance', part: roof, gives, sacrificial: roof.sacrificial === true }];
}

export const frameGivesWay: Check = {
  id: 'frame-gives-way',
  title: 'Frame gives way',
  asks: 'Does the frame find a balance under every combination of weight, crop, snow and wind, on its bent shape?',
  matters:
    'A bow that snaps through or a frame that folds falls with all that hangs on it, long before its stock is bent past its strength.',
  formula: 'u = 1 / λ, where det K(λ) = 0',
  symbols: [
    { symbol: 'λ', meaning: 'share of a combination that the frame bears', kind: 'percent' },
    { symbol: 'K', meaning: 'stiffness of the bent frame under its loads', kind: 'ratio' },
  ],
  sources: ['frame', 'timoshenko:stability'],
  leavesOut:
    'How much more than the combination the frame would bear; a lean along the house (see buckling along the house and racking); play in joints.',
  mayBeAccepted: 'Never: a frame that does not bear a combination falls down under it.',
  needs: 'frame',
  run,
  limits,
  levers,
};

function levers({ shelter }: CheckInput, _finding: Finding, stock: Stock): Lever[] {
  const { roof } = shelter;
  if (roof.type !== 'bows' && roof.type !== 'rafters') return [];
  const sprung = roof.type === 'bows' && roof.shape === 'elastic' ? [flatter(roof)] : [];
  return [
    ...tiedHeads(shelter),
    closer(roof, roof.type === 'bows' ? 'bows' : 'rafters'),
    stouter(roof, stock),
    ...sprung,
  ];
}
