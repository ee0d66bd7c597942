import type { Rule } from '../define.js';
import auxiliaryBeyondNeed from './auxiliary-beyond-need.js';
import auxiliaryNotStaged from './auxiliary-not-staged.js';
import auxiliaryUndersized from './auxiliary-undersized.js';
import backupTooSmall from './backup-too-small.js';
import compressorLockedOut from './compressor-locked-out.js';
import designMilderThanCode from './design-milder-than-code.js';
import designMilderThanSite from './design-milder-than-site.js';
import designToConfirm from './design-to-confirm.js';
import equipmentUndersized from './equipment-undersized.js';
import fossilLeft from './fossil-left.js';
import loadDiffersFromAudit from './load-differs-from-audit.js';
import lockoutGap from './lockout-gap.js';
import noCodeDesign from './no-code-design.js';
import noHeat from './no-heat.js';
import tableTooShort from './table-too-short.js';
import thinMargin from './thin-margin.js';

export const heatRules: readonly Rule[] = [
  auxiliaryBeyondNeed,
  auxiliaryNotStaged,
  auxiliaryUndersized,
  backupTooSmall,
  compressorLockedOut,
  designMilderThanCode,
  designMilderThanSite,
  designToConfirm,
  equipmentUndersized,
  fossilLeft,
  loadDiffersFromAudit,
  lockoutGap,
  noCodeDesign,
  noHeat,
  tableTooShort,
  thinMargin,
];
