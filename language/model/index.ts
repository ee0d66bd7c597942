import type { Kind, Vocabulary } from '../vocabulary/index.js';
import type { Model } from './infer.js';

/** A block of the model: `Block<'wall'>`. SI numbers only; temperatures in °C. */
export type Block<K extends Kind = Kind> = Model<Vocabulary, K>;
/** A house as it stands after one stage. */
export type House = Block<'house'>;

export { Withheld } from './withheld.js';
