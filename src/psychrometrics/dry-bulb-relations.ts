import { MOLAR_MASS_RATIO } from '../air/constants.js';
import { input, output, type Bounds } from '../calculation/index.js';
import { rootBetween } from '../statistics/root-between.js';
import {
  COLDEST_ICE,
  COLDEST_WATER,
  dryBulbAt,
  humidityRatioAt,
  type Wick,
  type WickPair,
} from './adiabatic-saturation.js';
import { HUMIDITY_RATIO, ROUNDING } from './ranges.js';
import { TRIPLE_POINT } from './saturation-pressure.js';
import { celsiusText, mayBeEither, oneState, overIceText } from './wick-rules.js';

export const RELATIVE_HUMIDITY = { min: 1e-4, max: 1, typical: 0.45 };

/** What sets apart the dry bulbs of a wick with one way to take saturation from those with another. */
export interface DryBulbSaturation {
  readonly wicks: WickPair;
  /** How saturation pressure depends on temperature and total pressure: over ice below the triple point, over water above. */
  readonly saturated: Wick['saturated'];
  /** The warmest dry bulb that is looked for. */
  readonly hottest: number;
  /** A dry bulb, or NaN where saturated air cannot exist and there is no relative humidity either. */
  readonly withHumidity: (T: number, p: number) => number;
  readonly isBelowBoiling: (p: number, Tw: number) => boolean;
  readonly pressure: Bounds;
  readonly wetBulb: Bounds;
}

/** The balance of a wick solved for the dry bulb, as formula text. */
export function wickText(wick: 'wet' | 'iced', ps: string): string {
  const latent = wick === 'wet' ? '(2501000 - 2326 * (Tw - 273.15))' : '(2830000 - 240 * (Tw - 273.15))';
  return `Tw + ${latent} * (${MOLAR_MASS_RATIO} * ${ps} / (p - ${ps}) - W) / (1006 + 1860 * W)`;
}

/** The same where the wick carries ice below the triple point, water above. */
export const eitherWickText = (pice: string, pwater: string): string =>
  `Tw < ${TRIPLE_POINT} ? ${wickText('iced', pice)} : ${wickText('wet', pwater)}`;

type Kernel = (p: number, Tw: number, humidity: number) => number;

/**
 * What holds of the dry bulb of a wick however saturation is taken: six definitions without their names, formulas and sources. From a
 * humidity ratio and from a relative humidity, over water, over ice, and over whichever the wick carries.
 */
export function dryBulbRelations({
  wicks,
  saturated,
  hottest,
  withHumidity,
  isBelowBoiling,
  pressure,
  wetBulb,
}: DryBulbSaturation) {
  const common = { output: output('T', 'temperature', '°C') };
  const belowBoiling = {
    need: 'saturation pressure at the wet bulb must stay below the total pressure',
    holds: isBelowBoiling,
  };
  const bulbs = {
    wet: {
      ...wetBulb,
      min: COLDEST_WATER,
      ...(wetBulb.trusted ? { trusted: [COLDEST_WATER, wetBulb.trusted[1]] as const } : {}),
    },
    iced: { min: COLDEST_ICE, max: TRIPLE_POINT, typical: 272.15 },
    either: wetBulb,
  };
  const wickAt = (state: keyof typeof bulbs, Tw: number): Wick =>
    state === 'either' ? wicks[Tw < TRIPLE_POINT ? 'iced' : 'wet'] : wicks[state];

  const fromRatio =
    (state: keyof typeof bulbs): Kernel =>
    (p, Tw, W) =>
      dryBulbAt(wickAt(state, Tw), p, Tw, W);
  /** Drier air is warmer over the same wick. */
  const fromHumidity =
    (state: keyof typeof bulbs): Kernel =>
    (p, Tw, RH) => {
      const wick = wickAt(state, Tw);
      const excess = (T: number): number => {
        const pv = RH * saturated(T, p);
        return (p - pv) * humidityRatioAt(wick, T, p, Tw) - MOLAR_MASS_RATIO * pv;
      };
      const driest = dryBulbAt(wick, p, Tw, 0);
      return withHumidity(rootBetween(excess, Tw * (1 - 1e-10), Math.min(hottest, driest)), p);
    };
  /** Where the wick may as well carry water, with what that gives. */
  const eitherRule = (overWater: Kernel) =>
    oneState((...[p, Tw, humidity]) => {
      if (!mayBeEither(Tw!)) return undefined;
      const T = overWater(p!, Tw!, humidity!);
      return T >= Tw! / ROUNDING ? overIceText(celsiusText(T)) : undefined;
    });

  const ofHumidityRatio = (state: keyof typeof bulbs) => ({
    ...common,
    inputs: {
      /** Total absolute pressure. */
      pressure: input('p', 'absolute pressure', pressure),
      /** Wet-bulb temperature. */
      wetBulb: input('Tw', 'temperature', bulbs[state]),
      /** Mass of vapour per mass of dry air. */
      humidityRatio: input('W', 'humidity ratio', { ...HUMIDITY_RATIO, typical: state === 'iced' ? 0.0026 : 0.0062 }),
    },
    si: fromRatio(state),
    rules: [
      belowBoiling,
      {
        need: 'the humidity ratio must not exceed that of air saturated at the wet bulb',
        holds: (p: number, Tw: number, W: number) => fromRatio(state)(p, Tw, W) >= Tw / ROUNDING,
      },
      ...(state === 'either' ? [eitherRule(fromRatio('wet'))] : []),
    ],
    falls: ['W', 'p'],
  });
  const ofRelativeHumidity = (state: keyof typeof bulbs) => ({
    ...common,
    inputs: {
      /** Total absolute pressure. */
      pressure: input('p', 'absolute pressure', pressure),
      /** Wet-bulb temperature. */
      wetBulb: input('Tw', 'temperature', bulbs[state]),
      /** Vapour over that of saturation; over ice below 0.01 °C. */
      relativeHumidity: input('RH', 'relative humidity', RELATIVE_HUMIDITY),
    },
    si: fromHumidity(state),
    rules: [belowBoiling, ...(state === 'either' ? [eitherRule(fromHumidity('wet'))] : [])],
    falls: ['RH'],
  });
  return {
    ofHumidityRatio: ofHumidityRatio('either'),
    ofHumidityRatioOverWater: ofHumidityRatio('wet'),
    ofHumidityRatioOverIce: ofHumidityRatio('iced'),
    ofRelativeHumidity: ofRelativeHumidity('either'),
    ofRelativeHumidityOverWater: ofRelativeHumidity('wet'),
    ofRelativeHumidityOverIce: ofRelativeHumidity('iced'),
  };
}
