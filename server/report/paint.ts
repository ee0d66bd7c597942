import { styleText } from 'node:util';

export type Style = 'bold' | 'dim' | 'red' | 'yellow' | 'cyan' | 'green' | 'underline';

/** Puts a style on a text, or leaves it as it is where there are no colours. */
export type Paint = (style: Style, text: string) => string;

export const plain: Paint = (_, text) => text;
/** Whether the stream shows colours was judged before; Node shall not judge it again by its own standard output. */
export const coloured: Paint = (style, text) => styleText(style, text, { validateStream: false });
