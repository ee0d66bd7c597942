import { inBook } from '../clause.js';
import type { Edition } from '../edition.js';
import { necCircuits } from '../families/nec-circuits.js';
import { necConductors } from '../families/nec-conductors.js';
import { necArea, necMinimum, necPanel, necServiceContinuous, necVoltageDrop } from '../families/nec-rest.js';
import { optionalDwelling, standardDwelling, type NecServiceDifferences } from '../families/nec-service.js';
import { standardRatingsWithTen } from '../tables/standard-ratings.js';

const at = inBook('NEC 2023');

/** The vehicle charger has its own article; whether the optional method takes it into the pool stays an open question. */
const service: NecServiceDifferences = {
  at,
  article: 220,
  perSquareFoot: 3,
  lighting: at('220.41'),
  lightingDemand: at('Table 220.45', 'in-part'),
  poolInFull: 10000,
  vehicle: { atLeast: 7200, clause: at('220.57') },
  vehicleInOptional: at('220.82(B), charger outside the pool', 'doubtful'),
};

export const nec2023: Edition = {
  name: 'nec-2023',
  title: 'National Electrical Code (NFPA 70), 2023',
  book: 'NEC 2023',
  divisor: at('220.5(A)'),
  area: necArea(at, '220.5(C)'),
  methods: [optionalDwelling(service), standardDwelling(service)],
  minimum: necMinimum(at),
  serviceContinuous: necServiceContinuous(at),
  management: {
    credits: 'all-loads',
    basis: 'set-point',
    share: 0.8,
    clause: at('220.70, 750.30'),
    device: {
      requires:
        'asks for an energy management system whose setting is marked and restricted from the user, and which stops the load on malfunction',
      clause: at('750.30(C)(1) to (4)', 'memory'),
    },
    group: at('220.70, 625.42(A)'),
    limit: at('220.70, 750.30(C), set-point as a continuous load'),
  },
  circuits: necCircuits(at),
  conductors: necConductors(at, { ratings: standardRatingsWithTen, clause: at('240.6(A)') }),
  voltageDrop: necVoltageDrop(at),
  legs: at('210.11(B)'),
  panel: necPanel(at),
};
