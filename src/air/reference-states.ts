import { commonPractice, source } from '../calculation/index.js';
import { absolutePressure, temperature, type Quantity, type Source } from '../units/index.js';
import { moistAirDensityFromVapourPressure } from './density.js';

/** A state of air that volumes or powers are quoted at. */
export interface ReferenceState {
  /** Where the state is used. */
  readonly use: string;
  readonly temperature: Quantity<'temperature'>;
  /** Total absolute pressure. */
  readonly pressure: Quantity<'absolute pressure'>;
  /** Partial pressure of water vapour; 0 for a dry reference. */
  readonly vapourPressure: Quantity<'absolute pressure'>;
  readonly source: Source;
}

const DRY = absolutePressure(0, 'Pa');

/**
 * The reference states that flows are quoted at, by the name that units carry in brackets: `referenceStates['60F']` stands behind
 * `scfm(60F)`. There is no single standard.
 */
export const referenceStates = {
  '0C': {
    use: 'normal cubic metre; standard litre of many gas flow meters',
    temperature: temperature(0, '°C'),
    pressure: absolutePressure(101.325, 'kPa'),
    vapourPressure: DRY,
    source: commonPractice('normal conditions of flow meters'),
  },
  '15C': {
    use: 'standard atmosphere at sea level; standard litre of some flow meters',
    temperature: temperature(15, '°C'),
    pressure: absolutePressure(101.325, 'kPa'),
    vapourPressure: DRY,
    source: source('iso2533', 'sea level', 'memory'),
  },
  '20C': {
    use: 'standard litre of some flow meters',
    temperature: temperature(20, '°C'),
    pressure: absolutePressure(101.325, 'kPa'),
    vapourPressure: DRY,
    source: commonPractice('standard conditions of flow meters'),
  },
  '60F': {
    use: 'standard cubic foot of gas metering',
    temperature: temperature(60, '°F'),
    pressure: absolutePressure(14.696, 'psi'),
    vapourPressure: DRY,
    source: commonPractice('standard cubic foot at 60 °F and 14.696 psi'),
  },
  '68F': {
    use: 'standard cubic foot of compressed air, moist: 36 % relative humidity',
    temperature: temperature(68, '°F'),
    pressure: absolutePressure(14.7, 'psi'),
    vapourPressure: absolutePressure(841.969332, 'Pa'),
    source: commonPractice('standard cubic foot of compressed air at 68 °F, 14.7 psi, 36 % relative humidity'),
  },
  '70F': {
    use: 'standard air of the fan trade, which rounds its density to 0.075 lb/ft³',
    temperature: temperature(70, '°F'),
    pressure: absolutePressure(29.92, 'inHg'),
    vapourPressure: DRY,
    source: commonPractice('standard air of fan makers'),
  },
  '20C,1bar': {
    use: 'compressor ratings',
    temperature: temperature(20, '°C'),
    pressure: absolutePressure(1, 'bar'),
    vapourPressure: DRY,
    source: source('iso1217', 'standard inlet condition', 'memory'),
  },
} as const satisfies Record<string, ReferenceState>;

/**
 * Density of air at a reference state, vapour included where the state has some.
 *
 * @example
 * referenceDensity(referenceStates['60F']).in('lb/ft³') //=> 0.0763303
 */
export function referenceDensity({ temperature, pressure, vapourPressure }: ReferenceState): Quantity<'density'> {
  return moistAirDensityFromVapourPressure({ temperature, pressure, vapourPressure });
}
