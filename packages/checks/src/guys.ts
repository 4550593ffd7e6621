/**
 * What pulls the guys that hold a house from its sides. The whole house in space knows their share of the wind; the
 * typical frame has them only under a blown-up roof. Elsewhere it gives what bounds their pull: not less than they
 * were set up with, not more than if they alone held the house.
 */
import type { Step } from '@tautline/loads';
import type { Brace, Shelter } from '@tautline/shelter';
import type { PieceForces, Response } from '@tautline/structure';
import type { CheckInput } from './check.ts';
import type { MessagePiece } from './finding.ts';
import { given, inWords, measured, step } from './judge.ts';
import type { Limit, Told, Use } from './limit.ts';

export interface GuyPull {
  /** Of one guy along itself, N. */
  readonly pull: number;
  readonly loadCase: string;
  /** Said in front of the verdict, up to and with the pull. */
  readonly told: readonly MessagePiece[];
  readonly steps: readonly Step[];
}

/** Guys that stand out from the sides of the house: those along it are judged by racking. */
export function sideGuys({ braces }: Shelter): readonly Brace[] {
  return braces.filter(({ role, plane }) => role === 'guy' && plane === 'across');
}

/** Slope at which a side guy runs down to its anchor, rad. */
export function guySlope({ from, to }: Brace): number {
  return Math.atan2(Math.abs(from.y - to.y), Math.abs(from.x - to.x));
}

/** What gives at the limit of a guy, and what it may take along it. */
export interface GuyLimit {
  readonly part: Limit['part'];
  readonly gives: string;
  readonly sacrificial: boolean;
  /** N */
  readonly mayTake: number;
  readonly tell: (pulled: GuyPull) => Told;
}

/** Why a guy is not judged where only all of the wind would be too much. */
const shareUnknown =
  'the typical frame does not tell what share of the wind the side guys take, and if they took all of it they would come to their limit; the whole house in space (the full analysis) tells';

/** A limit of a side guy by what pulls it, or by what bounds that where only the whole house would know. */
export function guyLimit(
  { house, shelter }: CheckInput,
  guy: Brace,
  { mayTake, tell, ...given }: GuyLimit,
): Limit {
  const use = (pulled: GuyPull): Use => ({
    utilisation: pulled.pull / Math.max(mayTake, 1e-6),
    loadCase: pulled.loadCase,
    tell: () => tell(pulled),
  });
  const pieces = house?.ok === true ? house.house.racking.bracing : [];
  if (guyInHouse(pieces, guy, 1) !== undefined)
    return {
      ...given,
      by: 'pressure',
      use: (factor) => {
        const pulled = guyInHouse(pieces, guy, factor);
        return pulled && use(pulled);
      },
    };
  const { tension: setUp = 0 } = guy;
  if (setUp > mayTake) return { ...given, by: 'pressure', use: () => use(asSetUp(setUp)) };
  const inFrame = shelter.roof.type === 'inflated';
  return {
    ...given,
    by: 'frame',
    unasked: 'the frame gives way before its guys can be judged',
    use: (response) => {
      const pulled = (inFrame ? guyInFrame : guyAlone)(shelter, guy, [response]);
      return pulled && use(pulled);
    },
    ...(inFrame ? {} : { bound: shareUnknown }),
  };
}

const asSetUp = (setUp: number): GuyPull => ({
  pull: setUp,
  loadCase: 'its own pull, without wind',
  told: ['Each side guy is set up with a pull of ', measured(setUp, 'force')],
  steps: [inWords('T_0', 'pull it is set up with', 'as the spec says', [], setUp, 'force', 'derived')],
});

/** Both guys of a frame share a push until the one on the lee side hangs slack: T = max(T_w, T_0 + T_w / 2). */
function withSetUp(guy: Brace, wind: number): { readonly pull: number; readonly steps: readonly Step[] } {
  const setUp = guy.tension ?? 0;
  const pull = setUp === 0 ? wind : Math.max(wind, setUp + wind / 2);
  return {
    pull,
    steps: [
      step(
        'T',
        'pull with what it was set up with; the lee guy lets go as the other is pulled',
        'T = max(T_w, T_0 + T_w / 2)',
        [
          given('T_w', 'pull by the load', wind, 'force'),
          given('T_0', 'pull it is set up with', setUp, 'force'),
        ],
        pull,
        'force',
        'statics',
      ),
    ],
  };
}

