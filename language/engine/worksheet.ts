import type { Dimension } from '../units/index.js';

/** A number put into a formula: its value in SI (points in °C) and the dimension it is printed in. */
export type Input = readonly [value: number, dimension: Dimension];

/**
 * One line of a calculation as a reviewer reads it. `formula` is in the symbols of `inputs`, in coherent SI units with
 * temperatures in °C, written with `+ - * / ^`, brackets and sqrt, ln, exp, min, max, ceil, floor, abs; a test evaluates
 * it with the printed inputs and compares with the printed value.
 */
export interface Step {
  readonly label: string;
  readonly formula?: string;
  readonly inputs?: Readonly<Record<string, Input>>;
  readonly value: number;
  readonly dimension: Dimension;
  /** The clause or publication that the line follows, with its edition. */
  readonly source?: string;
  readonly note?: string;
  /** A heading groups the lines below it; a total closes them. */
  readonly role?: 'heading' | 'item' | 'total';
}

/**
 * Given to a calculation by whoever wants to read it; absent otherwise, so that recording costs nothing:
 * `sheet?.(() => ({ label: 'Wall', ... }))`.
 */
export type Sheet = (make: () => Step) => void;
