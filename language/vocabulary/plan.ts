import { block, choice, choices, date, quantities, quantity, reference, references, text } from './define.js';

/** Stages, and what belongs to a stage without changing the house. */
export const planBlocks = [
  block('stage', {
    doc: 'A step of the work: changes upon the stage it comes after. Each stage is a whole house that must work by itself.',
    also: ['phase', 'step', 'retrofit stage'],
    holds: ['changeover', 'permit', 'quote', 'incentive', 'commissioning', 'expect'],
    properties: {
      after: reference(['stage'], { doc: 'Stage upon which it builds; the one written before it when left out.' }),
      starts: date({ doc: 'Day on which the work starts.' }),
      cost: quantity('money', { doc: 'Cost of the work.', within: ['0 $', '500000 $'] }),
    },
  }),
  block('changeover', {
    doc: 'The days between the old heat and the new.',
    once: true,
    ofStage: true,
    also: ['temporary heat'],
    properties: {
      'heat-off': quantity('duration', { doc: 'Time without the main heat.', within: ['0 h', '60 d'], required: true }),
      starts: date({ doc: 'First day without heat; the start of the stage when left out.' }),
      'temporary-heat': quantities('power', {
        doc: 'Heaters set up meanwhile.',
        within: ['100 W', '20 kW'],
        typical: ['[1440 W, 1440 W]'],
      }),
      circuits: references(['circuit'], { doc: 'Circuits that feed the temporary heaters.' }),
    },
  }),
  block('permit', {
    doc: 'A permit that the stage needs.',
    ofStage: true,
    properties: {
      kind: choice(['electrical', 'mechanical', 'building', 'gas', 'plumbing', 'interconnection'], {
        doc: 'What is permitted.',
        required: true,
      }),
      status: choice(['needed', 'applied', 'issued', 'closed'], {
        doc: 'How far it is.',
        default: 'needed',
        source: 'assumed',
      }),
      reference: text({ doc: 'Its number.' }),
      date: date({ doc: 'Day of the last step.' }),
    },
  }),
  block('quote', {
    doc: 'An offer, compared with what the house needs.',
    ofStage: true,
    also: ['bid', 'offer'],
    properties: {
      from: text({ doc: 'Who offers, by a name of the project’s own.' }),
      price: quantity('money', { doc: 'Price.', within: ['0 $', '500000 $'], required: true }),
      includes: choices(
        [
          'heat-pump',
          'air-handler',
          'auxiliary',
          'circuits',
          'panel',
          'load-manager',
          'water-heater',
          'solar',
          'permit',
          'removal',
          'commissioning',
        ],
        { doc: 'What is inside the price.' },
      ),
      date: date({ doc: 'Day of the offer.' }),
      output: quantity('heat-flow', { doc: 'Heat output offered at the code temperature.', within: ['0 kW', '60 kW'] }),
      auxiliary: quantity('heat-flow', { doc: 'Auxiliary heat offered.', within: ['0 kW', '40 kW'] }),
    },
  }),
  block('commissioning', {
    doc: 'Values read when the equipment was started.',
    once: true,
    ofStage: true,
    also: ['start-up', 'checklist'],
    properties: {
      date: date({ doc: 'Day of the readings.' }),
      outdoor: quantity('temperature', { doc: 'Outdoor temperature at the readings.', within: ['-45 °C', '45 °C'] }),
      airflow: quantity('air-flow', { doc: 'Measured airflow.', within: ['20 L/s', '2000 L/s'] }),
      static: quantity('pressure', { doc: 'Measured external static pressure.', within: ['0 Pa', '600 Pa'] }),
      'supply-air': quantity('temperature', { doc: 'Supply air temperature.', within: ['-5 °C', '80 °C'] }),
      'return-air': quantity('temperature', { doc: 'Return air temperature.', within: ['0 °C', '40 °C'] }),
      'strip-current': quantity('current', { doc: 'Measured current of the strip.', within: ['0 A', '200 A'] }),
      'strip-voltage': quantity('voltage', { doc: 'Measured voltage at the strip.', within: ['90 V', '270 V'] }),
      'manager-test': choice(['passed', 'failed', 'not-done'], {
        doc: 'Whether every channel was shed and restored on test.',
      }),
      'line-insulation': choice(['done', 'missing'], { doc: 'Whether the lines are insulated to the unit.' }),
      vibration: choice(['none', 'felt-indoors'], { doc: 'Whether vibration reaches the house.' }),
    },
  }),
  block('expect', {
    doc: 'What a named result must be; a broken one is an error in the editor and in CI. In a house it holds for every stage, in a stage from there on.',
    ofStage: true,
    bounds: true,
    also: ['assertion', 'requirement', 'target'],
    properties: {},
  }),
] as const;
