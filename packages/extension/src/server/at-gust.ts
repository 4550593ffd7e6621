/** The gusts a reader can slide through, and what is said about the shelter at one of them. Pure. */
import { type AtGust, type GustUse, stormOff } from '@tautline/checks';
import type { PartUse } from '@tautline/drawing';
import type { ToldEvaluation } from '@tautline/language/server';
import { format, type System, usedText } from '@tautline/quantity';
import type { GustScale, UseAtGust } from '../details.ts';

/** Round steps of the slider, m/s: 1 m/s or 2 mph. */
const step: Readonly<Record<System, number>> = { metric: 1, us: 2 * 0.44704 };
/** The slider ends at this multiple of the site's gust. */
const reach = 2;
/** A limit counts as reached from this share on: the gusts of first failure are known to half a per cent of the load. */
const reachedFrom = 0.995;
/** Share of a limit from which a part is near it. */
const near = 0.85;

/** Round gusts from calm on, and between them the gusts one looks for. `gust` is the one that is drawn. */
export function gustScale(
  { shelter, gusts }: Pick<ToldEvaluation, 'shelter' | 'gusts'>,
  gust: number | undefined,
  system: System,
): GustScale {
  const site = shelter.site.gust;
  const most = reach * site;
  const first = gusts?.filmOff?.first ?? gusts?.withoutWind ?? gusts?.failures[0];
  const wanted = [
    ...(gusts?.filmOff === undefined
      ? []
      : [{ title: `${stormOff(shelter).mark} before`, gust: gusts.filmOff.gust }]),
    ...(first === undefined ? [] : [{ title: 'first to fail', gust: first.gust }]),
    { title: "site's gust", gust: site },
  ].filter((mark) => mark.gust > 0 && mark.gust <= most);
  const round: number[] = [];
  for (let count = 0; count * step[system] <= most + 1e-9; count += 1) round.push(count * step[system]);
  const own = wanted.map((mark) => mark.gust);
  const apart = (one: number): boolean => own.every((mark) => Math.abs(mark - one) > step[system] / 4);
  const stops = [...new Set([...round.filter(apart), ...own])].sort((a, b) => a - b);
  const nearest = (to: number): number =>
    stops.reduce(
      (best, stop, at) => (Math.abs(stop - to) < Math.abs((stops[best] ?? 0) - to) ? at : best),
      0,
    );
  return {
    stops: stops.map((stop) => ({ gust: stop, text: format(stop, 'speed', system) })),
    shown: nearest(gust ?? site),
    marks: wanted.map((mark) => ({ title: mark.title, stop: nearest(mark.gust) })),
  };
}

/** Shares of the limits for the drawing, where a part that has reached its limit is marked so. */
export function sharesAtGust({ uses }: AtGust): readonly PartUse[] {
  return uses.map(({ check, part, use }) => ({
    id: check,
    part,
    utilisation: use >= reachedFrom ? Math.max(use, 1 + 1e-9) : use,
  }));
}

export function usesAtGust({ uses }: AtGust): readonly UseAtGust[] {
  return uses.map((one) => ({
    part: one.part,
    what: one.what,
    check: one.check,
    use: one.use,
    useText: usedText(one.use),
    state: one.use >= reachedFrom ? 'reached' : one.use > near ? 'near' : 'holds',
    meant: one.sacrificial,
  }));
}

const named = ({ what, use }: GustUse): string => `${what} (${usedText(use)})`;

/** Which parts have reached their limit, in a sentence. */
export function gustSentence({ gust, uses, breaks }: AtGust, system: System): string {
  const at = `At a gust of ${format(gust, 'speed', system)}`;
  const over = uses.filter(({ use }) => use >= reachedFrom);
  const [hardest] = uses;
  const parts =
    hardest === undefined
      ? `${at} there is nothing with a limit to compare.`
      : over.length === 0
        ? `${at} none of ${uses.length} limits is reached; the nearest: ${named(hardest)}.`
        : `${at} ${over.length} of ${uses.length} limits ${over.length === 1 ? 'is' : 'are'} reached: ${over.map(named).join('; ')}.`;
  return breaks === undefined
    ? parts
    : `${parts} The frame as a whole ${breaks.status === 'gives way' ? 'gives way' : 'finds no balance'} before that gust, under ${breaks.loadCase}; limits are read from the loads it holds.`;
}
