import path from 'node:path';

/** What the editors open as a workspace, from the project's root, and the house in it. */
export const SAMPLE = { folder: 'samples', file: path.join('tamarack', 'tamarack.house'), tab: 'tamarack.house' };

/** A slip that anyone may make in that file, the finding it brings, and the fix that takes it away. */
export const FAULT = {
  from: 'breaker: 60 A',
  to: 'breaker: 30 A',
  /** Part of the finding's message. */
  message: 'more than its breaker of 30 A',
  /** Part of the fix's title. */
  fix: 'Set the breaker to 60 A',
};

/** On the same line: what is hovered over for a worksheet, the word of it that is pointed at, and a part of that worksheet. */
export const WORKSHEET = { at: 'circuit c-strip', word: 'c-strip', text: 'Worksheet' };

/** A result that the preview shows for the house as it stands, and how it is printed. */
export const HEADLINE = { name: 'service.demand', text: /\d A\b/ };
