import {
  block,
  choice,
  choices,
  count,
  date,
  file,
  flag,
  monthDay,
  months,
  quantity,
  reference,
  references,
  statement,
  text,
  time,
} from './define.js';

const on = reference(['circuit'], { doc: 'Circuit that feeds it.' });
const voltage = quantity('voltage', {
  doc: 'Rated voltage.',
  within: ['100 V', '250 V'],
  default: '240 V',
  source: 'common practice: 240 V',
});

/** American wire gauge and kcmil sizes as names, thinnest first. */
const conductorSizes = [
  'awg-14',
  'awg-12',
  'awg-10',
  'awg-8',
  'awg-6',
  'awg-4',
  'awg-3',
  'awg-2',
  'awg-1',
  'awg-1-0',
  'awg-2-0',
  'awg-3-0',
  'awg-4-0',
  'kcmil-250',
  'kcmil-300',
  'kcmil-350',
  'kcmil-400',
  'kcmil-500',
  'kcmil-600',
] as const;

/** Service, panels, circuits, loads, vehicles and the manager that sheds them. */
export const electricalBlocks = [
  block('electrical', {
    section: true,
    doc: 'The electrical service and all that hangs on it. Work on services and panels is for licensed electricians; the authority having jurisdiction decides.',
    also: ['wiring', 'power'],
    holds: [
      'service',
      'panel',
      'load',
      'evse',
      'vehicle',
      'load-manager',
      'meter-data',
      'battery',
      'generator',
      'hot-tub',
      'schedule',
    ],
    properties: {},
  }),
  block('service', {
    doc: 'The consumer’s service: rating, conductors, meter.',
    once: true,
    also: ['electrical service', 'main', 'service entrance'],
    properties: {
      rating: quantity('current', {
        doc: 'Rating of the service: the smaller of main breaker and conductors.',
        within: ['30 A', '600 A'],
        required: true,
        typical: ['100 A', '200 A'],
      }),
      voltage: quantity('voltage', {
        doc: 'Voltage across both legs.',
        within: ['200 V', '250 V'],
        default: '240 V',
        source: 'CEC 8-100, NEC 220.5(A)',
      }),
      conductor: choice(conductorSizes, { doc: 'Size of the service conductors.' }),
      metal: choice(['copper', 'aluminium'], {
        doc: 'Metal of the service conductors.',
        default: 'copper',
        source: 'assumed',
      }),
      'meter-socket': quantity('current', { doc: 'Rating of the meter socket.', within: ['60 A', '600 A'] }),
      'drop-length': quantity('length', {
        doc: 'Length of the service drop or lateral to the transformer.',
        within: ['0 m', '300 m'],
      }),
      'measured-peak': quantity('current', {
        doc: 'Highest measured demand of the last twelve months, on the more loaded leg.',
        within: ['0 A', '600 A'],
      }),
    },
  }),
  block('panel', {
    doc: 'Panelboard with its bus, main breaker and spaces. A panel that a circuit feeds is a subpanel.',
    also: ['panelboard', 'breaker panel', 'load centre', 'subpanel'],
    holds: ['circuit'],
    properties: {
      bus: quantity('current', {
        doc: 'Rating of the busbar.',
        within: ['30 A', '600 A'],
        required: true,
        typical: ['100 A', '125 A', '200 A'],
      }),
      'main-breaker': quantity('current', {
        doc: 'Rating of the main breaker, when it has one.',
        within: ['15 A', '600 A'],
      }),
      spaces: count({ doc: 'Full-size spaces for breakers.', within: [2, 84], required: true }),
      'fed-by': reference(['circuit'], { doc: 'Circuit that feeds it, for a subpanel.' }),
      tandem: count({
        doc: 'Spaces that the listing of the panel allows for tandem breakers.',
        within: [0, 84],
        default: 0,
        source: 'assumed: none',
      }),
      'main-position': choice(['top', 'bottom', 'centre'], { doc: 'Where the main breaker feeds the bus.' }),
    },
  }),
  block('circuit', {
    doc: 'Branch circuit or feeder: breaker and conductor. What it serves is told by the loads that name it.',
    also: ['breaker', 'branch circuit', 'feeder'],
    properties: {
      breaker: quantity('current', {
        doc: 'Rating of the breaker.',
        within: ['10 A', '400 A'],
        required: true,
        typical: ['15 A', '20 A', '30 A', '40 A', '50 A', '60 A'],
      }),
      poles: count({ doc: 'Poles of the breaker: 1 for 120 V, 2 for 240 V.', within: [1, 2], required: true }),
      conductor: choice(conductorSizes, { doc: 'Size of the conductors.', required: true }),
      metal: choice(['copper', 'aluminium'], {
        doc: 'Metal of the conductors.',
        default: 'copper',
        source: 'common practice for branch circuits',
      }),
      insulation: quantity('temperature', {
        doc: 'Temperature rating of the insulation.',
        within: ['60 °C', '105 °C'],
        default: '90 °C',
        source: 'common practice: 90 °C cable',
      }),
      terminals: quantity('temperature', {
        doc: 'Temperature marked on the terminations; unmarked ones count as 60 °C up to 100 A.',
        within: ['60 °C', '90 °C'],
      }),
      cable: choice(['non-metallic', 'armoured', 'conduit', 'underground'], {
        doc: 'Wiring method.',
        default: 'non-metallic',
        source: 'common practice in houses',
      }),
      length: quantity('length', { doc: 'Length one way.', within: ['0.5 m', '300 m'] }),
      ambient: quantity('temperature', {
        doc: 'Warmest surroundings of the conductors.',
        within: ['-40 °C', '70 °C'],
        default: '30 °C',
        source: 'CEC Table 2, NEC Table 310.16',
      }),
      bundled: count({
        doc: 'Current-carrying conductors together in the cable or raceway.',
        within: [1, 60],
        default: 3,
        source: 'CEC Table 2, NEC Table 310.16',
      }),
      'fully-rated': flag({
        doc: 'Whether breaker and panel are marked for continuous load at 100 %.',
        default: false,
        source: 'CEC 8-104: unmarked counts as 80 %',
      }),
      tandem: flag({ doc: 'Whether the breaker is one half of a tandem.', default: false, source: 'assumed' }),
      position: count({ doc: 'Number of its upper space in the panel.', within: [1, 84] }),
      protection: choice(['none', 'gfci', 'afci', 'dual'], {
        doc: 'Ground-fault or arc-fault protection at the breaker.',
      }),
      leg: choice(['A', 'B'], { doc: 'Leg of a single-pole breaker.' }),
    },
  }),
  block('load', {
    doc: 'Anything that takes electricity and has no block of its own.',
    also: ['appliance', 'range', 'dryer', 'stove', 'lights'],
    properties: {
      kind: choice(
        [
          'lighting-and-receptacles',
          'range',
          'cooktop',
          'oven',
          'dryer',
          'dishwasher',
          'laundry',
          'refrigerator',
          'pump',
          'pool',
          'sauna',
          'other',
        ],
        { doc: 'What it is; the codes count some kinds in their own way.', required: true },
      ),
      rating: quantity('power', { doc: 'Nameplate power.', within: ['10 W', '40 kW'] }),
      fuel: choice(['electricity', 'natural-gas', 'propane'], {
        doc: 'What it uses.',
        default: 'electricity',
        source: 'assumed',
      }),
      voltage,
      continuous: flag({ doc: 'Whether it runs three hours or more at a time.', default: false, source: 'assumed' }),
      motor: flag({ doc: 'Whether it is mainly a motor.', default: false, source: 'assumed' }),
      'locked-out-by': reference(['load', 'evse', 'auxiliary', 'hot-tub', 'heat-pump', 'water-heater'], {
        doc: 'Load with which an interlock keeps it from running at once.',
      }),
      'small-appliance-circuits': count({
        doc: 'Circuits for small appliances in kitchen and dining, for the lighting load of the United States code.',
        within: [2, 12],
        default: 2,
        source: 'NEC 210.11(C)(1)',
      }),
      'laundry-circuits': count({
        doc: 'Laundry circuits, for the lighting load of the United States code.',
        within: [1, 4],
        default: 1,
        source: 'NEC 210.11(C)(2)',
      }),
      daily: quantity('energy-rate', { doc: 'Energy used on an average day.', within: ['0 kWh/d', '100 kWh/d'] }),
      annual: quantity('annual-energy', { doc: 'Energy used in a year.', within: ['0 kWh/yr', '40000 kWh/yr'] }),
      on,
    },
  }),
  block('evse', {
    doc: 'Charger of an electric vehicle.',
    also: ['EV charger', 'vehicle charger', 'EVSE', 'charging station'],
    properties: {
      setting: quantity('current', {
        doc: 'Current to which it is set.',
        within: ['6 A', '100 A'],
        required: true,
        typical: ['16 A', '24 A', '32 A', '40 A'],
      }),
      voltage,
      'minimum-current': quantity('current', {
        doc: 'Lowest current of a charger that modulates; left out when it can only switch.',
        within: ['0 A', '32 A'],
      }),
      on,
    },
  }),
  block('vehicle', {
    doc: 'An electric vehicle: what it needs each day and when it is there.',
    also: ['electric car', 'EV'],
    properties: {
      daily: quantity('energy-rate', {
        doc: 'Energy needed on an average day, at the plug.',
        within: ['0 kWh/d', '120 kWh/d'],
        required: true,
      }),
      'winter-use': quantity('ratio', {
        doc: 'Need on a cold day against the average.',
        within: ['50 %', '300 %'],
        default: '130 %',
        source: 'common practice, from memory',
      }),
      arrives: time({ doc: 'Time of day when it is plugged in.', required: true }),
      leaves: time({ doc: 'Time of day when it must be ready.', required: true }),
      charger: reference(['evse'], { doc: 'Charger that it uses.', required: true }),
    },
  }),
  block('load-manager', {
    doc: 'Controller that watches the service or a feeder and sheds loads in order. Whether the code credits it depends on the edition.',
    also: ['EVEMS', 'energy management system', 'EMS', 'demand management', 'load shedding', 'power control system'],
    holds: ['channel'],
    properties: {
      senses: reference(['circuit'], {
        doc: 'What it measures: the whole service, or the feeder named.',
        or: ['service'],
        default: 'service',
        source: 'assumed',
      }),
      limit: quantity('current', { doc: 'Current that it keeps.', within: ['10 A', '600 A'] }),
      'limit-fraction': quantity('ratio', {
        doc: 'Limit as a fraction of the main breaker.',
        within: ['10 %', '100 %'],
      }),
      'shed-after': quantity('duration', {
        doc: 'Time above the limit before it sheds.',
        within: ['0 s', '15 min'],
        default: '10 s',
        source: 'assumed',
      }),
      restore: choice(['blind-retry', 'headroom'], {
        doc: 'Whether it restores and sees, or waits until the load fits.',
        default: 'headroom',
        source: 'assumed',
      }),
      'restore-after': quantity('duration', {
        doc: 'Time below the limit before it restores.',
        within: ['0 s', '4 h'],
        default: '15 min',
        source: 'municipal practice: about 15 min',
      }),
      'restore-order': choice(['last-shed-first', 'as-shed'], {
        doc: 'Which load comes back first.',
        default: 'last-shed-first',
        source: 'common practice',
      }),
      'on-signal-loss': choice(['shed', 'hold'], {
        doc: 'What it does when it loses its measurement.',
        default: 'shed',
        source: 'NEC 750.30(C): stops the load on malfunction (from memory)',
      }),
      credit: statement(['by-edition', 'none'], ['authority-accepts'], {
        doc: 'Whether its limit counts in the service load: as the edition of the code says, not at all, or as the authority accepted in writing.',
        default: 'by-edition',
        source: 'assumed',
      }),
    },
  }),
  block('channel', {
    doc: 'One output of a load manager. Shed order 1 is shed first and restored last; what the trade calls the highest priority is kept longest.',
    properties: {
      sheds: reference(['evse', 'auxiliary', 'water-heater', 'load', 'hot-tub', 'baseboard', 'heat-pump', 'circuit'], {
        doc: 'What it sheds.',
        required: true,
      }),
      'shed-order': count({ doc: '1 is shed first.', within: [1, 32], required: true }),
      'relay-rating': quantity('current', { doc: 'Rating of its contact.', within: ['1 A', '200 A'] }),
      'minimum-off': quantity('duration', { doc: 'Time that it stays off at least.', within: ['0 s', '2 h'] }),
      'acts-on': choice(['line', 'thermostat-stage'], {
        doc: 'Whether it opens the circuit or the stage of the thermostat.',
        default: 'line',
        source: 'assumed',
      }),
    },
  }),
  block('meter-data', {
    doc: 'Interval data of the meter.',
    also: ['smart meter', 'interval data', 'green button'],
    properties: {
      file: file(['espi', 'csv'], {
        doc: 'The data: ESPI XML, or a csv whose columns are named here.',
        required: true,
      }),
      channel: choice(['net', 'gross'], {
        doc: 'Whether generation is already taken off.',
        default: 'net',
        source: 'assumed',
      }),
      interval: quantity('duration', { doc: 'Length of an interval.', within: ['1 min', '1 h'] }),
      'solar-since': date({ doc: 'Day since which solar generation is inside the data.' }),
      occupied: flag({ doc: 'Whether the house was lived in all the time.', default: true, source: 'assumed' }),
    },
  }),
  block('battery', {
    doc: 'Battery beside the service.',
    properties: {
      capacity: quantity('energy', { doc: 'Usable energy.', within: ['1 kWh', '200 kWh'], required: true }),
      rating: quantity('power', { doc: 'Continuous power.', within: ['500 W', '50 kW'], required: true }),
      on,
    },
  }),
  block('generator', {
    doc: 'Stand-by generator. It needs a transfer switch; never feed a house through a receptacle.',
    properties: {
      rating: quantity('power', { doc: 'Continuous power.', within: ['500 W', '100 kW'], required: true }),
      fuel: choice(['natural-gas', 'propane', 'gasoline', 'diesel'], { doc: 'What it burns.' }),
      transfer: choice(['manual', 'automatic'], { doc: 'Kind of transfer switch.' }),
    },
  }),
  block('hot-tub', {
    doc: 'Hot tub or spa.',
    also: ['spa', 'pool heater'],
    properties: {
      heater: quantity('power', { doc: 'Power of the heater.', within: ['500 W', '15 kW'], required: true }),
      pump: quantity('power', {
        doc: 'Power of the pumps.',
        within: ['0 W', '6 kW'],
        default: '0 W',
        source: 'assumed',
      }),
      voltage,
      on,
    },
  }),
  block('schedule', {
    doc: 'When a load is run on purpose, for instance in sun hours.',
    properties: {
      load: reference(['load', 'evse', 'water-heater', 'hot-tub'], { doc: 'What is scheduled.', required: true }),
      days: choices(['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun', 'weekdays', 'weekends'], {
        doc: 'Days on which it runs; every day when left out.',
      }),
      starts: time({ doc: 'Time at which it starts.', required: true }),
      ends: time({ doc: 'Time at which it must have ended.' }),
      months: months({ doc: 'Months in which the schedule holds.' }),
      'not-before': monthDay({ doc: 'First day of the year on which it holds.' }),
      note: text({ doc: 'Why.' }),
      with: references(['load'], { doc: 'Loads that run along.' }),
    },
  }),
] as const;
