import { fasteningPull as allowedPull, levelOf, type Step } from '@tautline/loads';
import type { FasteningItem, FilmItem, MeshItem, Shelter } from '@tautline/shelter';
import { stormTemperature } from '@tautline/structure';
import { edgeAgeing, leftOf } from '../ageing.ts';
import type { Check, CheckInput, Lever, Stock } from '../check.ts';
import { heldPerMetre } from '../fastening-hold.ts';
import { renewed, renewedHold } from '../film-levers.ts';
import type { Finding } from '../finding.ts';
import { given, measured, step } from '../judge.ts';
import { type Limit, unknown } from '../limit.ts';
import { setItem } from '../slots.ts';
import { type WallCover, type WallSkin, wallCovers, wallSkin } from '../wall-skin.ts';

/** What its edges may hold of a cover on that day, N/m, or why that is not known. */
function edgeHold(shelter: Shelter, cover: WallCover, left: number): number | { readonly reason: string } {
  if (cover.fastening === undefined)
    return { reason: `what holds the edges of the ${nounOf(cover)} was not said` };
  const holds = heldPerMetre(cover, cover.fastening);
  if (typeof holds !== 'number') return holds;
  return allowedPull(holds, stormTemperature, 'gust').allowable * levelOf(shelter.site.basis) * left;
}

const nounOf = ({ place, skin }: WallCover): string => `${skin.kind} on the ${place}`;

function limits({ shelter, on }: CheckInput): Limit[] {
  return wallCovers(shelter).flatMap((cover) => {
    const skin = wallSkin(shelter, cover, on);
    return [ofSkin(cover, skin), ofEdge(shelter, cover, skin, on)];
  });
}

function ofSkin(cover: WallCover, skin: WallSkin): Limit {
  return {
    by: 'pressure',
    part: cover,
    gives: `the ${nounOf(cover)} tears or is stretched for good`,
    sacrificial: cover.sacrificial === true,
    use: (factor) => {
      const { pull, steps } = skin.pullAt(factor);
      return {
        utilisation: pull / skin.allowed,
        loadCase: `gust on the ${cover.place}`,
        tell: () => ({
          demand: measured(pull, 'line-load'),
          capacity: measured(skin.allowed, 'line-load'),
          source: 'parabola',
          message: [
            `A gust pulls the ${nounOf(cover)} with `,
            measured(pull, 'line-load'),
            `; ${cover.skin.title} may have `,
            measured(skin.allowed, 'line-load'),
            '.',
          ],
          steps: [...skin.windSteps, ...steps, ...skin.limitSteps],
        }),
      };
    },
  };
}

function ofEdge(shelter: Shelter, cover: WallCover, skin: WallSkin, on: string | undefined): Limit {
  const left = leftOf(edgeAgeing(cover, on));
  const holds = edgeHold(shelter, cover, left.share);
  const part = { id: `${cover.id}/edge`, origin: cover.origin };
  if (typeof holds !== 'number') return unknown(part, holds.reason);
  const title = cover.fastening?.title ?? 'it';
  return {
    by: 'pressure',
    part,
    gives: `${title} lets the ${nounOf(cover)} go`,
    sacrificial: cover.sacrificial === true,
    use: (factor) => {
      const { pull, steps } = skin.pullAt(factor);
      return {
        utilisation: pull / holds,
        loadCase: `gust on the ${cover.place}`,
        tell: () => ({
          demand: measured(pull, 'line-load'),
          capacity: measured(holds, 'line-load'),
          source: 'parabola',
          message: [
            `A gust on the ${cover.place} pulls at what fastens the ${cover.skin.kind} with `,
            measured(pull, 'line-load'),
            `; ${title} may hold `,
            measured(holds, 'line-load'),
            '.',
          ],
          steps: [...skin.windSteps, ...steps, ...left.steps, heldStep(left.share, holds)],
        }),
      };
    },
  };
}

