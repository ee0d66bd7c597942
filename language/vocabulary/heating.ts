import { block, choice, count, flag, quantity, reference, references, table } from './define.js';

const on = reference(['circuit'], { doc: 'Circuit that feeds it.' });
const voltage = quantity('voltage', {
  doc: 'Rated voltage.',
  within: ['100 V', '250 V'],
  default: '240 V',
  source: 'common practice: 240 V',
});
const fuel = choice(['natural-gas', 'propane', 'oil', 'wood', 'electricity'], {
  doc: 'What it burns.',
  required: true,
});
const performance = { outdoor: 'temperature', output: 'heat-flow', input: 'power' } as const;

/** Equipment that heats and moves air, and its controls. */
export const heatingBlocks = [
  block('heating', {
    section: true,
    doc: 'Equipment that heats and cools the house, moves the air, and controls both.',
    also: ['HVAC', 'cooling', 'space heating'],
    holds: [
      'furnace',
      'boiler',
      'heat-pump',
      'air-handler',
      'auxiliary',
      'baseboard',
      'air-conditioner',
      'wood-stove',
      'thermostat',
      'ducts',
      'filter',
      'humidifier',
      'outdoor-unit',
      'line-set',
    ],
    properties: {
      target: choice(['all-electric', 'dual-fuel', 'keep-gas'], {
        doc: 'What the plan aims at when all stages are done.',
      }),
    },
  }),
  block('furnace', {
    doc: 'Warm-air furnace that burns a fuel.',
    also: ['gas furnace', 'oil furnace', 'AFUE'],
    properties: {
      fuel,
      output: quantity('heat-flow', { doc: 'Heat delivered at full fire.', within: ['3 kW', '60 kW'], required: true }),
      afue: quantity('ratio', { doc: 'Annual fuel utilization efficiency.', within: ['40 %', '99 %'], required: true }),
      'vents-by': reference(['opening'], { doc: 'Flue that it uses; left out when it is sealed to the outdoors.' }),
      draft: choice(['natural', 'fan-assisted', 'sealed'], {
        doc: 'How the flue gas is moved.',
        default: 'natural',
        source: 'assumed: the unfavourable case',
      }),
      blower: quantity('power', { doc: 'Electric power of the blower.', within: ['50 W', '2 kW'] }),
      airflow: quantity('air-flow', { doc: 'Airflow when heating.', within: ['100 L/s', '1500 L/s'] }),
      'run-time': quantity('ratio', {
        doc: 'Part of a cold day that it ran, with the mean outdoor temperature of that day.',
        within: ['0 %', '100 %'],
      }),
      'run-time-outdoor': quantity('temperature', {
        doc: 'Mean outdoor temperature of the day of the run time.',
        within: ['-50 °C', '20 °C'],
      }),
      on,
    },
  }),
  block('boiler', {
    doc: 'Boiler that heats water for radiators or floors.',
    properties: {
      fuel,
      output: quantity('heat-flow', { doc: 'Heat delivered at full fire.', within: ['3 kW', '60 kW'], required: true }),
      afue: quantity('ratio', {
        doc: 'Annual fuel utilization efficiency.',
        within: ['40 %', '100 %'],
        required: true,
      }),
      'vents-by': reference(['opening'], { doc: 'Flue that it uses; left out when it is sealed to the outdoors.' }),
      draft: choice(['natural', 'fan-assisted', 'sealed'], {
        doc: 'How the flue gas is moved.',
        default: 'natural',
        source: 'assumed: the unfavourable case',
      }),
      on,
    },
  }),
  block('heat-pump', {
    doc: 'Air-source heat pump. Its table says what it gives and takes at full speed; below the last row nothing is credited.',
    also: ['cold-climate heat pump', 'ASHP', 'HSPF2', 'SEER2', 'mini-split'],
    properties: {
      performance: table(performance, {
        doc: 'Full-speed heat output and electric input against outdoor temperature.',
        minimum: 2,
        required: true,
      }),
      rated: table(performance, { doc: 'Output and input at the rated speed.', minimum: 1 }),
      minimum: table(performance, {
        doc: 'Output and input at the lowest speed; below it the heat pump cycles.',
        minimum: 1,
      }),
      cooling: table(
        { outdoor: 'temperature', output: 'heat-flow', input: 'power' },
        { doc: 'Cooling output and input at full speed.', minimum: 1 },
      ),
      'defrost-included': flag({
        doc: 'Whether the table already counts defrost; when it does not, output is derated between about −7 and +5 °C.',
        default: false,
        source: 'assumed: the unfavourable case',
      }),
      'cut-out': quantity('temperature', {
        doc: 'Outdoor temperature below which it stops.',
        within: ['-45 °C', '15 °C'],
      }),
      'cut-in': quantity('temperature', {
        doc: 'Outdoor temperature above which it starts again; that of cut-out when left out.',
        within: ['-45 °C', '15 °C'],
      }),
      airflow: quantity('air-flow', { doc: 'Airflow that the table assumes.', within: ['50 L/s', '1500 L/s'] }),
      rla: quantity('current', { doc: 'Rated load amperes of the compressor.', within: ['1 A', '80 A'] }),
      'fan-fla': quantity('current', { doc: 'Full-load amperes of the outdoor fan.', within: ['0 A', '10 A'] }),
      mca: quantity('current', { doc: 'Minimum circuit ampacity on the nameplate.', within: ['5 A', '100 A'] }),
      mocp: quantity('current', { doc: 'Maximum overcurrent protection on the nameplate.', within: ['10 A', '125 A'] }),
      'rated-input': quantity('power', { doc: 'Highest electric input in operation.', within: ['200 W', '20 kW'] }),
      voltage,
      'crankcase-heater': quantity('power', { doc: 'Power of the crankcase heater.', within: ['0 W', '300 W'] }),
      'base-pan-heater': quantity('power', { doc: 'Power of the base pan heater.', within: ['0 W', '500 W'] }),
      'air-handler': reference(['air-handler'], { doc: 'Air handler that carries its coil.' }),
      hspf2: quantity('number', {
        doc: 'Seasonal heating factor as labelled, BTU/Wh; for comparison only.',
        within: ['5', '16'],
      }),
      seer2: quantity('number', {
        doc: 'Seasonal cooling factor as labelled, BTU/Wh; for comparison only.',
        within: ['10', '40'],
      }),
      on,
    },
  }),
  block('air-handler', {
    doc: 'Blower with the indoor coil.',
    also: ['fan coil', 'AHU'],
    properties: {
      blower: quantity('power', {
        doc: 'Electric power of the blower at the design airflow.',
        within: ['30 W', '2 kW'],
      }),
      'blower-curve': table(
        { static: 'pressure', airflow: 'air-flow', power: 'power' },
        { doc: 'Airflow and power against external static pressure.', minimum: 2 },
      ),
      coil: quantity('pressure', {
        doc: 'Pressure drop of the wet coil at the rated airflow.',
        within: ['0 Pa', '200 Pa'],
      }),
      fla: quantity('current', { doc: 'Full-load amperes of the blower.', within: ['0.2 A', '20 A'] }),
      mca: quantity('current', { doc: 'Minimum circuit ampacity on the nameplate.', within: ['1 A', '150 A'] }),
      mocp: quantity('current', { doc: 'Maximum overcurrent protection on the nameplate.', within: ['10 A', '150 A'] }),
      voltage,
      on,
    },
  }),
  block('auxiliary', {
    doc: 'Electric resistance heat in the air stream, in steps. A strip that can carry the whole load is normal practice.',
    also: ['heat strip', 'electric heat kit', 'backup heat', 'auxiliary heat', 'strip heater', 'emergency heat'],
    properties: {
      output: quantity('heat-flow', {
        doc: 'Heat at its rated voltage, all steps.',
        within: ['1 kW', '40 kW'],
        required: true,
        typical: ['5 kW', '8 kW', '10 kW', '15 kW'],
      }),
      steps: count({ doc: 'Steps in which it switches.', within: [1, 8], default: 1, source: 'assumed: all at once' }),
      role: choice(['supplementary', 'full-backup'], {
        doc: 'Whether it only helps the heat pump, or can carry the whole load when the heat pump stops.',
        default: 'supplementary',
        source: 'assumed: the unfavourable case',
      }),
      'air-handler': reference(['air-handler'], { doc: 'Air handler whose blower carries its heat away.' }),
      voltage,
      'supply-voltage': quantity('voltage', {
        doc: 'Voltage at the house, where it differs from the rated one; power follows its square.',
        within: ['100 V', '250 V'],
      }),
      on: references(['circuit'], { doc: 'Circuit, or circuits, that feed it.' }),
    },
  }),
  block('baseboard', {
    doc: 'Electric room heaters with thermostats in the rooms.',
    also: ['electric baseboard', 'room heater', 'convector'],
    properties: {
      output: quantity('heat-flow', {
        doc: 'Heat of all heaters on the circuit.',
        within: ['200 W', '30 kW'],
        required: true,
      }),
      'controlled-by': choice(['room-thermostats', 'central'], {
        doc: 'How they are controlled; demand factors depend on it.',
        default: 'room-thermostats',
        source: 'common practice',
      }),
      units: count({ doc: 'Number of separately controlled units.', within: [1, 40], default: 1, source: 'assumed' }),
      room: reference(['room'], { doc: 'Room that it heats.' }),
      voltage,
      on: references(['circuit'], { doc: 'Circuit, or circuits, that feed it.' }),
    },
  }),
  block('air-conditioner', {
    doc: 'Cooling equipment that does not heat.',
    also: ['AC', 'central air'],
    properties: {
      output: quantity('heat-flow', { doc: 'Total cooling output.', within: ['1 kW', '30 kW'], required: true }),
      'rated-input': quantity('power', { doc: 'Electric input at rating.', within: ['200 W', '15 kW'] }),
      rla: quantity('current', { doc: 'Rated load amperes of the compressor.', within: ['1 A', '80 A'] }),
      'fan-fla': quantity('current', { doc: 'Full-load amperes of the outdoor fan.', within: ['0 A', '10 A'] }),
      mca: quantity('current', { doc: 'Minimum circuit ampacity on the nameplate.', within: ['3 A', '100 A'] }),
      mocp: quantity('current', { doc: 'Maximum overcurrent protection on the nameplate.', within: ['10 A', '125 A'] }),
      voltage,
      on,
    },
  }),
  block('wood-stove', {
    doc: 'Stove that people may light; it is not counted on for the code load.',
    properties: {
      output: quantity('heat-flow', { doc: 'Usual heat output.', within: ['1 kW', '25 kW'], required: true }),
      'vents-by': reference(['opening'], { doc: 'Its flue.' }),
    },
  }),
  block('thermostat', {
    doc: 'Controls of heat pump and auxiliary.',
    once: true,
    also: ['lockout', 'setback', 'controls'],
    properties: {
      'auxiliary-lockout-above': quantity('temperature', {
        doc: 'Outdoor temperature above which the auxiliary is kept off.',
        within: ['-40 °C', '25 °C'],
      }),
      'compressor-lockout-below': quantity('temperature', {
        doc: 'Outdoor temperature below which the compressor is kept off.',
        within: ['-45 °C', '20 °C'],
      }),
      'stage-delay': quantity('duration', {
        doc: 'Time before the next stage of heat is called.',
        within: ['0 min', '3 h'],
        default: '10 min',
        source: 'common practice',
      }),
      droop: quantity('temperature-difference', {
        doc: 'Drop below the setting before the next stage is called.',
        within: ['0 K', '4 K'],
        default: '0.6 K',
        source: 'common practice',
      }),
      'night-setback': quantity('temperature-difference', {
        doc: 'How far the setting is lowered at night.',
        within: ['0 K', '10 K'],
        default: '0 K',
        source: 'assumed: none',
      }),
      'auxiliary-in-defrost': flag({
        doc: 'Whether the strip warms the air while the heat pump defrosts.',
        default: true,
        source: 'common practice',
      }),
    },
  }),
  block('ducts', {
    doc: 'Duct system: where it runs and what it lets through.',
    once: true,
    also: ['ductwork'],
    properties: {
      location: choice(['conditioned', 'attic', 'crawl-space', 'basement', 'garage'], {
        doc: 'Where the ducts run.',
        default: 'conditioned',
        source: 'assumed: inside the heated space',
      }),
      airflow: quantity('air-flow', { doc: 'Airflow at the stated pressure.', within: ['50 L/s', '2000 L/s'] }),
      'available-pressure': quantity('pressure', {
        doc: 'External static pressure that the blower may spend.',
        within: ['20 Pa', '500 Pa'],
      }),
      'loss-factor': quantity('ratio', {
        doc: 'Heat lost from ducts outside the heated space, as a part of the load.',
        within: ['0 %', '60 %'],
      }),
      'supply-drop': quantity('pressure', {
        doc: 'Pressure drop of supply ducts and registers at the stated airflow.',
        within: ['0 Pa', '400 Pa'],
      }),
      'return-drop': quantity('pressure', {
        doc: 'Pressure drop of return ducts and grilles at the stated airflow.',
        within: ['0 Pa', '400 Pa'],
      }),
    },
  }),
  block('filter', {
    doc: 'Air filter.',
    properties: {
      face: quantity('area', { doc: 'Face area.', within: ['0.05 m2', '2 m2'], required: true }),
      drop: quantity('pressure', {
        doc: 'Pressure drop, clean, at the rated airflow.',
        within: ['1 Pa', '200 Pa'],
        required: true,
      }),
      'rated-airflow': quantity('air-flow', {
        doc: 'Airflow at which the drop was stated.',
        within: ['50 L/s', '2000 L/s'],
        required: true,
      }),
      depth: quantity('length', { doc: 'Depth of the filter.', within: ['10 mm', '400 mm'] }),
    },
  }),
  block('humidifier', {
    doc: 'Humidifier. A bypass type starves on cool supply air; a steam type adds electric load.',
    properties: {
      kind: choice(['bypass', 'fan', 'steam'], { doc: 'How it gives off water.', required: true }),
      output: quantity('water-flow', { doc: 'Water given off.', within: ['0 L/d', '150 L/d'] }),
      input: quantity('power', {
        doc: 'Electric input.',
        within: ['0 W', '15 kW'],
        default: '0 W',
        source: 'assumed: no heater',
      }),
      on,
    },
  }),
  block('outdoor-unit', {
    doc: 'Where the outdoor unit stands.',
    also: ['condenser', 'clearance'],
    properties: {
      mount: choice(['ground-stand', 'pad', 'wall-bracket', 'roof'], { doc: 'What carries it.' }),
      'above-grade': quantity('length', { doc: 'Height of its base above the ground.', within: ['0 m', '6 m'] }),
      'snow-depth': quantity('length', { doc: 'Greatest usual depth of snow.', within: ['0 m', '4 m'] }),
      clearance: quantity('length', { doc: 'Free space in front of the coil.', within: ['0 m', '10 m'] }),
      'to-window': quantity('length', { doc: 'Distance to the nearest window that opens.', within: ['0 m', '50 m'] }),
      'to-lot-line': quantity('length', { doc: 'Distance to the lot line.', within: ['0 m', '100 m'] }),
      sound: quantity('sound-level', { doc: 'Sound power level.', within: ['30 dB', '100 dB'] }),
    },
  }),
  block('line-set', {
    doc: 'Refrigerant lines between outdoor unit and coil.',
    properties: {
      length: quantity('length', { doc: 'Length one way.', within: ['1 m', '60 m'] }),
      rise: quantity('length', { doc: 'Height between the units.', within: ['0 m', '30 m'] }),
      'insulated-to-unit': flag({
        doc: 'Whether both lines are insulated all the way.',
        default: false,
        source: 'assumed',
      }),
    },
  }),
] as const;
