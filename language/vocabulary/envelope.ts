import { block, choice, date, flag, quantity, reference, table } from './define.js';

const construction = {
  assembly: reference(['assembly'], { doc: 'What it is made of.' }),
  'u-value': quantity('u-value', {
    doc: 'Transmittance, instead of an assembly.',
    within: ['0.05 W/m2K', '7.5 W/m2K'],
  }),
  'r-value': quantity('r-value', {
    doc: 'Resistance with air films, instead of an assembly.',
    within: ['0.1 RSI', '20 RSI'],
    typical: ['20 R', '3.5 RSI'],
  }),
} as const;
const room = reference(['room'], { doc: 'Room that it bounds, where loads are wanted by room.' });
const area = quantity('area', { doc: 'Area, openings included.', within: ['0.1 m2', '1000 m2'], required: true });
const nextTo = reference(['buffer-space'], {
  doc: 'What lies on the other side: the outdoors, or an unheated space.',
  or: ['outdoors'],
  default: 'outdoors',
  source: 'assumed: outdoors',
});
const faces = ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW'] as const;
const absorptance = quantity('ratio', {
  doc: 'Part of the sunlight that the outside takes up.',
  within: ['5 %', '98 %'],
  default: '60 %',
  source: 'common practice: medium colour',
});

/** The skin of the house: what loses heat to the outdoors, to the ground and to unheated spaces. */
export const envelopeBlocks = [
  block('envelope', {
    section: true,
    doc: 'The skin of the house and the air that passes it.',
    also: ['shell', 'enclosure'],
    holds: [
      'ceiling',
      'wall',
      'rim-joist',
      'floor',
      'basement-wall',
      'basement-floor',
      'slab-on-grade',
      'thermal-bridge',
      'buffer-space',
      'blower-door-test',
      'opening',
      'ventilation',
    ],
    properties: {
      'unit-leakage': choice(['tight', 'good', 'average', 'leaky', 'very-leaky'], {
        doc: 'Leakage class per area of envelope, where no blower-door test was made. It is an assumption, and results say so.',
        source: 'ASHRAE Fundamentals (SI) 2021, ch. 17, Table 3: 0.7, 1.4, 2.8, 5.6, 10.4 cm2/m2 at 4 Pa',
      }),
      'thermal-bridges': quantity('u-value', {
        doc: 'Allowance for thermal bridges on all areas towards the outdoors, where they are not written one by one.',
        within: ['0 W/m2K', '0.3 W/m2K'],
        default: '0 W/m2K',
        source: 'assumed: none beyond the framing in the assemblies',
      }),
    },
  }),
  block('ceiling', {
    doc: 'Ceiling under an attic or roof.',
    also: ['attic', 'roof', 'insulation'],
    holds: ['skylight'],
    properties: { area, ...construction, room, 'next-to': nextTo, absorptance },
  }),
  block('wall', {
    doc: 'Wall above ground. Its area includes its windows and doors, which are taken off.',
    also: ['kneewall', 'exterior wall'],
    holds: ['window', 'door'],
    properties: {
      area,
      ...construction,
      faces: choice(faces, { doc: 'Compass direction of the outside.' }),
      room,
      'next-to': nextTo,
      absorptance,
    },
  }),
  block('rim-joist', {
    doc: 'Band between storeys or on the foundation, where joists end.',
    also: ['band joist', 'header'],
    properties: { area, ...construction, faces: choice(faces, { doc: 'Compass direction of the outside.' }), room },
  }),
  block('floor', {
    doc: 'Floor above the outdoors or above an unheated space.',
    also: ['exposed floor', 'floor over garage'],
    properties: { area, ...construction, room, 'next-to': nextTo },
  }),
  block('window', {
    doc: 'Window in a wall, measured over its frame.',
    properties: {
      area: quantity('area', { doc: 'Area over the frame.', within: ['0.05 m2', '60 m2'], required: true }),
      glazing: reference(['glazing'], { doc: 'Type of window.' }),
      'u-value': quantity('u-value', {
        doc: 'Transmittance of the whole window, instead of a glazing.',
        within: ['0.5 W/m2K', '7.5 W/m2K'],
      }),
      shgc: quantity('ratio', {
        doc: 'Solar heat gain coefficient, instead of that of a glazing.',
        within: ['5 %', '90 %'],
      }),
      shading: quantity('ratio', {
        doc: 'Part of the sunlight that overhangs, trees and blinds let through.',
        within: ['0 %', '100 %'],
        default: '100 %',
        source: 'assumed: unshaded',
      }),
      overhang: quantity('length', { doc: 'Projection of an overhang above the window.', within: ['0 m', '5 m'] }),
      faces: choice(faces, { doc: 'Compass direction, where it is not that of the wall.' }),
      room,
    },
  }),
  block('skylight', {
    doc: 'Window in a ceiling or roof.',
    properties: {
      area: quantity('area', { doc: 'Area over the frame.', within: ['0.05 m2', '30 m2'], required: true }),
      glazing: reference(['glazing'], { doc: 'Type of window.' }),
      'u-value': quantity('u-value', { doc: 'Transmittance of the whole window.', within: ['0.5 W/m2K', '7.5 W/m2K'] }),
      shgc: quantity('ratio', { doc: 'Solar heat gain coefficient.', within: ['5 %', '90 %'] }),
      tilt: quantity('angle', {
        doc: 'Slope from the horizontal.',
        within: ['0 deg', '80 deg'],
        default: '0 deg',
        source: 'assumed: flat',
      }),
      faces: choice(faces, { doc: 'Compass direction of the slope.' }),
      room,
    },
  }),
  block('door', {
    doc: 'Door in a wall.',
    properties: {
      area: quantity('area', { doc: 'Area over the frame.', within: ['0.5 m2', '20 m2'], required: true }),
      'u-value': quantity('u-value', {
        doc: 'Transmittance of the door.',
        within: ['0.4 W/m2K', '7 W/m2K'],
        required: true,
      }),
      room,
    },
  }),
  block('basement-wall', {
    doc: 'Foundation wall of a heated basement: its part above ground meets the outdoors, the rest the soil.',
    also: ['foundation wall'],
    holds: ['window', 'door'],
    properties: {
      length: quantity('length', { doc: 'Length along the outside.', within: ['0.5 m', '200 m'], required: true }),
      height: quantity('length', {
        doc: 'Height from floor to the top of the foundation.',
        within: ['0.3 m', '5 m'],
        required: true,
      }),
      'below-grade': quantity('length', {
        doc: 'Depth of the floor below the ground.',
        within: ['0 m', '5 m'],
        required: true,
      }),
      'insulated-to': quantity('length', {
        doc: 'Depth below the ground down to which the assembly reaches; bare concrete below it. The whole depth when left out.',
        within: ['0 m', '5 m'],
      }),
      ...construction,
      room,
    },
  }),
  block('basement-floor', {
    doc: 'Floor slab of a heated basement.',
    properties: {
      area,
      width: quantity('length', {
        doc: 'Shortest width of the basement; the square root of the area when left out.',
        within: ['1 m', '60 m'],
      }),
      depth: quantity('length', {
        doc: 'Depth below the ground; that of the basement walls when left out.',
        within: ['0 m', '5 m'],
      }),
      ...construction,
      room,
    },
  }),
  block('slab-on-grade', {
    doc: 'Floor slab at ground level. Its loss follows its edge.',
    also: ['slab'],
    properties: {
      area,
      perimeter: quantity('length', {
        doc: 'Length of the edge towards the outdoors.',
        within: ['0.5 m', '300 m'],
        required: true,
      }),
      'edge-insulation': quantity('r-value', {
        doc: 'Insulation of the edge, down to the footing.',
        within: ['0 RSI', '6 RSI'],
        default: '0 RSI',
        source: 'assumed: none',
      }),
      wall: choice(['block', 'brick', 'stud', 'concrete'], {
        doc: 'Construction of the wall at the edge.',
        default: 'stud',
        source: 'assumed',
      }),
      heated: flag({ doc: 'Whether the slab itself is heated.', default: false, source: 'assumed: not heated' }),
      room,
    },
  }),
  block('thermal-bridge', {
    doc: 'A line where the insulation is broken: balcony, corner, window edge.',
    properties: {
      length: quantity('length', { doc: 'Length of the line.', within: ['0.1 m', '500 m'], required: true }),
      psi: quantity('linear-transmittance', {
        doc: 'Linear transmittance.',
        within: ['-0.2 W/mK', '2 W/mK'],
        required: true,
      }),
    },
  }),
  block('buffer-space', {
    doc: 'An unheated space beside the house: garage, attic, porch, crawl space.',
    also: ['garage', 'crawl space', 'sunspace', 'attic'],
    properties: {
      'loss-outdoors': quantity('conductance', {
        doc: 'Heat loss coefficient of the space to the outdoors, its air change included.',
        within: ['0 W/K', '2000 W/K'],
      }),
      temperature: quantity('temperature', {
        doc: 'Temperature of the space at the design condition, where it is known instead.',
        within: ['-50 °C', '30 °C'],
      }),
      'reduction-factor': quantity('ratio', {
        doc: 'Part of the full temperature difference that acts across to the space, where neither loss nor temperature is known.',
        within: ['0 %', '100 %'],
      }),
    },
  }),
  block('blower-door-test', {
    doc: 'A fan pressurisation test with its readings. A later test stands for the house from its stage on.',
    also: ['air leakage test', 'fan test', 'ACH50'],
    properties: {
      date: date({ doc: 'Day of the test.' }),
      readings: table(
        { pressure: 'pressure', flow: 'air-flow' },
        { doc: 'Pressure difference across the envelope and flow through the fan.', minimum: 2, required: true },
      ),
      indoor: quantity('temperature', {
        doc: 'Indoor temperature during the test.',
        within: ['0 °C', '40 °C'],
        default: '20 °C',
        source: 'reference condition',
      }),
      outdoor: quantity('temperature', {
        doc: 'Outdoor temperature during the test.',
        within: ['-45 °C', '45 °C'],
        default: '20 °C',
        source: 'reference condition: no density correction',
      }),
      barometer: quantity('pressure', {
        doc: 'Pressure of the air at the house; from the elevation when left out.',
        within: ['50 kPa', '110 kPa'],
      }),
      direction: choice(['depressurize', 'pressurize'], {
        doc: 'Which way the fan blew.',
        default: 'depressurize',
        source: 'common practice',
      }),
      'zero-flow-before': quantity('pressure', {
        doc: 'Pressure with the fan closed, before the test.',
        within: ['-30 Pa', '30 Pa'],
        default: '0 Pa',
        source: 'assumed',
      }),
      'zero-flow-after': quantity('pressure', {
        doc: 'Pressure with the fan closed, after the test.',
        within: ['-30 Pa', '30 Pa'],
        default: '0 Pa',
        source: 'assumed',
      }),
      prepared: choice(['openings-sealed', 'as-operated'], {
        doc: 'Whether intentional openings were sealed for the test.',
        default: 'openings-sealed',
        source: 'assumed',
      }),
    },
  }),
  block('opening', {
    doc: 'An intentional opening to the outdoors: flue, combustion air, dryer vent, fresh-air duct.',
    also: ['chimney', 'flue', 'vent', 'dryer vent'],
    properties: {
      kind: choice(['chimney', 'combustion-air', 'dryer-vent', 'fresh-air'], {
        doc: 'What the opening is for.',
        required: true,
      }),
      diameter: quantity('length', { doc: 'Inside diameter.', within: ['25 mm', '500 mm'], required: true }),
      height: quantity('length', { doc: 'Height of its top above the lowest floor.', within: ['0 m', '20 m'] }),
      'sealed-in-test': flag({
        doc: 'Whether it was sealed during the blower-door tests.',
        default: false,
        source: 'assumed: open',
      }),
    },
  }),
  block('ventilation', {
    doc: 'Mechanical ventilation.',
    also: ['HRV', 'ERV', 'heat recovery ventilator', 'energy recovery ventilator', 'exhaust fan'],
    properties: {
      kind: choice(['balanced', 'exhaust', 'supply'], { doc: 'How the air is moved.', required: true }),
      flow: quantity('air-flow', {
        doc: 'Outdoor air at continuous operation.',
        within: ['2 L/s', '400 L/s'],
        required: true,
      }),
      recovery: quantity('ratio', {
        doc: 'Sensible recovery efficiency.',
        within: ['0 %', '98 %'],
        default: '0 %',
        source: 'assumed: none',
      }),
      'latent-recovery': quantity('ratio', {
        doc: 'Latent recovery efficiency.',
        within: ['0 %', '95 %'],
        default: '0 %',
        source: 'assumed: none',
      }),
      fan: quantity('power', { doc: 'Electric power of the fans.', within: ['0 W', '1000 W'] }),
      runs: quantity('ratio', {
        doc: 'Part of the time that it runs.',
        within: ['0 %', '100 %'],
        default: '100 %',
        source: 'assumed: continuous',
      }),
      'defrost-below': quantity('temperature', {
        doc: 'Outdoor temperature below which recovery is interrupted for defrost.',
        within: ['-40 °C', '10 °C'],
      }),
    },
  }),
] as const;
