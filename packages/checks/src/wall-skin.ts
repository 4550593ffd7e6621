/** Film and mesh on sides and ends: how far they span, what a gust puts on them, and what they may take. */
import { filmStress, levelOf, meshPull, meshStiffness, type Step, wallCladding } from '@tautline/loads';
import type { Cover, FilmItem, MeshItem, Shelter } from '@tautline/shelter';
import { filmPanel, pullAt, pullKept, stormTemperature, windShape } from '@tautline/structure';
import { filmAgeing, leftOf } from './ageing.ts';
import { windFactor } from './basis.ts';
import { stripPull } from './film-pull.ts';
import { given, step } from './judge.ts';

/** A cover of sides or ends that spans as film does. */
export type WallCover = Cover & { readonly place: 'sides' | 'ends'; readonly skin: FilmItem | MeshItem };

export function wallCovers({ covers }: Shelter): readonly WallCover[] {
  return covers.filter(
    (cover): cover is WallCover =>
      cover.place !== 'roof' && (cover.skin.kind === 'film' || cover.skin.kind === 'mesh'),
  );
}

export interface WallPull {
  /** Pull of a strip, N/m; the same at the edges that the strip runs between. */
  readonly pull: number;
  readonly steps: readonly Step[];
}

export interface WallSkin {
  /** Pull the skin may have in a gust on that day, at the level of the combinations, N/m. */
  readonly allowed: number;
  /** Pull in a gust; `scale` multiplies the wind pressure. */
  readonly pullAt: (scale: number) => WallPull;
  /** Of the wind, and of what may be taken. */
  readonly windSteps: readonly Step[];
  readonly limitSteps: readonly Step[];
}

/**
 * Suction takes the skin off its posts, and it hangs between the edges it is fastened at; pressure lays it against
 * them. Film and mesh of ends are fastened to the uprights too, where there are some.
 */
function spans(shelter: Shelter, cover: WallCover): { readonly out: number; readonly inwards: number } {
  const height = cover.upTo - cover.from;
  const { endFrames, sidePosts, roof, width } = shelter;
  if (cover.place === 'sides')
    return { out: height, inwards: Math.min(height, sidePosts?.spacing ?? roof.spacing) };
  const stand = [0, ...(endFrames?.uprights.map(({ x }) => x) ?? []), width].sort((a, b) => a - b);
  const gap = Math.max(...stand.slice(1).map((x, index) => x - stand[index]!));
  const span = Math.min(height, gap);
  return { out: span, inwards: span };
}

export function wallSkin(shelter: Shelter, cover: WallCover, on: string | undefined): WallSkin {
  const { site } = shelter;
  const factor = windFactor(site);
  const level = levelOf(site.basis);
  const cladding = wallCladding(site, windShape(shelter), cover.place);
  const edge = cladding.zones.find(({ place }) => place === 'edge');
  const suction = factor * Math.max(0, -(edge?.suction ?? 0));
  const pressure = factor * Math.max(0, edge?.pressure ?? 0);
  const span = spans(shelter, cover);
  const left = leftOf(filmAgeing(cover, on));
  const { strip, fresh, limit } = material(cover, Math.max(span.out, span.inwards));
  const allowed = fresh * level * left.share;
  const oneWay = (symbol: string, meaning: string, p: number, s: number): { pull: number; step: Step } => {
    const { pull, sag } = stripPull(strip, s, p);
    return {
      pull,
      step: step(
        symbol,
        meaning,
        'T = p s² / (8 f)',
        [
          given('p', 'pressure on it', p, 'pressure'),
          given('s', 'distance between what holds it', s, 'length'),
          given('f', 'bulge', sag, 'length'),
        ],
        pull,
        'line-load',
        'parabola',
      ),
    };
  };
  return {
    allowed,
    windSteps: cladding.steps,
    limitSteps: [
      limit,
      step(
        'T_a,η',
        'at the level of the combinations and its age',
        'T_a,η = T_a · level · η',
        [
          given('level', 'allowable to factored loads', level, 'ratio'),
          given('η', 'strength left', left.share, 'percent'),
        ],
        allowed,
        'line-load',
        'practice',
      ),
      ...left.steps,
    ],
    pullAt: (scale) => {
      const out = oneWay('T_o', 'pull when suction bulges it outwards', scale * suction, span.out);
      const inwards = oneWay('T_i', 'pull when wind presses it in', scale * pressure, span.inwards);
      return { pull: Math.max(out.pull, inwards.pull), steps: [out.step, inwards.step] };
    },
  };
}

/** How a strip stretches and what it rests at, and the pull it may have when new, N/m. */
function material(cover: WallCover, span: number) {
  const { skin } = cover;
  if (skin.kind === 'film') {
    const panel = filmPanel(cover, span)!;
    const may = filmStress(skin.yieldStress, stormTemperature, 'gust');
    const fresh = may.allowable * skin.thickness;
    return {
      strip: { panel, resting: pullAt(panel, stormTemperature).pull },
      fresh,
      limit: step(
        'T_a',
        'pull the film may have in a gust',
        'T_a = t σ_y k_T k_d',
        [given('t', 'thickness', skin.thickness, 'film-thickness'), ...may.step.inputs],
        fresh,
        'line-load',
        may.step.source,
      ),
    };
  }
  const may = meshPull(skin.strength, stormTemperature, 'gust');
  return {
    strip: { panel: { stiffness: meshStiffness(skin.strength) }, resting: pullKept * cover.tension },
    fresh: may.allowable,
    limit: may.step,
  };
}
