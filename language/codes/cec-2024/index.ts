import { inBook } from '../clause.js';
import type { Edition } from '../edition.js';
import {
  cecCircuits,
  cecConductors,
  cecMinimum,
  cecPanel,
  cecServiceContinuous,
  cecVoltageDrop,
  livingArea,
  singleDwelling,
} from '../families/cec.js';

const at = inBook('CEC 2024');

/**
 * Managers of other loads than chargers came in with 2024, as a provincial list of changes and a municipal bulletin say.
 * The changed words of 8-200, 8-106 and 8-500 themselves were not seen: the authority is to be asked.
 */
export const cec2024: Edition = {
  name: 'cec-2024',
  title: 'Canadian Electrical Code, Part I (CSA C22.1), 2024',
  book: 'CEC 2024',
  divisor: at('8-100'),
  area: livingArea(at),
  methods: [singleDwelling(at)],
  minimum: cecMinimum(at),
  serviceContinuous: cecServiceContinuous(at),
  management: {
    credits: 'all-loads',
    basis: 'not-counted',
    share: 0.8,
    clause: at('8-106 11)', 'in-part'),
    others: at(
      "8-500, by a municipal bulletin; the rule's own words not seen",
      'doubtful',
      'ask the authority before relying on it',
    ),
    group: at('8-106 10)', 'in-part'),
    limit: at('8-104 6), municipal practice of 80 %', 'in-part'),
  },
  circuits: cecCircuits(at),
  conductors: cecConductors(at),
  voltageDrop: cecVoltageDrop(at),
  legs: at('8-108, balance of loads', 'memory'),
  panel: cecPanel(at),
};
