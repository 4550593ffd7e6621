import type { LoadMipSolver } from '@tautline/takeoff';
import { loadHighs } from '@tautline/takeoff/highs';

/** The cutting solver, loaded once and only when something is cut. */
export const loadSolver: LoadMipSolver = () => {
  loaded ??= loadHighs();
  return loaded;
};

let loaded: ReturnType<LoadMipSolver> | undefined;
