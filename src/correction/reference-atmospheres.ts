import { source } from '../calculation/index.js';
import { absolutePressure, relativeHumidity, temperature, type Quantity, type Source } from '../units/index.js';

/** The air a standard corrects to. */
export interface ReferenceAtmosphere {
  readonly pressure: Quantity<'absolute pressure'>;
  /** Whether the pressure is that of the air without its vapour, or the barometer's. */
  readonly basis: 'dry' | 'total';
  readonly temperature: Quantity<'temperature'>;
  /** Where the atmosphere is given with its vapour. */
  readonly relativeHumidity?: Quantity<'relative humidity'>;
  readonly source: Source;
}

/**
 * The reference atmospheres of the power standards and two that are taken for them by mistake.
 *
 * 99 kPa of dry air is 29.235 inHg at 0 °C; web pages print 29.23, 29.24 and, wrongly, 29.92 inHg for it.
 *
 * @example
 * String(referenceAtmospheres['SAE J607'].temperature) //=> '60 °F'
 */
export const referenceAtmospheres = {
  'SAE J1349': {
    pressure: absolutePressure(99, 'kPa'),
    basis: 'dry',
    temperature: temperature(25, '°C'),
    source: source('saeJ1349', 'reference atmosphere as quoted in public', 'memory'),
  },
  'SAE J607': {
    pressure: absolutePressure(101.325, 'kPa'),
    basis: 'dry',
    temperature: temperature(60, '°F'),
    source: source('saeJ607', '29.92 inHg dry and 60 °F as quoted in public', 'memory'),
  },
  'SAE J816': {
    pressure: absolutePressure(29, 'inHg'),
    basis: 'dry',
    temperature: temperature(85, '°F'),
    source: source('saeJ816', '29.38 inHg with 0.38 inHg of vapour, 85 °F', 'memory'),
  },
  'ISO 1585': {
    pressure: absolutePressure(99, 'kPa'),
    basis: 'dry',
    temperature: temperature(25, '°C'),
    source: source('iso1585', 'reference atmosphere, 298 K', 'memory'),
  },
  'JIS D 1001 (1993)': {
    pressure: absolutePressure(99, 'kPa'),
    basis: 'dry',
    temperature: temperature(25, '°C'),
    source: source('jisD1001', 'that of ISO 1585, its counterpart', 'memory'),
  },
  'SAE J1995': {
    pressure: absolutePressure(99, 'kPa'),
    basis: 'dry',
    temperature: temperature(25, '°C'),
    source: source('saeJ1995', 'as SAE J1349; pages that print 100 kPa mean it with the vapour', 'memory'),
  },
  'DIN 70020': {
    pressure: absolutePressure(1013, 'mbar'),
    basis: 'total',
    temperature: temperature(20, '°C'),
    source: source('din70020', 'reference atmosphere as quoted in public', 'memory'),
  },
  'ISO 3046-1': {
    pressure: absolutePressure(100, 'kPa'),
    basis: 'total',
    temperature: temperature(25, '°C'),
    relativeHumidity: relativeHumidity(30, '%'),
    source: source('iso3046', 'standard reference conditions', 'memory'),
  },
  'ISO 2533': {
    pressure: absolutePressure(101.325, 'kPa'),
    basis: 'dry',
    temperature: temperature(15, '°C'),
    source: source('iso2533', 'sea level', 'memory'),
  },
} as const satisfies Readonly<Record<string, ReferenceAtmosphere>>;
