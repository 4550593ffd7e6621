import { run } from '../src/index.ts';

/** Runs a command as a person at a terminal does, and gives back what it says. */
export async function tell(...words: string[]): Promise<{ code: number; out: string; err: string }> {
  let [out, err] = ['', ''];
  const code = await run(words, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
  });
  return { code, out, err };
}
