import { at, rule } from '../define.js';

export default rule({
  code: 'input/rows-out-of-order',
  severity: 'error',
  title: 'table rows repeated or out of order',
  of: 'heat-pump',
  tier: 'meaning',
  *find(pump) {
    const tables = { performance: pump.performance, minimum: pump.minimum, rated: pump.rated, cooling: pump.cooling };
    for (const [property, rows] of Object.entries(tables)) {
      const temperatures = rows?.map(r => r.outdoor) ?? [];
      const repeated = temperatures.find((t, i) => temperatures.indexOf(t) < i);
      const steps = temperatures.slice(1).map((t, i) => Math.sign(t - temperatures[i]));
      if (repeated !== undefined || new Set(steps).size > 1) yield { pump, property, repeated };
    }
  },
  tell: ({ pump, property, repeated }, say) => ({
    at: at(pump, property),
    message:
      repeated === undefined
        ? `the rows of ${property} jump between warm and cold: a temperature or its sign is likely wrong`
        : `${property} has two rows for ${say(repeated, 'temperature')}, and only one of them can hold`,
  }),
});
