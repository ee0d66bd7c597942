import { inBook } from '../clause.js';
import type { Edition } from '../edition.js';
import { necCircuits } from '../families/nec-circuits.js';
import { necConductors } from '../families/nec-conductors.js';
import { necArea, necMinimum, necPanel, necServiceContinuous, necVoltageDrop } from '../families/nec-rest.js';
import { optionalDwelling, standardDwelling, type NecServiceDifferences } from '../families/nec-service.js';
import { standardRatings } from '../tables/standard-ratings.js';

const at = inBook('NEC 2020');

/** No article of its own counts the vehicle charger yet: it counts as its rating or its restricted setting. */
const service: NecServiceDifferences = {
  at,
  article: 220,
  perSquareFoot: 3,
  lighting: at('220.14(J)', 'memory'),
  lightingDemand: at('Table 220.42'),
  poolInFull: 10000,
  vehicle: { atLeast: 0, clause: at('625.42', 'in-part') },
  vehicleInOptional: at('220.82(B), charger outside the pool', 'doubtful'),
};

export const nec2020: Edition = {
  name: 'nec-2020',
  title: 'National Electrical Code (NFPA 70), 2020',
  book: 'NEC 2020',
  divisor: at('220.5(A)'),
  area: necArea(at, '220.12'),
  methods: [optionalDwelling(service), standardDwelling(service)],
  minimum: necMinimum(at),
  serviceContinuous: necServiceContinuous(at),
  management: {
    credits: 'vehicle-charging',
    basis: 'set-point',
    share: 0.8,
    clause: at('625.42(A)', 'in-part'),
    group: at('625.42(A)', 'in-part'),
    limit: at('210.20(A), 215.3, set-point as a continuous load'),
  },
  circuits: necCircuits(at),
  conductors: necConductors(at, { ratings: standardRatings, clause: at('240.6(A)') }),
  voltageDrop: necVoltageDrop(at),
  legs: at('210.11(B)'),
  panel: necPanel(at),
};
