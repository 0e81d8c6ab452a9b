import { commonPractice, constant, source } from '../calculation/index.js';
import { absolutePressure, temperature, type Quantity } from '../units/index.js';

/** The state that a compressor map's flow and speed are corrected to. Spread it into {@link correctedFlow}. */
export interface CompressorMapReference {
  readonly referenceTemperature: Quantity<'temperature'>;
  readonly referencePressure: Quantity<'absolute pressure'>;
}

/**
 * Reference states in use for compressor maps. They differ by up to 8 % in flow, so keep the state with the map.
 *
 * Other states occur, such as 293 K or 303 K with 98.1 kPa: read the map's own, and give it to {@link correctedFlow} as it stands.
 */
export const compressorMapReferences = {
  /** Gas-stand code: 25 °C and 100 kPa. */
  saeJ1826: {
    referenceTemperature: constant('compressor/sae-reference-temperature', temperature(298.15, 'K'), {
      label: 'SAE J1826 reference temperature',
      source: source('saeJ1826', 'reference conditions', 'memory'),
    }),
    referencePressure: constant('compressor/sae-reference-pressure', absolutePressure(100, 'kPa'), {
      label: 'SAE J1826 reference pressure',
      source: source('saeJ1826', 'reference conditions', 'memory'),
    }),
  },
  /** Standard atmosphere at sea level: 15 °C and 101.325 kPa. */
  aerospace: {
    referenceTemperature: constant('compressor/sea-level-reference-temperature', temperature(288.15, 'K'), {
      label: 'standard atmosphere temperature',
      source: source('iso2533', 'sea level', 'memory'),
    }),
    referencePressure: constant('compressor/sea-level-reference-pressure', absolutePressure(101.325, 'kPa'), {
      label: 'standard atmosphere pressure',
      source: source('iso2533', 'sea level', 'memory'),
    }),
  },
  /** Custom of maps in lb/min: 85 °F (545 °R) and 13.95 psi. */
  poundsPerMinute: {
    referenceTemperature: constant('compressor/lb-min-reference-temperature', temperature(545, '°R'), {
      label: 'lb/min map reference temperature',
      source: commonPractice('US compressor maps, 545 °R'),
    }),
    referencePressure: constant('compressor/lb-min-reference-pressure', absolutePressure(13.95, 'psi'), {
      label: 'lb/min map reference pressure',
      source: commonPractice('US compressor maps, 13.95 psi'),
    }),
  },
  /** The same custom in rounded SI figures: 302.6 K and 96 kPa. */
  poundsPerMinuteRounded: {
    referenceTemperature: constant('compressor/lb-min-rounded-reference-temperature', temperature(302.6, 'K'), {
      label: 'lb/min map reference temperature, rounded',
      source: commonPractice('compressor maps, 302.6 K'),
    }),
    referencePressure: constant('compressor/lb-min-rounded-reference-pressure', absolutePressure(96, 'kPa'), {
      label: 'lb/min map reference pressure, rounded',
      source: commonPractice('compressor maps, 96 kPa'),
    }),
  },
} as const satisfies Readonly<Record<string, CompressorMapReference>>;
