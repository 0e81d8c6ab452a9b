import { input, output, type Bounds } from '../calculation/index.js';
import {
  canBeIced,
  canBeWet,
  COLDEST_ICE,
  humidityRatioAt,
  humidityRatioEither,
  icedBulbAt,
  wetBulbAt,
  wetBulbEither,
  type Wick,
  type WickPair,
} from './adiabatic-saturation.js';
import { vapourPressureAt } from './humidity-ratio.js';
import { celsius, HUMIDITY_RATIO, ROUNDING } from './ranges.js';
import { TRIPLE_POINT } from './saturation-pressure.js';
import {
  celsiusText,
  COLDEST_UNFROZEN,
  DRIEST,
  mayBeEither,
  notAboveDryBulb,
  oneState,
  overIceText,
} from './wick-rules.js';

const DRY_BULB = {
  min: celsius(-90),
  max: celsius(250),
  trusted: [celsius(-90), celsius(200)],
  typical: 291.15,
} as const;
const WARM_DRY_BULB = { ...DRY_BULB, min: celsius(-40), trusted: [celsius(-40), celsius(200)] } as const;

/** What sets apart the relations of a wick with one way to take saturation from those with another. */
export interface WickSaturation {
  readonly wicks: WickPair;
  /** Saturation pressure of the air: over ice below the triple point, over water above. */
  readonly saturated: Wick['saturated'];
  readonly isBelowBoiling: (Tw: number, p: number) => boolean;
  readonly pressure: Bounds;
  /** Bounds of a wet bulb that may be iced, and of one that carries water. */
  readonly wetBulb: Bounds;
  readonly waterBulb: Bounds;
}

/**
 * What holds of a wick however saturation is taken: the six definitions without their names, formulas and sources. Humidity ratio from
 * the wet bulb, and the wet bulb from the humidity ratio, over water, over ice, and over whichever the wick carries.
 */
