import { rule } from '../define.js';
import { milderThan, tellMilder } from './listed-place.js';

export default rule({
  code: 'heat/design-to-confirm',
  severity: 'info',
  title: 'design temperature to be confirmed',
  of: 'design',
  tier: 'meaning',
  *find(design, view) {
    // A value that was seen in print goes before one from memory.
    if (milderThan(design, view, 'seen')) return;
    const milder = milderThan(design, view, 'memory');
    if (milder) yield milder;
  },
  tell: tellMilder,
});
