import type { Block, House } from '../../model/index.js';
import type { Si } from '../../units/index.js';
import { sitePressure } from '../climate/site.js';
import { named } from '../envelope/named.js';
import { heightAboveGrade, storeysAboveGrade } from '../envelope/volume.js';
import type { Sheet } from '../worksheet.js';
import { houseLeakage } from './house-leakage.js';
import type { ShelterClass } from './infiltration-basic.js';
import { designInfiltration } from './infiltration-driving-factor.js';
import { enhancedCoefficients, enhancedInfiltration, type Foundation } from './infiltration-enhanced.js';
import { effectiveLeakageArea } from './leakage-area.js';
import { airConductance, combineAir } from './ventilation-air.js';

const SHELTER: Readonly<Record<House['site']['shielding'], ShelterClass>> = {
  none: 1,
  light: 2,
  normal: 3,
  heavy: 4,
  'very-heavy': 5,
};

/**
 * Natural infiltration of the design hour. From a test: the enhanced model at the design wind and difference of temperatures.
 * From a leakage class: the design equation of the load chapter, which holds for ordinary shelter.
 */
export function infiltrationAtDesign(
  house: House,
  { indoor, outdoor }: Pick<Block<'design'>, 'indoor' | 'outdoor'>,
  sheet?: Sheet,
): Si<'air-flow'> {
  const leakage = houseLeakage(house, sheet);
  const difference = indoor - outdoor;
  if (leakage.rests === 'assumed')
    return designInfiltration(
      'heating',
      { leakageArea: effectiveLeakageArea(leakage), height: heightAboveGrade(house), difference },
      sheet,
    );
  const { shielding, designWind } = house.site;
  const storeys = storeysAboveGrade(house);
  const k = enhancedCoefficients(storeys, SHELTER[shielding], foundation(house), leakage.flue);
  return enhancedInfiltration(leakage, k, difference, designWind, sheet).total;
}

/** A house on a crawl space has a floor over an unheated space and neither basement nor slab. */
function foundation({ envelope }: House): Foundation {
  const onGround = envelope.basementWall.length + envelope.basementFloor.length + envelope.slabOnGrade.length > 0;
  const overSpace = envelope.floor.some(f => f.nextTo !== 'outdoors');
  return !onGround && overSpace ? 'crawl-space' : 'basement-or-slab';
}

export interface AirLoad {
  readonly infiltration: Si<'air-flow'>;
  /** Conductances in W/K at the pressure of the site. */
  readonly direct: Si<'conductance'>;
  readonly recovered: Si<'conductance'>;
}

/** What outdoor air takes at the design hour: infiltration together with unbalanced fans, and balanced ventilation after its recovery. */
export function airLoad(house: House, condition: Pick<Block<'design'>, 'indoor' | 'outdoor'>, sheet?: Sheet): AirLoad {
  const infiltration = infiltrationAtDesign(house, condition, sheet);
  const pressure = sitePressure(house, sheet);
  const fans = house.envelope.ventilation;
  const moved = (kind: Block<'ventilation'>['kind']) =>
    fans.filter(f => f.kind === kind).reduce((sum, f) => sum + f.flow * f.runs, 0);
  const { balanced, direct } = combineAir(infiltration, { supply: moved('supply'), exhaust: moved('exhaust') }, sheet);
  const directConductance = airConductance(
    { label: 'Outdoor air that no exchanger sees', flow: direct + balanced, pressure },
    sheet,
  );
  const recovered = fans
    .filter(f => f.kind === 'balanced')
    .reduce((sum, f) => sum + afterRecovery(f, condition.outdoor, pressure, sheet), 0);
  return { infiltration, direct: directConductance, recovered };
}

function afterRecovery(
  fan: Block<'ventilation'>,
  outdoor: Si<'temperature'>,
  pressure: Si<'pressure'>,
  sheet?: Sheet,
): Si<'conductance'> {
  const interrupted = fan.defrostBelow !== undefined && outdoor < fan.defrostBelow;
  const label = interrupted ? `${named(fan)} (recovery is interrupted for defrost in this weather)` : named(fan);
  return airConductance({ label, flow: fan.flow * fan.runs, recovery: fan.recovery, pressure }, sheet);
}
