import type { Si } from '../../units/index.js';

/**
 * Winter design temperatures of some places, so that a house file whose design temperature is milder than the site's
 * can be questioned. This is no code table: the edition adopted where the house stands decides.
 *
 * `basis` names the quantity: the annual 99 % dry bulb of the handbook or the January 2.5 % dry bulb of the national
 * code. Rows of status `memory` may be off by a degree
 * and serve information only.
 */
export interface DesignPlace {
  readonly place: string;
  readonly latitude: Si<'angle'>;
  readonly longitude: Si<'angle'>;
  readonly elevation: Si<'length'>;
  readonly outdoor: Si<'temperature'>;
  readonly basis: 'annual 99 %' | 'January 2.5 %';
  readonly source: string;
  readonly status: 'seen' | 'memory';
}

type Row = readonly [place: string, latitude: number, longitude: number, elevation: number, outdoor: number];

interface Table extends Pick<DesignPlace, 'basis' | 'source' | 'status'> {
  readonly rows: readonly Row[];
}

/** Degrees north and east, metres, °C. Coordinates and elevations of the code's own table are from memory. */
const tables: readonly Table[] = [
  {
    basis: 'annual 99 %',
    source: 'ASHRAE Fundamentals 2009 climate design data, as printed with public weather archives',
    status: 'seen',
    rows: [
      ['Atlanta airport, GA', 33.63, -84.43, 308, -3.5],
      ['Billings airport, MT', 45.8, -108.55, 1087, -20.8],
      ['Bismarck airport, ND', 46.77, -100.77, 502, -25.5],
      ['Boston airport, MA', 42.37, -71.02, 6, -10.9],
      ['Buffalo airport, NY', 42.93, -78.73, 215, -14.1],
      ['Burlington airport, VT', 44.47, -73.15, 101, -19.7],
      ['Chicago airport, IL', 41.98, -87.92, 201, -16.6],
      ['Denver airport, CO', 39.83, -104.65, 1650, -14.0],
      ['Denver-Stapleton, CO', 39.76, -104.86, 1611, -16.0],
      ['Duluth airport, MN', 46.83, -92.22, 433, -25.4],
      ['Fargo airport, ND', 46.93, -96.82, 274, -26.2],
      ['Great Falls airport, MT', 47.47, -111.38, 1117, -24.0],
      ['Helena airport, MT', 46.6, -111.97, 1167, -22.3],
      ['International Falls airport, MN', 48.57, -93.4, 359, -29.4],
      ['Minneapolis-St Paul airport, MN', 44.88, -93.23, 254, -22.0],
      ['Portland airport, OR', 45.6, -122.62, 6, -1.9],
      ['Portland airport, ME', 43.65, -70.3, 14, -15.4],
      ['Salt Lake City airport, UT', 40.77, -111.97, 1288, -9.9],
      ['Seattle-Tacoma airport, WA', 47.47, -122.32, 122, -1.6],
    ],
  },
  {
    basis: 'annual 99 %',
    source: 'ASHRAE-derived heating and wind design conditions of a textbook, edition about 1997 to 2001',
    status: 'seen',
    rows: [
      ['Calgary airport', 51.12, -114.02, 1084, -27.1],
      ['Edmonton airport', 53.3, -113.58, 723, -30.5],
      ['Fort McMurray airport', 56.65, -111.22, 369, -33.9],
      ['Lethbridge airport', 49.63, -112.8, 929, -26.9],
      ['Medicine Hat airport', 50.02, -110.72, 716, -28.4],
      ['Red Deer airport', 52.18, -113.9, 905, -29.6],
      ['Regina airport', 50.43, -104.67, 577, -31.1],
      ['Saskatoon', 52.17, -106.68, 504, -32.1],
      ['Winnipeg airport', 49.9, -97.23, 239, -30.6],
      ['Brandon airport', 49.92, -99.95, 409, -31.3],
      ['Thompson airport', 55.8, -97.87, 218, -36.8],
      ['Montreal airport', 45.47, -73.75, 36, -21.8],
      ['Montreal Mirabel airport', 45.68, -74.03, 82, -24.0],
      ['Quebec airport', 46.8, -71.38, 73, -24.0],
      ['Bagotville airport', 48.33, -71.0, 159, -28.4],
      ['Mont Joli airport', 48.6, -68.22, 52, -22.3],
    ],
  },
  {
    basis: 'January 2.5 %',
    source: 'NECB 2020 Division B Appendix C Table C-1, after NBC 2020 Table C-2',
    status: 'seen',
    rows: [
      ['100 Mile House BC', 51.64, -121.29, 1040, -30],
      ['Abbotsford BC', 49.05, -122.3, 70, -8],
      ['Agassiz BC', 49.24, -121.77, 15, -9],
      ['Alberni BC', 49.27, -124.8, 12, -5],
    ],
  },
  {
    basis: 'January 2.5 %',
    source: 'NBC 2015 and 2020 Division B Appendix C Table C-2, from memory',
    status: 'memory',
    rows: [
      ['Calgary', 51.05, -114.07, 1045, -30],
      ['Edmonton', 53.55, -113.49, 645, -30],
      ['Medicine Hat', 50.04, -110.68, 705, -31],
      ['Lethbridge', 49.69, -112.84, 910, -30],
      ['Regina', 50.45, -104.62, 575, -34],
      ['Saskatoon', 52.13, -106.67, 500, -35],
      ['Winnipeg', 49.9, -97.14, 235, -33],
      ['Thunder Bay', 48.38, -89.25, 210, -31],
      ['Toronto (City Hall)', 43.65, -79.38, 90, -18],
      ['Ottawa (City Hall)', 45.42, -75.69, 70, -25],
      ['Montréal (City Hall)', 45.51, -73.55, 20, -23],
      ['Québec', 46.81, -71.21, 120, -25],
      ['Fredericton', 45.96, -66.64, 15, -24],
      ['Halifax', 44.65, -63.58, 55, -16],
      ["St. John's", 47.56, -52.71, 65, -15],
      ['Charlottetown', 46.24, -63.13, 5, -20],
      ['Vancouver (City Hall)', 49.26, -123.11, 40, -7],
      ['Victoria', 48.43, -123.37, 10, -4],
      ['Kelowna', 49.89, -119.5, 350, -17],
      ['Prince George', 53.92, -122.75, 580, -32],
      ['Whitehorse', 60.72, -135.06, 655, -41],
      ['Yellowknife', 62.45, -114.37, 160, -41],
    ],
  },
];

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** Every listed place with its angles in radians. */
export const designPlaces: readonly DesignPlace[] = tables.flatMap(({ rows, ...table }) =>
  rows.map(([place, latitude, longitude, elevation, outdoor]) => ({
    place,
    latitude: radians(latitude),
    longitude: radians(longitude),
    elevation,
    outdoor,
    ...table,
  })),
);

