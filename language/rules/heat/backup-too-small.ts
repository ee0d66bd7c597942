import { at, rule } from '../define.js';
import { shortfallOf } from './shortfall.js';

export default rule({
  code: 'heat/backup-too-small',
  severity: 'warning',
  title: 'full backup does not carry the load',
  of: 'auxiliary',
  tier: 'design',
  *find(strip, view) {
    if (strip.role !== 'full-backup') return;
    const margin = view.result('heating.backup-margin');
    const load = view.result('heating.design-load');
    const outdoor = view.house.design.find(d => d.name === 'code')?.outdoor;
    // Where heat is missing even with the heat pump, that is the finding.
    if (margin === undefined || margin > -0.5 || load === undefined || outdoor === undefined || shortfallOf(view))
      return;
    yield { strip, short: 0 - margin, load, outdoor };
  },
  tell: ({ strip, short, load, outdoor }, say) => ({
    at: at(strip, 'output'),
    message: `as full backup the auxiliary is ${say(short, 'heat-flow')} short when the heat pump stops: load ${say(load, 'heat-flow')} at ${say(outdoor, 'temperature')}, auxiliary ${say(load - short, 'heat-flow')}`,
  }),
});
