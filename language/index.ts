/** The one door of the language: editor, command line, report and tests all enter here. */
export * from './analysis/index.js';
