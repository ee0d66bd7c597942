/** Styles are collected by the bundler into a file of their own. */
declare module '*.css';
