/** A night of the laws: random houses by number, told as a table; goes on where an earlier run with the seed left off. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { laws } from './laws.ts';
import { randomHouse } from './random.ts';
import { examplesIn } from './subject.ts';
import { survey } from './survey.ts';

interface Progress {
  next: number;
  houses: number;
  cases: Record<string, number>;
  breaks: string[];
}

const [, , repository, wanted = '10000', seedText = '15'] = process.argv;
const seed = Number(seedText);
const kept = `${repository}/out/laws-${seed}.json`;
const progress: Progress = existsSync(kept)
  ? (JSON.parse(readFileSync(kept, 'utf8')) as Progress)
  : { next: 0, houses: 0, cases: {}, breaks: [] };
const models = (await examplesIn(`${repository}/examples/`)).filter(({ from }) => !from.includes('flawed'));

while (progress.next < Number(wanted)) {
  const { next } = progress;
  // Two laws a house, in turn; each tenth house is ranked by gust as well.
  const found = survey(
    [randomHouse(models, seed, next)],
    (_, law) => (next + law) % 9 === 0,
    () => next % 10 === 0,
  );
  progress.next += 1;
  progress.houses += found.houses;
  for (const [name, cases] of found.cases) progress.cases[name] = (progress.cases[name] ?? 0) + cases;
  progress.breaks.push(...found.breaks);
  if (progress.next % 20 === 0 || progress.next >= Number(wanted))
    writeFileSync(kept, JSON.stringify(progress));
}

console.log(
  `${progress.houses} houses of ${progress.next} drawn, seed ${seed}\n\n| law | cases | breaks |\n| --- | --- | --- |`,
);
for (const { name } of laws)
  console.log(
    `| ${name} | ${progress.cases[name] ?? 0} | ${progress.breaks.filter((one) => one.includes(`: ${name}: `)).length} |`,
  );
console.log(progress.breaks.map((one) => `\n${one}`).join(''));
