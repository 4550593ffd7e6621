export type { Bow, BowGiven, BowPoint } from "./bow.ts";
export { pinnedBow } from "./elastica.ts";
export { positive, type Refusal, refuse } from "./outcome.ts";
export * from "./plane-frame.ts";
export { rectangle, roundHollow, roundSolid, type Section } from "./section.ts";
