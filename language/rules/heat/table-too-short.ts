import { at, rule } from '../define.js';

export default rule({
  code: 'heat/table-too-short',
  severity: 'warning',
  title: 'performance table ends above the design temperature',
  of: 'heat-pump',
  tier: 'design',
  *find(heatPump, view) {
    const design = view.house.design.find(d => d.name === 'code');
    if (!design) return;
    const last = Math.min(...heatPump.performance.map(p => p.outdoor));
    // A heat pump that stops before its table ends needs no colder row.
    if (last <= design.outdoor || (heatPump.cutOut !== undefined && heatPump.cutOut >= last)) return;
    const alone = view.house.heating.heatPump.length === 1;
    yield { heatPump, last, design, beyond: alone ? view.result('heating.heat-pump-beyond-table') : undefined };
  },
  tell: ({ heatPump, last, design, beyond }, say) => ({
    at: at(heatPump, 'performance'),
    message:
      `the table ends at ${say(last, 'temperature')}, ${say(last - design.outdoor, 'temperature-difference')} above the design temperature of ${say(design.outdoor, 'temperature')}: nothing is credited below it` +
      (beyond === undefined ? '' : ` (its last line, carried on, would give ${say(beyond, 'heat-flow')})`),
    related: [{ at: at(design, 'outdoor'), message: 'the design temperature' }],
  }),
});
