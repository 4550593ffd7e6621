import { reading } from './reading.mjs';
import { sheet } from './sheet.mjs';

/** In order: later steps stand on what earlier ones opened. */
export const steps = [...reading, ...sheet];
