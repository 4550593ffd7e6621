export type { LoadMipSolver, MipSolver } from './cutting/exact.ts';
export { cutStock, type ExactOptions } from './cutting/exact.ts';
export type { Bar, CutPlan, CutRequest, Demand, Stock } from './cutting/problem.ts';
export { cutStockQuick } from './cutting/quick.ts';
