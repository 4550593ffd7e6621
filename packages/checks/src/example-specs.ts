import { specTexts } from './generated/specs.ts';

/** Two whole specs that show what a check asks: one that holds, and one that fails by it. */
export interface ExampleSpecs {
  readonly good: string;
  readonly bad: string;
}

/** The two specs of a check, as they stand in `packages/checks/specs`; undefined when there is no such pair. */
export function exampleSpecs(id: string): ExampleSpecs | undefined {
  const good = specTexts[`${id}.good`];
  const bad = specTexts[`${id}.bad`];
  return good === undefined || bad === undefined ? undefined : { good, bad };
}
