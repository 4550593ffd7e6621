// Makes test/reference/RESULTS.md from what the reference tests compared: `npm run reference`.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const folder = fileURLToPath(new URL('../../out/reference/', import.meta.url));
const files = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .sort();
const shown = (value) =>
  value === 0
    ? '0'
    : Math.abs(value) >= 1e6 || Math.abs(value) < 1e-3
      ? value.toExponential(4)
      : Number(value.toPrecision(6)).toString();
const cell = (text) => text.replace(/\|/g, '\\|').replace(/\s+/g, ' ');
const relations = {
  toBeCloseTo: '',
  toBe: '',
  toBeLessThan: '< ',
  toBeLessThanOrEqual: '≤ ',
  toBeGreaterThan: '> ',
  toBeGreaterThanOrEqual: '≥ ',
};

/** Tests that set two methods of this project against each other say so; they are told apart from the others. */
const ownMark = 'two own methods';

let total = 0;
let tests = 0;
const columns = '| check and its source | expected | got | difference |\n| --- | --- | --- | --- |';
const own = [];
const parts = files.map((name) => {
  const rows = JSON.parse(readFileSync(folder + name, 'utf8'));
  const byTest = new Map();
  for (const row of rows) byTest.set(row.test, [...(byTest.get(row.test) ?? []), row]);
  total += rows.length;
  tests += byTest.size;
  const linesOf = ([test, compared]) => {
    // A test that compares along a whole curve is told by its first comparisons.
    const told = compared.slice(0, 6).map((row) => {
      const exact = row.how === 'toBeCloseTo' || row.how === 'toBe';
      const difference = !exact
        ? ''
        : row.expected === 0
          ? shown(row.got)
          : `${((100 * (row.got - row.expected)) / Math.abs(row.expected)).toFixed(4)} %`;
      return `| ${cell(test)} | ${relations[row.how]}${shown(row.expected)} | ${shown(row.got)} | ${difference} |`;
    });
    return compared.length > 6
      ? [...told, `| … and ${compared.length - 6} more of the same test | | | |`]
      : told;
  };
  const isOwn = ([test]) => test.includes(ownMark);
  own.push(...[...byTest].filter(isOwn).flatMap(linesOf));
  const lines = [...byTest].filter((one) => !isOwn(one)).flatMap(linesOf);
  return `## ${name.replace('.json', '')}\n\n${columns}\n${lines.join('\n')}\n`;
});

const head = `# What was compared with things outside the project

Made by \`npm run reference\` from the tests in this folder; do not edit. Each test names its source, or says
"from memory" or "common practice, no source"; values without a unit in their title are SI. Where a test allows a
difference, the expected value stands in its title and the table shows the difference and the most it may be. What
compares two methods of this project with each other proves less; it stands apart at the end. ${tests} checks with
${total} comparisons.
`;
const last = `## Two methods of this project against each other\n\n${columns}\n${own.join('\n')}\n`;
writeFileSync(
  fileURLToPath(new URL('RESULTS.md', import.meta.url)),
  `${head}\n${[...parts, last].join('\n')}`,
);
process.stdout.write(`${tests} checks with ${total} comparisons\n`);