export function wickRelations({ wicks, saturated, isBelowBoiling, pressure, wetBulb, waterBulb }: WickSaturation) {
  const { wet, iced } = wicks;
  const task = 'describe humid air' as const;
  const fromWetBulb = { task, output: output('W', 'humidity ratio', 'g/kg') };
  const toWetBulb = { task, output: output('Tw', 'temperature', '°C'), rises: ['T', 'W', 'p'] };
  const belowBoiling = {
    need: 'saturation pressure at the wet bulb must stay below the total pressure',
    holds: (_T: number, p: number, Tw: number) => isBelowBoiling(Tw, p),
  };
  const notDrierThanDry = (humidityRatio: (T: number, p: number, Tw: number) => number) => ({
    need: DRIEST,
    holds: (T: number, p: number, Tw: number) => humidityRatio(T, p, Tw) >= 0,
  });
  const notSupersaturated = (limit: Wick['saturated']) => ({
    need: 'the humidity ratio must not exceed saturation at that temperature and pressure (more would condense)',
    holds: (T: number, p: number, W: number) => vapourPressureAt(p, W) <= limit(T, p) * ROUNDING,
  });
  const overWater = (T: number, p: number, Tw: number) => humidityRatioAt(wet, T, p, Tw);
  const overIce = (T: number, p: number, Tw: number) => humidityRatioAt(iced, T, p, Tw);
  const either = (T: number, p: number, Tw: number) => humidityRatioEither(wicks, T, p, Tw);

  return {
    humidityRatioOverWater: {
      ...fromWetBulb,
      inputs: {
        /** Dry-bulb temperature. */
        temperature: input('T', 'temperature', WARM_DRY_BULB),
        /** Total absolute pressure. */
        pressure: input('p', 'absolute pressure', pressure),
        /** Temperature of a wick wet with water. */
        wetBulb: input('Tw', 'temperature', waterBulb),
      },
      si: overWater,
      rules: [notAboveDryBulb, belowBoiling, notDrierThanDry(overWater)],
      rises: ['Tw'],
      falls: ['T', 'p'],
    },
    humidityRatioOverIce: {
      ...fromWetBulb,
      inputs: {
        /** Dry-bulb temperature. */
        temperature: input('T', 'temperature', { ...DRY_BULB, typical: 274.15 }),
        /** Total absolute pressure. */
        pressure: input('p', 'absolute pressure', pressure),
        /** Temperature of a wick covered with ice. */
        wetBulb: input('Tw', 'temperature', { min: COLDEST_ICE, max: TRIPLE_POINT, typical: 272.15 }),
      },
      si: overIce,
      rules: [notAboveDryBulb, notDrierThanDry(overIce)],
      rises: ['Tw'],
      falls: ['T', 'p'],
    },
    humidityRatio: {
      ...fromWetBulb,
      inputs: {
        /** Dry-bulb temperature. */
        temperature: input('T', 'temperature', DRY_BULB),
        /** Total absolute pressure. */
        pressure: input('p', 'absolute pressure', pressure),
        /** Wet-bulb temperature. */
        wetBulb: input('Tw', 'temperature', wetBulb),
      },
      si: either,
      rules: [
        notAboveDryBulb,
        belowBoiling,
        notDrierThanDry(either),
        oneState((...[T, p, Tw]) => {
          const W = mayBeEither(Tw!) ? overWater(T!, p!, Tw!) : -1;
          return W >= 0 ? overIceText(`${(1000 * W).toFixed(3)} g/kg`) : undefined;
        }),
      ],
      falls: ['T', 'p'],
    },
    wetBulbOverWater: {
      ...toWetBulb,
      inputs: {
        /** Dry-bulb temperature. */
        temperature: input('T', 'temperature', WARM_DRY_BULB),
        /** Total absolute pressure. */
        pressure: input('p', 'absolute pressure', pressure),
        /** Mass of vapour per mass of dry air. */
        humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
      },
      si: (T: number, p: number, W: number) => wetBulbAt(wet, T, p, W),
      rules: [notSupersaturated(wet.saturated)],
    },
    wetBulbOverIce: {
      ...toWetBulb,
      inputs: {
        /** Dry-bulb temperature. */
        temperature: input('T', 'temperature', { ...DRY_BULB, typical: 275.15 }),
        /** Total absolute pressure. */
        pressure: input('p', 'absolute pressure', pressure),
        /** Mass of vapour per mass of dry air. */
        humidityRatio: input('W', 'humidity ratio', { ...HUMIDITY_RATIO, typical: 0.0026 }),
      },
      si: (T: number, p: number, W: number) => icedBulbAt(iced, T, p, W),
      rules: [
        notSupersaturated(saturated),
        {
          need: 'the wick must stay iced: in air this warm or humid it melts',
          holds: (T: number, p: number, W: number) => canBeIced(iced, T, p, W),
        },
      ],
    },
    wetBulb: {
      ...toWetBulb,
      inputs: {
        /** Dry-bulb temperature. */
        temperature: input('T', 'temperature', DRY_BULB),
        /** Total absolute pressure. */
        pressure: input('p', 'absolute pressure', pressure),
        /** Mass of vapour per mass of dry air. */
        humidityRatio: input('W', 'humidity ratio', HUMIDITY_RATIO),
      },
      si: (T: number, p: number, W: number) => wetBulbEither(wicks, T, p, W),
      rules: [
        notSupersaturated(saturated),
        oneState((...[T, p, W]) => {
          if (T! < COLDEST_UNFROZEN || !canBeIced(iced, T!, p!, W!)) return undefined;
          if (canBeWet(wet, T!, p!, W!))
            return `this is over water; over ice it is ${celsiusText(icedBulbAt(iced, T!, p!, W!))}`;
          const Tw = wetBulbAt(wet, T!, p!, W!);
          return mayBeEither(Tw) ? overIceText(celsiusText(Tw)) : undefined;
        }),
      ],
    },
  };
}
