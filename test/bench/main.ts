// npm run bench [-- --json] [-- --only NAME ...]: how fast and how large what was built is. Build before: it measures dist.
import { parseArgs } from 'node:util';
import { bundles } from './bundles.js';
import { burst } from './burst.js';
import { coldCheck } from './cold-check.js';
import { summarized, type Figure, type Summary } from './figure.js';
import { keystroke } from './keystroke.js';
import { reference } from './reference.js';
import { memory } from './server-memory.js';

/** In the order they are told. What later work makes measurable (the hourly year, say) is one more row. */
const figures: readonly Figure[] = [
  reference,
  keystroke({ lines: 300, goal: 'median 30, p95 60' }),
  keystroke({ lines: 3000, goal: 'median 400' }),
  burst({ lines: 3000, goal: 'p95 1000' }),
  coldCheck,
  memory,
  ...bundles,
];

const { values } = parseArgs({ options: { json: { type: 'boolean' }, only: { type: 'string', multiple: true } } });
const unknown = values.only?.filter(name => !figures.some(f => f.name === name)) ?? [];
if (unknown.length) {
  console.error(`There is no figure ${unknown.join(', ')}. There are ${figures.map(f => f.name).join(', ')}.`);
  process.exit(2);
}

const told: Summary[] = [];
for (const figure of figures) {
  if (values.only && !values.only.includes(figure.name)) continue;
  if (!values.json) process.stderr.write(`${figure.name} …\n`);
  told.push(summarized(figure, await figure.measure()));
}
if (values.json) console.log(JSON.stringify(told.map(({ name, unit, median, p95 }) => ({ name, unit, median, p95 }))));
else {
  const shown = (n: number): string => n.toPrecision(n >= 1000 ? 4 : 3);
  for (const [name, unit, median, p95, runs, goal] of [
    ['name', 'unit', 'median', 'p95', 'runs', 'goal: at most'],
    ...told.map(t => [t.name, t.unit, shown(t.median), shown(t.p95), String(t.runs), t.goal]),
  ])
    console.log(
      `${name.padEnd(18)} ${unit.padEnd(6)} ${median.padStart(8)} ${p95.padStart(8)} ${runs.padStart(6)}   ${goal}`,
    );
}
