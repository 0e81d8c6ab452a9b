import { readFileSync } from 'node:fs';
import { compressorMapFromJson, type CompressorMap, type CompressorMapOptions } from '../../src/compressor/index.js';

export const demoMapText = readFileSync(
  new URL('../../docs/examples/demo-map/hill-climb-compressor.json', import.meta.url),
  'utf8',
);

/** The made-up map of the examples. */
export const demoMap = (options?: CompressorMapOptions): CompressorMap => compressorMapFromJson(demoMapText, options);
