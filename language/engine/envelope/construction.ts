import { Withheld, type Block } from '../../model/index.js';
import type { Si } from '../../units/index.js';
import type { Sheet } from '../worksheet.js';
import { combinedMethod, parallelPath, type Assembly, type Layer } from './framed-assembly.js';
import { named } from './named.js';
import { notNegative, positive } from './positive.js';
import { ashraeFilms, facingBufferSpace, type Films, type HeatFlow } from './surface-films.js';

/** An element of the skin by its assembly, or by a stated U or R. */
export interface Construction {
  readonly is: string;
  readonly name: string;
  readonly title: string | undefined;
  readonly assembly: Block<'assembly'> | undefined;
  readonly uValue: Si<'u-value'> | undefined;
  readonly rValue: Si<'r-value'> | undefined;
}

/** U-value from room air to what lies on the other side: the outdoors, or the still air of an unheated space. */
export function constructionU(
  element: Construction,
  flow: HeatFlow,
  beyond: 'outdoors' | 'buffer-space',
  sheet?: Sheet,
): Si<'u-value'> {
  const stated = statedU(element, sheet);
  if (stated !== undefined) return stated;
  const films = beyond === 'outdoors' ? ashraeFilms(flow) : facingBufferSpace(ashraeFilms(flow));
  return layeredU(element, films, sheet);
}

/** Resistance from room air to the soil, without an outside film. */
export function resistanceToSoil(element: Construction, flow: HeatFlow, sheet?: Sheet): Si<'r-value'> {
  const stated = statedU(element, sheet);
  const { outside } = ashraeFilms(flow);
  // A stated resistance counts both films; the soil has none.
  if (stated !== undefined) return Math.max(1 / stated - outside, 0.01);
  return 1 / layeredU(element, { ...ashraeFilms(flow), outside: 0 }, sheet);
}

function statedU(element: Construction, sheet?: Sheet): Si<'u-value'> | undefined {
  const { assembly } = element;
  const u = element.uValue ?? (element.rValue === undefined ? assembly?.uValue : undefined);
  if (u !== undefined) {
    positive(u, `the u-value of ${named(element)}`);
    sheet?.(() => ({ label: `U-value of ${named(element)}, as stated`, value: u, dimension: 'u-value' }));
    return u;
  }
  const r = element.rValue ?? assembly?.rValue;
  if (r === undefined) return undefined;
  positive(r, `the r-value of ${named(element)}`);
  sheet?.(() => ({
    label: `U-value of ${named(element)}, from its stated resistance`,
    formula: '1 / R',
    inputs: { R: [r, 'r-value'] },
    value: 1 / r,
    dimension: 'u-value',
  }));
  return 1 / r;
}

function layeredU(element: Construction, films: Films, sheet?: Sheet): Si<'u-value'> {
  const method = element.assembly?.framing?.method;
  const averaged = (assembly: Assembly, on?: Sheet) =>
    method === 'combined' ? combinedMethod(assembly, on).u : parallelPath(assembly, on);
  sheet?.(() => ({
    label: `U-value of ${element.assembly ? named(element.assembly) : named(element)}`,
    value: averaged(layered(element, films)),
    dimension: 'u-value',
    role: 'heading',
  }));
  return averaged(layered(element, films, sheet), sheet);
}

/** The layers of the element's assembly with the films of its position. */
function layered(element: Construction, films: Films, sheet?: Sheet): Assembly {
  const { assembly } = element;
  if (!assembly) throw new Withheld(`${named(element)} says neither assembly, nor u-value, nor r-value`);
  if (assembly.layer.length === 0)
    throw new Withheld(`${named(assembly)} has neither layers nor a stated r-value or u-value`);
  const { framing } = assembly;
  const crossed = assembly.layer.some(l => l.framed);
  if (crossed && !framing) throw new Withheld(`${named(assembly)} has framed layers but no framing block`);
  return {
    films,
    layers: assembly.layer.map(l => layerOf(l, framing, sheet)),
    framingFraction: crossed && framing ? framing.fraction : 0,
  };
}

function layerOf(layer: Block<'layer'>, framing: Block<'framing'> | undefined, sheet?: Sheet): Layer {
  const resistance = layerResistance(layer, sheet);
  const label = layer.title ?? layer.name;
  if (!layer.framed || !framing) return { label, resistance };
  const depth = layer.thickness ?? framing.depth;
  const { conductivity } = framing.material;
  if (depth === undefined) throw new Withheld(`framed ${named(layer)} says no thickness, and the framing no depth`);
  if (conductivity === undefined) throw new Withheld(`${named(framing.material)} of the framing has no conductivity`);
  const along =
    notNegative(depth, 'the depth of the framing') / positive(conductivity, 'the conductivity of the framing');
  sheet?.(() => ({
    label: `Framing across ${label}`,
    formula: 'd / k',
    inputs: { d: [depth, 'length'], k: [conductivity, 'conductivity'] },
    value: along,
    dimension: 'r-value',
    role: 'item',
  }));
  return { label, resistance, framing: along };
}

function layerResistance(layer: Block<'layer'>, sheet?: Sheet): Si<'r-value'> {
  const { material, thickness } = layer;
  const stated = layer.rValue ?? (material?.conductivity === undefined ? material?.rValue : undefined);
  if (stated !== undefined) {
    positive(stated, `the r-value of ${named(layer)}`);
    sheet?.(() => ({ label: `${named(layer)}, as stated`, value: stated, dimension: 'r-value', role: 'item' }));
    return stated;
  }
  const conductivity = material?.conductivity;
  if (conductivity === undefined)
    throw new Withheld(`${named(layer)} says no r-value, and no material with a conductivity or an r-value`);
  if (thickness === undefined) throw new Withheld(`${named(layer)} says no thickness`);
  const resistance =
    notNegative(thickness, `the thickness of ${named(layer)}`) /
    positive(conductivity, `the conductivity of ${named(layer)}`);
  sheet?.(() => ({
    label: `${named(layer)}, ${material?.title ?? material?.name}`,
    formula: 'd / k',
    inputs: { d: [thickness, 'length'], k: [conductivity, 'conductivity'] },
    value: resistance,
    dimension: 'r-value',
    role: 'item',
  }));
  return resistance;
}