/** Its pull in the whole house; `scale` multiplies what the load brings it. Undefined where the house has no such guy. */
function guyInHouse(pieces: readonly PieceForces[], guy: Brace, scale: number): GuyPull | undefined {
  const own = pieces.filter(({ part }) => part === guy.id);
  const [first] = own;
  if (first === undefined) return undefined;
  const worst = own.reduce((most, piece) => (piece.pull > most.pull ? piece : most), first);
  const wind = scale * worst.pull;
  const { pull, steps } = withSetUp(guy, wind);
  return {
    pull,
    loadCase: worst.loadCase,
    told: [
      'In the whole house a side guy is pulled with ',
      measured(pull, 'force'),
      ` under ${worst.loadCase}`,
    ],
    steps: [
      inWords(
        'T_w',
        'pull of the guy pulled most',
        'from the analysis of the whole house',
        [],
        wind,
        'force',
        'house',
      ),
      ...steps,
    ],
  };
}

/** Frames that one guy stands for, as they are spread along a side. */
function framesPerGuy({ length, roof }: Shelter, { count }: Brace): number {
  const gaps = Math.max(1, count / 2 - 1);
  return Math.max(1, length / gaps / roof.spacing);
}

/** Level pull of one guy to pull along it. */
function along(guy: Brace, level: number, frames: number, what: string): { pull: number; step: Step } {
  const slope = guySlope(guy);
  const pull = (level * frames) / Math.cos(slope);
  return {
    pull,
    step: step(
      'T_w',
      'pull along the guy',
      'T_w = H n / cos α',
      [
        given('H', what, level, 'force'),
        given('n', 'frames per guy', frames, 'ratio'),
        given('α', 'slope down to the anchor', slope, 'angle'),
      ],
      pull,
      'force',
      'statics',
    ),
  };
}

/** Under a blown-up roof the guys are in the frame: they hold the heads that the films pull inwards. */
function guyInFrame(shelter: Shelter, guy: Brace, responses: readonly Response[]): GuyPull | undefined {
  if (shelter.roof.type !== 'inflated') return undefined;
  let level = 0;
  let loadCase = '';
  for (const { load, status, reactions } of responses) {
    if (load.use === 'service' || status !== 'holds') continue;
    for (const { part, horizontal } of reactions)
      if (part === guy.id && Math.abs(horizontal) >= level)
        [level, loadCase] = [Math.abs(horizontal), load.title];
  }
  if (loadCase === '') return undefined;
  const held = along(guy, level, framesPerGuy(shelter, guy), 'level hold of a guy on one frame');
  const setUp = guy.tension ?? 0;
  const pull = setUp + held.pull;
  return {
    pull,
    loadCase,
    told: ['The films pull each side guy with ', measured(pull, 'force'), ` under ${loadCase}`],
    steps: [
      held.step,
      step(
        'T',
        'with what it was set up with: both sides are pulled inwards at once, and neither lets go',
        'T = T_0 + T_w',
        [given('T_0', 'pull it is set up with', setUp, 'force')],
        pull,
        'force',
        'statics',
      ),
    ],
  };
}

/** As if the guys on one side held the whole push of the load on a frame, at the height they are fixed at. */
function guyAlone(shelter: Shelter, guy: Brace, responses: readonly Response[]): GuyPull | undefined {
  let push: number | undefined;
  let loadCase = '';
  for (const { load, status, reactions } of responses) {
    if (load.use === 'service') continue;
    if (status !== 'holds') return undefined;
    const held = Math.abs(reactions.reduce((sum, { horizontal }) => sum + horizontal, 0));
    if (push === undefined || held > push) [push, loadCase] = [held, load.title];
  }
  if (push === undefined) return undefined;
  const held = along(guy, push, framesPerGuy(shelter, guy), 'push of the load on one frame, all of it');
  const { pull, steps } = withSetUp(guy, held.pull);
  return {
    pull,
    loadCase,
    told: [
      'Even if the side guys alone kept the house from being pushed aside, each would be pulled with ',
      measured(pull, 'force'),
      ` under ${loadCase}`,
    ],
    steps: [held.step, ...steps],
  };
}
