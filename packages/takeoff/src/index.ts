export type { LoadMipSolver, MipSolver } from './cutting/exact.ts';
export { cutStock, type ExactOptions } from './cutting/exact.ts';
export type { Bar, CutPlan, CutRequest, Demand, Stock } from './cutting/problem.ts';
export { cutStockQuick } from './cutting/quick.ts';
export {
  type Gap,
  type Group,
  type Takeoff,
  type TakeoffLine,
  type TakeoffPiece,
  type Told,
  tell,
} from './line.ts';
export {
  buyText,
  csvCell,
  cutText,
  handText,
  materialsCsv,
  materialsJson,
  materialsPlain,
  materialsTable,
} from './listing.ts';
export {
  type Cost,
  cutRequestOf,
  groundOf,
  type MaterialLine,
  type MaterialOptions,
  type Materials,
  materials,
  materialsExact,
  materialsExactOf,
  materialsOf,
} from './materials.ts';
export { moneyText } from './money.ts';
export { type Left, leftOnHand, stockOnHand } from './on-hand.ts';
export { type PriceCsv, pricesFromCsv } from './price-csv.ts';
export { type PriceList, priceKey } from './prices.ts';
export { rangeTakeoff, type Taken, takenBy } from './range.ts';
export { type Counted, takeoffOfSeveral } from './several.ts';
export { takeoff } from './takeoff.ts';