const heldStep = (share: number, holds: number): Step =>
  step(
    'F_a',
    'pull the fastening may have in a gust, at its age or that of the film, which tears out of it',
    'F_a = η F_0',
    [
      given('F_0', 'when new, at the level of the combinations', holds / share, 'line-load'),
      given('η', 'strength left in the film, or in clips where that is less', share, 'percent'),
    ],
    holds,
    'line-load',
    'practice:film-creep',
  );

export const wallCover: Check = {
  id: 'wall-cover',
  title: 'Covers of sides and ends',
  asks: 'Do film and mesh on sides and ends, and what fastens them, stand the gust that bulges them in and out?',
  matters:
    'A side that tears open on the windward side lets the storm in under the roof, and the lift on it doubles.',
  formula: 'u = T / T_a; at the edge u = T / F_a; T = p s² / 8 f with T = T_1 + E t (8/3) (f/s)²',
  symbols: [
    { symbol: 'T', meaning: 'pull of a strip', kind: 'line-load' },
    { symbol: 'p', meaning: 'pressure or suction at the edge of a wall', kind: 'pressure' },
    { symbol: 's', meaning: 'distance between what holds the strip', kind: 'length' },
    { symbol: 'f', meaning: 'bulge', kind: 'length' },
    { symbol: 'T_1', meaning: 'pull left of what it was put on with', kind: 'line-load' },
    { symbol: 'E t', meaning: 'stretch stiffness; of mesh its breaking pull over 20 %', kind: 'line-load' },
    { symbol: 'T_a', meaning: 'pull it may have in a gust', kind: 'line-load' },
    { symbol: 'F_a', meaning: 'pull its fastening may have', kind: 'line-load' },
  ],
  sources: [
    'parabola',
    'asce7-16:30.3-1',
    'en1991-1-4:7.2.2',
    'practice:film-creep',
    'practice:mesh',
    'practice',
  ],
  leavesOut:
    'Skins that are fastened to every post as well, which stand more; doors, flaps and roll-up sides; stitched seams; sheets on sides and ends; and what happens inside once a side is open. Suction hangs film and mesh of sides between their upper and lower edge, of ends between uprights.',
  mayBeAccepted: 'When the sides are meant to go before the roof, or are taken off before a storm.',
  appliesTo: (shelter) => wallCovers(shelter).length > 0,
  limits,
  levers,
};

/** New film, what holds more, then stouter film or mesh. */
function levers({ shelter, on }: CheckInput, finding: Finding, stock: Stock): Lever[] {
  const cover = wallCovers(shelter).find(({ id }) => finding.part === id || finding.part === `${id}/edge`);
  if (cover === undefined) return [];
  const { skin, fastening } = cover;
  const stronger =
    finding.part === cover.id
      ? stock.items
          .filter(
            (item): item is FilmItem | MeshItem => item.kind === skin.kind && outdoes(item as never, skin),
          )
          .map(({ id, title }) => ({ title: [`Use ${title}`], edits: [setItem(cover.origin, 'with', id)] }))
      : stock.items
          .filter(
            (item): item is FasteningItem =>
              item.kind === 'fastening' &&
              (item.form === 'channel' || item.form === 'board') &&
              item.holds > (fastening?.holds ?? 0),
          )
          .map(({ id, title }) => ({
            title: [`Hold it with ${title}`],
            edits: [setItem(cover.origin, 'fastened', id)],
          }));
  const own =
    finding.part === cover.id || fastening === undefined
      ? []
      : renewedHold(cover.origin, 'fastened', fastening, cover.fastenedSince ?? cover.installed, on);
  return [...renewed(cover, on), ...own, { type: 'choice', options: stronger }];
}

/** Thicker film of the lasting grade, or mesh that breaks at more. */
function outdoes(item: FilmItem | MeshItem, than: FilmItem | MeshItem): boolean {
  if (item.kind === 'film' && than.kind === 'film')
    return item.grade === 'greenhouse' && item.thickness > than.thickness;
  return item.kind === 'mesh' && than.kind === 'mesh' && item.strength > than.strength;
}
