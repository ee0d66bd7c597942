import { at, rule } from '../define.js';

export default rule({
  code: 'heat/lockout-gap',
  severity: 'error',
  title: 'lockouts leave a gap',
  of: 'thermostat',
  tier: 'design',
  *find(thermostat, view) {
    const gap = view.result('heating.lockout-gap');
    const outdoor = view.result('heating.lockout-gap-temperature');
    const load = view.result('heating.lockout-gap-load');
    const allowed = view.result('heating.lockout-gap-allowed');
    if (gap === undefined || gap < 0.5 || outdoor === undefined || load === undefined || allowed === undefined) return;
    const { auxiliaryLockoutAbove: above } = thermostat;
    const auxiliaryIsOff = above !== undefined && outdoor >= above;
    yield {
      thermostat,
      gap,
      outdoor,
      load,
      allowed,
      by: auxiliaryIsOff ? ('auxiliary' as const) : ('compressor' as const),
    };
  },
  tell: ({ thermostat, gap, outdoor, load, allowed, by }, say) => {
    const short = `${say(gap, 'heat-flow')} short at ${say(outdoor, 'temperature')}: load ${say(load, 'heat-flow')}, allowed ${say(allowed, 'heat-flow')}`;
    const { auxiliaryLockoutAbove: above, compressorLockoutBelow: below } = thermostat;
    if (by === 'auxiliary' && above !== undefined)
      return {
        at: at(thermostat, 'auxiliary-lockout-above'),
        message: `above ${say(above, 'temperature')} the auxiliary is locked out, where the rest does not carry the load: ${short}`,
        ...(below !== undefined && below > above
          ? {
              related: [
                {
                  at: at(thermostat, 'compressor-lockout-below'),
                  message: `the compressor is locked out below ${say(below, 'temperature')}`,
                },
              ],
            }
          : {}),
      };
    return {
      at: at(thermostat, 'compressor-lockout-below'),
      message: `below ${say(below ?? outdoor, 'temperature')} the compressor is locked out, where the rest does not carry the load: ${short}`,
    };
  },
  mend: ({ thermostat, by }, view) => {
    if (by === 'compressor') {
      const coldest = view.house.design.find(d => d.name === 'code')?.outdoor;
      if (coldest === undefined) return [];
      const to = `${Math.floor(coldest)} °C`;
      return [
        {
          title: `Lock the compressor out only below ${to}`,
          changes: [{ set: at(thermostat, 'compressor-lockout-below'), to }],
        },
      ];
    }
    const needed = view.result('heating.auxiliary-needed-below');
    if (needed === undefined) return [];
    const to = `${Math.ceil(needed)} °C`;
    return [
      {
        title: `Allow the auxiliary up to ${to}`,
        changes: [{ set: at(thermostat, 'auxiliary-lockout-above'), to }],
        preferred: true,
      },
    ];
  },
});
