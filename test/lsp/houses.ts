/** A small house without findings: one stage, one panel, a range, heat from a stated load. */
export const SMALL = `house small "A small one" {
  currency: CAD, electrical-code: cec-2024
  source audit "The walk" { kind: measured, date: 2026-01-20 }
  stated-load from audit { heating: 6 kW, indoor: 22 °C, outdoor: -25 °C }
  design code { outdoor: -25 °C, indoor: 22 °C, source: "local table" }
  storey ground { area: 80 m2, height: 2.4 m, level: above-grade }
  heating { furnace old { fuel: natural-gas, output: 18 kW, afue: 80 % } }
  electrical {
    service { rating: 100 A }
    panel main {
      bus: 100 A, main-breaker: 100 A, spaces: 24
      /** The kitchen's own. */
      circuit c-range { breaker: 40 A, poles: 2, conductor: awg-8, length: 12 m }
    }
    load range like range-12kw { on: c-range }
  }
  stage more "Another circuit" {
    starts: 2026-05-01
    change ground { area: 90 m2 }
    add circuit c-dryer in main { breaker: 30 A, poles: 2, conductor: awg-10, length: 9 m }
    add load dryer like dryer-electric { on: c-dryer }
    expect { service.demand: at most 100 A, main.spaces-left: at least 2 }
  }
}
`;
