import { inBook } from '../clause.js';
import type { Edition } from '../edition.js';
import { necCircuits } from '../families/nec-circuits.js';
import { necConductors } from '../families/nec-conductors.js';
import { necArea, necMinimum, necPanel, necServiceContinuous, necVoltageDrop } from '../families/nec-rest.js';
import { optionalDwelling, standardDwelling, type NecServiceDifferences } from '../families/nec-service.js';
import { standardRatingsWithTen } from '../tables/standard-ratings.js';

const at = inBook('NEC 2026');

/** Load calculations moved to article 120: less for light, less in full, the charger at its rating without demand factor. */
const service: NecServiceDifferences = {
  at,
  article: 120,
  perSquareFoot: 2,
  lighting: at('120.41'),
  lightingDemand: at('Table 120.45', 'memory'),
  poolInFull: 8000,
  vehicle: { atLeast: 0, clause: at('120.57', 'doubtful', '7200 VA only where the rating is unknown') },
  vehicleInOptional: at('120.82, charger at 100 %', 'in-part'),
};

export const nec2026: Edition = {
  name: 'nec-2026',
  title: 'National Electrical Code (NFPA 70), 2026',
  book: 'NEC 2026',
  divisor: at('120.5(A)', 'memory'),
  area: necArea(at, '120.5(C)'),
  methods: [optionalDwelling(service), standardDwelling(service)],
  minimum: necMinimum(at),
  serviceContinuous: necServiceContinuous(at),
  management: {
    credits: 'all-loads',
    basis: 'set-point',
    share: 0.8,
    clause: at('120.7, article 130 Part II'),
    device: {
      requires:
        'asks for a listed power control system (UL 3141), its control setting restricted from the user, safe on malfunction',
      clause: at('article 130 Part II, 130.30 and 130.50 to 130.80', 'in-part'),
    },
    group: at('120.7, article 130 Part II'),
    limit: at('130.50 to 130.80, control setting as a continuous load', 'in-part'),
  },
  circuits: necCircuits(at),
  conductors: necConductors(at, { ratings: standardRatingsWithTen, clause: at('240.6(A)') }),
  voltageDrop: necVoltageDrop(at),
  legs: at('210.11(B)'),
  panel: necPanel(at),
};
