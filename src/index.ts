/**
 * Every topic of the library in one import, but for the plain-number `coldside/statistics` and for `coldside/units/exact`.
 * Import a topic by its own path, such as `coldside/compressor`, to load only that.
 *
 * @module coldside
 */
export * from './units/index.js';
export * from './calculation/index.js';
export * from './air/index.js';
export * from './psychrometrics/index.js';
export * from './compressor/index.js';
export * from './intercooler/index.js';
export * from './engine/index.js';
export * from './correction/index.js';
export * from './fuel/index.js';
export * from './knock/index.js';
export * from './charge-path/index.js';
export * from './catalogue/index.js';
export * from './sweep/index.js';
export * from './comparison/index.js';
export * from './plot/index.js';
export * from './report/index.js';
