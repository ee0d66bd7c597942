import type { ClauseOf } from '../clause.js';
import type { AreaRule, MinimumService, PanelRule, ServiceContinuous, VoltageDropRule } from '../edition.js';

/** Outside dimensions; porches and garages are not storeys; an unfinished storey counts as fit for later use. */
export const necArea = (at: ClauseOf, number: string): AreaRule => ({
  measured: 'outside',
  aboveGrade: 1,
  belowGrade: 1,
  leastHeight: 0,
  clause: at(number, 'in-part'),
});

export const necMinimum = (at: ClauseOf): MinimumService => ({
  steps: [{ from: 0, rating: 100 }],
  clause: at('230.79(C)'),
});

export const necServiceContinuous = (at: ClauseOf): ServiceContinuous => ({
  factor: 1.25,
  clause: at('230.42(A), 215.2, 215.3'),
});

export const necVoltageDrop = (at: ClauseOf): VoltageDropRule => ({
  branch: 0.03,
  total: 0.05,
  standing: 'recommended',
  shareOfBreaker: 0.8,
  clause: at('210.19 and 215.2, informational notes'),
});

export const necPanel = (at: ClauseOf): PanelRule => ({
  positions: [],
  spare: 0,
  clause: at('408.54'),
  tandem: at('408.54'),
});