/** How far a listed place may lie to speak for a site: common practice, our choice. */
const NEAR = { distance: 60_000, elevation: 200 } as const;

interface Location {
  readonly latitude: Si<'angle'>;
  readonly longitude: Si<'angle'>;
  readonly elevation: Si<'length'>;
}

/** The nearest listed place within 60 km and 200 m of elevation, among those that the reader wants. */
export function nearestDesignPlace(
  site: Location,
  among: (place: DesignPlace) => boolean = () => true,
): { readonly place: DesignPlace; readonly distance: Si<'length'> } | undefined {
  let best: { place: DesignPlace; distance: number } | undefined;
  for (const place of designPlaces) {
    if (!among(place)) continue;
    if (Math.abs(place.elevation - site.elevation) > NEAR.elevation) continue;
    const distance = greatCircle(site, place);
    if (distance <= NEAR.distance && (!best || distance < best.distance)) best = { place, distance };
  }
  return best;
}

/** Distance in m over a sphere of the mean radius of the earth, by the haversine formula. */
export function greatCircle(a: Omit<Location, 'elevation'>, b: Omit<Location, 'elevation'>): Si<'length'> {
  const h =
    Math.sin((b.latitude - a.latitude) / 2) ** 2 +
    Math.cos(a.latitude) * Math.cos(b.latitude) * Math.sin((b.longitude - a.longitude) / 2) ** 2;
  return 2 * 6_371_000 * Math.asin(Math.sqrt(Math.min(1, h)));
}
