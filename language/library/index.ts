import { unpack, type DeclaredFile } from '../build/index.js';
import resolved from './resolved.json' with { type: 'json' };

/** Addresses of the built-in files begin with this; their texts are shipped beside the programs. */
export const LIBRARY_SCHEME = 'wattwright-library:';

/** The built-in library: generic materials, glazings, assemblies, appliances. Made from the `.house` files here by the build. */
export const library: readonly DeclaredFile[] = (resolved as unknown as Record<string, unknown>[]).map(unpack);
