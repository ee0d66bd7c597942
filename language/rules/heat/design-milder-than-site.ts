import { rule } from '../define.js';
import { milderThan, tellMilder } from './listed-place.js';

export default rule({
  code: 'heat/design-milder-than-site',
  severity: 'warning',
  title: "design temperature milder than the site's",
  of: 'design',
  tier: 'meaning',
  *find(design, view) {
    const milder = milderThan(design, view, 'seen');
    if (milder) yield milder;
  },
  tell: tellMilder,
});
