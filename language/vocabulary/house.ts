import { block, choice, count, currency, date, file, quantity, reference, table, text } from './define.js';

/** The house itself, where it stands, its storeys and rooms, and what is known of it from outside. */
export const houseBlocks = [
  block('house', {
    doc: 'One dwelling: what it is today, and the stages in which it changes. Each stage is computed as a house of its own.',
    also: ['dwelling', 'home', 'project'],
    holds: [
      'site',
      'design',
      'storey',
      'room',
      'stated-load',
      'bills',
      'climate',
      'envelope',
      'heating',
      'water-heating',
      'electrical',
      'solar',
      'money',
      'stage',
      'expect',
      'source',
      'commissioning',
      'suite',
    ],
    properties: {
      built: count({ doc: 'Year in which the house was built.', within: [1600, 2100] }),
      bedrooms: count({ doc: 'Number of bedrooms; the ventilation standard counts people by it.', within: [0, 20] }),
      occupants: count({ doc: 'People who live in the house.', within: [0, 30] }),
      currency: currency({
        doc: 'The one currency of all money in the house, as its ISO 4217 code.',
        typical: ['CAD', 'USD'],
      }),
      'electrical-code': choice(['cec-2021', 'cec-2024', 'nec-2020', 'nec-2023', 'nec-2026'], {
        doc: 'Edition of the electrical code by which the service and the circuits are judged.',
      }),
      volume: quantity('volume', {
        doc: 'Volume of heated air, as it is used for air changes; computed from the storeys when left out.',
        within: ['50 m3', '5000 m3'],
      }),
    },
  }),
  block('site', {
    section: true,
    doc: 'Where the house stands: position, climate, shelter from wind.',
    also: ['location'],
    properties: {
      latitude: quantity('angle', { doc: 'Latitude, north positive.', within: ['-66 deg', '80 deg'] }),
      longitude: quantity('angle', { doc: 'Longitude, east positive.', within: ['-180 deg', '180 deg'] }),
      elevation: quantity('length', {
        doc: 'Height above the sea; sets air density.',
        within: ['-100 m', '4500 m'],
        default: '0 m',
        source: 'assumed: sea level',
      }),
      'time-zone': text({
        doc: 'Zone of the tz database that bills and meter data follow.',
        typical: ['"America/Regina"', '"America/Denver"'],
      }),
      terrain: choice(['open', 'suburban', 'urban'], {
        doc: 'Roughness of the land around, for the wind at the house.',
        default: 'suburban',
        source: 'common practice',
      }),
      shielding: choice(['none', 'light', 'normal', 'heavy', 'very-heavy'], {
        doc: 'Shelter that buildings and trees give within two house heights: classes 1 to 5 of the infiltration models.',
        default: 'normal',
        source: 'ASHRAE Fundamentals (SI) 2021, ch. 16: class 3',
      }),
      'mean-temperature': quantity('temperature', {
        doc: 'Annual mean outdoor temperature; the ground follows it.',
        within: ['-15 °C', '30 °C'],
      }),
      'surface-amplitude': quantity('temperature-difference', {
        doc: 'Amplitude of the ground surface temperature over the year; the coldest ground is the annual mean less it.',
        within: ['0 K', '25 K'],
        default: '10 K',
        source:
          'ASHRAE Fundamentals (SI) 2021, ch. 18, Fig. 14: about 10 K over most of the continent (range from memory)',
      }),
      'ground-conductivity': quantity('conductivity', {
        doc: 'Thermal conductivity of the soil.',
        within: ['0.4 W/mK', '4 W/mK'],
        default: '1.4 W/mK',
        source: 'ASHRAE Fundamentals (SI) 2021, ch. 18: typical soil',
      }),
      'design-wind': quantity('velocity', {
        doc: 'Wind speed at the met station with the design temperature.',
        within: ['0 m/s', '25 m/s'],
        default: '6.7 m/s',
        source: 'ASHRAE Fundamentals (SI) 2021, ch. 17: 6.7 m/s in winter',
      }),
      weather: file(['tmy3', 'csv'], {
        doc: 'Hourly weather: a TMY3 file of the open national data set, a csv whose columns are named here, or a climate block.',
        or: ['climate'],
      }),
    },
  }),
  block('design', {
    doc: 'Outdoor and indoor conditions of a design load: `code` for the permit, `comfort` for the owner. Errors are judged by the code pair.',
    also: ['design conditions', 'design temperature', 'design day'],
    names: ['code', 'comfort'],
    properties: {
      outdoor: quantity('temperature', {
        doc: 'Outdoor temperature of the heating load.',
        within: ['-60 °C', '20 °C'],
        required: true,
      }),
      indoor: quantity('temperature', {
        doc: 'Indoor temperature of the heating load.',
        within: ['10 °C', '27 °C'],
        default: '22 °C',
        source: 'common practice: 22 °C in living space for permits in Canada; ASHRAE Fundamentals uses 20 °C',
      }),
      'cooling-outdoor': quantity('temperature', {
        doc: 'Outdoor dry bulb of the cooling load.',
        within: ['15 °C', '55 °C'],
      }),
      'cooling-indoor': quantity('temperature', {
        doc: 'Indoor temperature of the cooling load.',
        within: ['18 °C', '30 °C'],
        default: '24 °C',
        source: 'ASHRAE Fundamentals (SI) 2021, ch. 17',
      }),
      'cooling-wet-bulb': quantity('temperature', {
        doc: 'Outdoor wet bulb that goes with the cooling dry bulb.',
        within: ['0 °C', '35 °C'],
      }),
      'daily-range': quantity('temperature-difference', {
        doc: 'Daily range of the outdoor dry bulb in the hottest month.',
        within: ['0 K', '30 K'],
      }),
      'lowest-acceptable': quantity('temperature', {
        doc: 'Indoor temperature below which the people in the house would complain while heat is shed.',
        within: ['5 °C', '22 °C'],
        default: '17 °C',
        source: 'assumed',
      }),
      humidity: quantity('ratio', { doc: 'Relative humidity kept indoors in winter.', within: ['0 %', '70 %'] }),
      source: text({ doc: 'Table and edition from which the pair was taken.' }),
    },
  }),
  block('storey', {
    doc: 'One level of the house. Storeys give the living area of the electrical code, the height for infiltration, and the volume.',
    also: ['floor', 'level', 'story'],
    properties: {
      area: quantity('area', { doc: 'Floor area inside the walls.', within: ['5 m2', '1000 m2'], required: true }),
      height: quantity('length', { doc: 'Clear height, floor to ceiling.', within: ['1.2 m', '8 m'], required: true }),
      level: choice(['above-grade', 'below-grade'], {
        doc: 'Whether the level stands on or above ground, or below it.',
        required: true,
      }),
      finished: {
        ...yes('Whether people live on the level; an unfinished basement counts otherwise in some codes.', true),
        source: 'assumed: finished',
      },
      heated: { ...yes('Whether the level is inside the heated volume.', true), source: 'assumed: heated' },
      'outside-area': quantity('area', {
        doc: 'Area by outside dimensions, which the United States code counts; the inside area with an allowance for walls when left out.',
        within: ['5 m2', '1200 m2'],
      }),
    },
  }),
  block('room', {
    doc: 'A room, where loads are wanted room by room or where equipment needs air around it.',
    properties: {
      storey: reference(['storey'], { doc: 'Storey on which the room lies.' }),
      area: quantity('area', { doc: 'Floor area.', within: ['0.5 m2', '500 m2'] }),
      volume: quantity('volume', { doc: 'Volume of air in the room.', within: ['1 m3', '1500 m3'] }),
      heated: yes('Whether the room is heated.', true),
      'joined-by': choice(['louvre', 'duct', 'none'], { doc: 'How the air of the room meets that of the house.' }),
    },
  }),
  block('suite', {
    doc: 'A second dwelling unit in the same house.',
    also: ['secondary suite', 'in-law suite', 'second dwelling unit'],
    properties: {
      area: quantity('area', { doc: 'Living area of the suite.', within: ['10 m2', '300 m2'], required: true }),
      cooking: yes('Whether the suite has a range of its own.', true),
    },
  }),
  block('source', {
    doc: 'Where numbers come from. A value, or a block header for all in it, says `from` a source; results know how much of them is assumed.',
    also: ['origin', 'evidence'],
    properties: {
      kind: choice(['measured', 'nameplate', 'drawing', 'bill', 'quote', 'standard', 'planned', 'assumed'], {
        doc: 'How the numbers were come by.',
        required: true,
      }),
      date: date({ doc: 'Day of the measurement, bill or quote.' }),
      by: text({ doc: 'Role of whoever took them: "auditor", "owner".' }),
    },
  }),
  block('stated-load', {
    doc: 'A design load that somebody else computed. Without an envelope it drives everything by its W/K; with one, the two are compared.',
    also: ['auditor load', 'heat loss', 'heat load'],
    once: true,
    properties: {
      heating: quantity('heat-flow', {
        doc: 'Heating load at the stated temperatures.',
        within: ['1 kW', '60 kW'],
        required: true,
      }),
      indoor: quantity('temperature', {
        doc: 'Indoor temperature of the stated load.',
        within: ['10 °C', '27 °C'],
        required: true,
      }),
      outdoor: quantity('temperature', {
        doc: 'Outdoor temperature of the stated load.',
        within: ['-60 °C', '20 °C'],
        required: true,
      }),
      cooling: quantity('heat-flow', { doc: 'Sensible cooling load.', within: ['0 kW', '40 kW'] }),
    },
  }),
  block('bills', {
    doc: 'Energy billed over periods; with the weather of those days they measure W/K and the base load.',
    also: ['utility bills', 'gas bills', 'consumption'],
    properties: {
      fuel: choice(['electricity', 'natural-gas', 'propane', 'oil'], {
        doc: 'What was billed; taken from the name `gas` or `electricity` when left out.',
      }),
      readings: table(
        { from: 'date', to: 'date', energy: 'energy' },
        { doc: 'Billed periods, the first day inside, the last day outside.', minimum: 3 },
      ),
      'degree-days': file(['csv'], { doc: 'Daily outdoor temperatures of the billed period.' }),
      efficiency: quantity('ratio', {
        doc: 'Part of the billed fuel that heated the house.',
        within: ['30 %', '100 %'],
      }),
    },
  }),
  block('climate', {
    doc: 'Twelve months of a place, for a synthesized hourly year where there is no weather file.',
    properties: {
      months: table(
        {
          month: 'month',
          mean: 'temperature',
          'daily-range': 'temperature-difference',
          global: 'irradiance',
          wind: 'velocity',
        },
        {
          doc: 'Mean temperature, daily range, global radiation on the horizontal, wind, by month.',
          minimum: 12,
          required: true,
        },
      ),
      'record-low': quantity('temperature', {
        doc: 'Lowest temperature on record; modules reach their highest voltage then.',
        within: ['-65 °C', '20 °C'],
      }),
    },
  }),
] as const;

function yes<const D extends boolean>(doc: string, byDefault: D) {
  return { doc, is: 'flag', presence: 'default', default: byDefault } as const;
}
