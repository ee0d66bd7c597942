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

const at = inBook('CEC 2021');

export const cec2021: Edition = {
  name: 'cec-2021',
  title: 'Canadian Electrical Code, Part I (CSA C22.1), 2021',
  book: 'CEC 2021',
  divisor: at('8-100'),
  area: livingArea(at),
  methods: [singleDwelling(at)],
  minimum: cecMinimum(at),
  serviceContinuous: cecServiceContinuous(at),
  management: {
    credits: 'vehicle-charging',
    basis: 'not-counted',
    share: 0.8,
    clause: at('8-106 11), 8-500', 'in-part'),
    group: at('8-106 10)'),
    limit: at('8-104 6), municipal practice of 80 %', 'in-part'),
  },
  circuits: cecCircuits(at),
  conductors: cecConductors(at),
  voltageDrop: cecVoltageDrop(at),
  legs: at('8-108, balance of loads', 'memory'),
  panel: cecPanel(at),
};
