import { at, rule } from '../define.js';

export default rule({
  code: 'heat/compressor-locked-out',
  severity: 'warning',
  title: 'heat pump locked out above the design temperature',
  of: 'thermostat',
  tier: 'design',
  *find(thermostat, view) {
    const lockout = thermostat.compressorLockoutBelow;
    const output = view.result('heating.locked-out-output');
    const design = view.house.design.find(d => d.name === 'code');
    if (lockout === undefined || output === undefined || output < 0.5 || !design) return;
    yield { thermostat, lockout, output, design };
  },
  tell: ({ thermostat, lockout, output, design }, say) => ({
    at: at(thermostat, 'compressor-lockout-below'),
    message: `the compressor is locked out below ${say(lockout, 'temperature')}, ${say(lockout - design.outdoor, 'temperature-difference')} above the design temperature of ${say(design.outdoor, 'temperature')}, although its table still gives ${say(output, 'heat-flow')} there`,
    related: [{ at: at(design, 'outdoor'), message: 'the design temperature' }],
  }),
  mend: ({ thermostat, design }, { house }) => {
    const last = Math.min(...house.heating.heatPump.flatMap(hp => hp.performance.map(p => p.outdoor)));
    const to = `${Math.floor(Math.max(last, design.outdoor))} °C`;
    return [
      {
        title: `Lock the compressor out only below ${to}`,
        changes: [{ set: at(thermostat, 'compressor-lockout-below'), to }],
        preferred: true,
      },
    ];
  },
});
