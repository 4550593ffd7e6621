/**
 * Loads the integer-program solver, 3.5 MB of WebAssembly, only when it is asked for. The packages own
 * way to its `.wasm` works in Node and in a bundler that copies the file beside the script; a caller
 * that has read the file itself hands over the bytes.
 */
import type { MipSolver } from './cutting/exact.ts';

export async function loadHighs(wasmBinary?: Uint8Array): Promise<MipSolver> {
  const { default: load } = await import('highs');
  return (await load(wasmBinary ? { wasmBinary } : {})) as unknown as MipSolver;
}
