/** The figures by which variants are compared, taken from what was worked out of each. */
import type { Evaluation } from '@tautline/checks';
import { format, type System } from '@tautline/quantity';
import { clearHeightAt, type Shelter } from '@tautline/shelter';
import type { Materials } from '@tautline/takeoff';
import { governingOf } from '../figures.ts';
import { firstFailureOf } from '../first-failure.ts';
import type { FirstFailure } from '../revision.ts';
import type { Axis } from './axes.ts';

/** Plain data; what could not be worked out is absent, and `problem` says why where nothing could. */
export interface VariantFigures {
  readonly index: number;
  readonly problem?: string;
  readonly errors: number;
  readonly warnings: number;
  readonly governing?: { readonly id: string; readonly utilisation: number };
  readonly firstFailure?: FirstFailure;
  /** m, at the place `headroomPlace` tells. */
  readonly headroom?: number;
  readonly cost?: {
    readonly total: number;
    readonly complete: boolean;
    readonly currency?: string;
    /** What has no price or could not be counted. */
    readonly missing: readonly string[];
  };
}

/** Of the variant at a place in the grid, which could be built and was worked out and counted. */
export function variantFigures(index: number, evaluation: Evaluation, counted: Materials): VariantFigures {
  const { shelter, findings } = evaluation;
  const count = (level: string): number => findings.filter(({ severity }) => severity === level).length;
  const governing = governingOf(findings);
  const firstFailure = firstFailureOf(evaluation);
  const headroom = clearHeightAt(shelter, headroomPlace(shelter));
  const { cost, currency, gaps } = counted;
  return {
    index,
    errors: count('error'),
    warnings: count('warning'),
    ...(governing === undefined
      ? {}
      : { governing: { id: governing.id, utilisation: governing.utilisation } }),
    ...(firstFailure === undefined ? {} : { firstFailure }),
    ...(headroom === undefined ? {} : { headroom }),
    ...(cost.shares.length === 0
      ? {}
      : {
          cost: {
            total: cost.total,
            complete: cost.complete,
            missing: [...cost.missing, ...cost.tooLong, ...gaps.map(({ what }) => withoutCounts(what))],
            ...(currency === undefined ? {} : { currency }),
          },
        }),
  };
}

/** What lacks a price is the same thing in every variant, however many of it there are. */
const withoutCounts = (what: string): string => what.replace(/\b\d+ /g, '');

/** Distance from the left side at which headroom is compared, m: where the spec first requires some, or the middle. */
export function headroomPlace(shelter: Shelter): number {
  const required = shelter.requirements.find(({ subject }) => subject === 'headroom');
  return required?.at ?? shelter.width / 2;
}

/** What is the same in every variant, so that nobody takes the best of these for the best there is. */
export function heldFixed(
  { name, site }: Shelter,
  axes: readonly Axis[],
  on: string | undefined,
  system: System,
): string[] {
  const gust = format(site.gust, 'speed', system);
  const snow = format(site.groundSnow, 'pressure', system);
  return [
    `every fact of ${name} other than ${axes.map(({ label }) => label).join(', ')}`,
    `the site ${site.id}: gust ${gust}, soil ${site.soil}, ground snow ${snow}, load basis ${site.basis}`,
    `prices and stock on hand as they are; ${on === undefined ? 'ages not counted' : `ages counted to ${on}`}`,
    'Values the program assumes (places of joints, straps, feet) are worked out anew for each variant.',
  ];
}
