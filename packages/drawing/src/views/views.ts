import type { Shelter } from '@tautline/shelter';
import type { Drawing, ViewOptions } from '../scene/shapes.ts';
import { bendTemplateView } from './bend-template.ts';
import { endView } from './end.ts';
import { planView } from './plan.ts';
import { sectionView } from './section.ts';
import { settingOutView } from './setting-out.ts';
import { sideView } from './side.ts';

/** Every view of a shelter by name; undefined where a view has nothing to show (no pipe to bend). */
export const views = {
  section: sectionView,
  plan: planView,
  side: sideView,
  end: endView,
  'setting-out': settingOutView,
  'bend-template': bendTemplateView,
} as const satisfies Readonly<
  Record<string, (shelter: Shelter, options: ViewOptions) => Drawing | undefined>
>;

export type ViewName = keyof typeof views;
