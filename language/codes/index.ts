import { cec2021 } from './cec-2021/index.js';
import { cec2024 } from './cec-2024/index.js';
import type { Edition, EditionName } from './edition.js';
import { nec2020 } from './nec-2020/index.js';
import { nec2023 } from './nec-2023/index.js';
import { nec2026 } from './nec-2026/index.js';

export { cite, type Clause } from './clause.js';
export type { Duty } from './circuit-rules.js';
export type { Cable } from './conductor-rules.js';
export { editionNames, type Edition, type EditionName, type ManagementRule } from './edition.js';
export type {
  BasicAndAppliances,
  HvacPart,
  HvacSelection,
  OptionalDwelling,
  ServiceMethod,
  StandardDwelling,
  UnitLoads,
} from './service-method.js';
export { isFromMemory, tableAmpacity } from './tables/ampacity.js';
export {
  conductorSizes,
  sizeInWords,
  type ConductorSize,
  type Metal,
  type RatedTemperature,
} from './tables/conductor-sizes.js';
export { resistancePerMetre } from './tables/resistance.js';

const EDITIONS: Readonly<Record<EditionName, Edition>> = {
  'cec-2021': cec2021,
  'cec-2024': cec2024,
  'nec-2020': nec2020,
  'nec-2023': nec2023,
  'nec-2026': nec2026,
};

export const edition = (name: EditionName): Edition => EDITIONS[name];
