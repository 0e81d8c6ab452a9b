import { moistAirDensityFromVapourPressure, partialDensityOfDryAir } from '../air/density.js';
import { dryPartOfDensity } from '../air/dry-part.js';
import { realGasDensity } from '../air/real-gas.js';
import type { Quantity } from '../units/index.js';
import { dewPoint, vapourPressureFromDewPoint } from './dew-point.js';
import {
  dryBulbFromEnthalpyAndRelativeHumidity,
  dryBulbFromRelativeHumidity,
  dryBulbFromWetBulb,
  dryBulbFromWetBulbOverIce,
  dryBulbFromWetBulbOverWater,
  dryBulbFromWetBulbAndRelativeHumidity,
  dryBulbFromWetBulbAndRelativeHumidityOverIce,
  dryBulbFromWetBulbAndRelativeHumidityOverWater,
} from './dry-bulb.js';
import {
  dryBulbFromEnthalpyAndRelativeHumidityInMoistAir,
  dryBulbFromRelativeHumidityInMoistAir,
  dryBulbFromWetBulbAndRelativeHumidityInMoistAir,
  dryBulbFromWetBulbAndRelativeHumidityInMoistAirOverIce,
  dryBulbFromWetBulbAndRelativeHumidityInMoistAirOverWater,
  dryBulbFromWetBulbInMoistAir,
  dryBulbFromWetBulbInMoistAirOverIce,
  dryBulbFromWetBulbInMoistAirOverWater,
} from './dry-bulb-in-moist-air.js';
import { degreeOfSaturation } from './humidity-ratio.js';
import {
  degreeOfSaturationInMoistAir,
  dewPointInMoistAir,
  relativeHumidityInMoistAir,
  saturationPressureInMoistAir,
  vapourPressureFromRelativeHumidityInMoistAir,
} from './saturation-in-moist-air.js';
import { overWater } from './saturation-pressure.js';
import { relativeHumidityFromVapourPressure, vapourPressureFromRelativeHumidity } from './vapour-pressure.js';
import {
  humidityRatioFromWetBulb,
  humidityRatioFromWetBulbOverIce,
  humidityRatioFromWetBulbOverWater,
  wetBulb,
  wetBulbOverIce,
  wetBulbOverWater,
} from './wet-bulb.js';
import {
  humidityRatioFromWetBulbInMoistAir,
  humidityRatioFromWetBulbInMoistAirOverIce,
  humidityRatioFromWetBulbInMoistAirOverWater,
  wetBulbInMoistAir,
  wetBulbInMoistAirOverIce,
  wetBulbInMoistAirOverWater,
} from './wet-bulb-in-moist-air.js';

type Temperature = Quantity<'temperature'>;
type Pressure = Quantity<'absolute pressure'>;
type HumidityRatio = Quantity<'humidity ratio'>;
type RelativeHumidity = Quantity<'relative humidity'>;

interface AtPressure {
  readonly pressure: Pressure;
}
interface InAir extends AtPressure {
  readonly temperature: Temperature;
}
interface OfVapour extends InAir {
  readonly vapourPressure: Pressure;
}
interface OfRatio extends InAir {
  readonly humidityRatio: HumidityRatio;
}
interface OfWick extends InAir {
  readonly wetBulb: Temperature;
}

/** Where a wick near 0 °C is known to be wet or iced. */
export type Wick = 'water' | 'ice';

/** The relations of humid air that depend on whether air counts as a perfect or a real gas. */
export interface HumidAirModel {
  readonly name: 'perfect gas' | 'real gas';
  /** Whether air of that temperature and pressure can be saturated at all, which relative humidity needs. */
  readonly hasSaturation: (air: InAir) => boolean;
  readonly vapourPressureOfRelativeHumidity: (air: InAir & { relativeHumidity: RelativeHumidity }) => Pressure;
  readonly vapourPressureOfDewPoint: (air: AtPressure & { dewPoint: Temperature }) => Pressure;
  readonly relativeHumidity: (air: OfVapour) => RelativeHumidity;
  readonly dewPoint: (air: AtPressure & { vapourPressure: Pressure }) => Temperature;
  readonly degreeOfSaturation: (air: OfRatio) => Quantity<'ratio'>;
  readonly humidityRatioOfWetBulb: (air: OfWick, wick?: Wick) => HumidityRatio;
  readonly wetBulb: (air: OfRatio, wick?: Wick) => Temperature;
  readonly density: (air: OfVapour & OfRatio) => Quantity<'density'>;
  readonly dryDensity: (air: OfVapour & OfRatio) => Quantity<'density'>;
  readonly dryBulbOfRelativeHumidity: (
    air: AtPressure & { vapourPressure: Pressure; relativeHumidity: RelativeHumidity },
  ) => Temperature;
  readonly dryBulbOfWetBulb: (
    air: AtPressure & { wetBulb: Temperature; humidityRatio: HumidityRatio },
    wick?: Wick,
  ) => Temperature;
  readonly dryBulbOfWetBulbAndRelativeHumidity: (
    air: AtPressure & { wetBulb: Temperature; relativeHumidity: RelativeHumidity },
    wick?: Wick,
  ) => Temperature;
  readonly dryBulbOfEnthalpyAndRelativeHumidity: (
    air: AtPressure & { enthalpy: Quantity<'specific energy'>; relativeHumidity: RelativeHumidity },
  ) => Temperature;
}

/** One of three relations, by what the wick carries. */
/* @__NO_SIDE_EFFECTS__ */
const byWick =
  <Air, Result>(
    either: (air: Air) => Result,
    overWater: (air: Air) => Result,
    overIce: (air: Air) => Result,
  ): ((air: Air, wick?: Wick) => Result) =>
  (air, wick) =>
    (wick === 'water' ? overWater : wick === 'ice' ? overIce : either)(air);

/** The handbook's simple relations: no enhancement factor, no compressibility. */
export const PERFECT_GAS: HumidAirModel = {
  name: 'perfect gas',
  hasSaturation: () => true,
  vapourPressureOfRelativeHumidity: ({ temperature, relativeHumidity }) =>
    vapourPressureFromRelativeHumidity({ temperature, relativeHumidity }),
  vapourPressureOfDewPoint: ({ dewPoint: at }) => vapourPressureFromDewPoint({ dewPoint: at }),
  relativeHumidity: ({ temperature, vapourPressure }) =>
    relativeHumidityFromVapourPressure({ temperature, vapourPressure }),
  dewPoint: ({ vapourPressure }) => dewPoint({ vapourPressure }),
  degreeOfSaturation,
  humidityRatioOfWetBulb: byWick(
    humidityRatioFromWetBulb,
    humidityRatioFromWetBulbOverWater,
    humidityRatioFromWetBulbOverIce,
  ),
  wetBulb: byWick(wetBulb, wetBulbOverWater, wetBulbOverIce),
  density: ({ temperature, pressure, vapourPressure }) =>
    moistAirDensityFromVapourPressure({ temperature, pressure, vapourPressure }),
  dryDensity: ({ temperature, pressure, vapourPressure }) =>
    partialDensityOfDryAir({ temperature, pressure, vapourPressure }),
  dryBulbOfRelativeHumidity: ({ vapourPressure, relativeHumidity }) =>
    dryBulbFromRelativeHumidity({ vapourPressure, relativeHumidity }),
  dryBulbOfWetBulb: byWick(dryBulbFromWetBulb, dryBulbFromWetBulbOverWater, dryBulbFromWetBulbOverIce),
  dryBulbOfWetBulbAndRelativeHumidity: byWick(
    dryBulbFromWetBulbAndRelativeHumidity,
    dryBulbFromWetBulbAndRelativeHumidityOverWater,
    dryBulbFromWetBulbAndRelativeHumidityOverIce,
  ),
  dryBulbOfEnthalpyAndRelativeHumidity: dryBulbFromEnthalpyAndRelativeHumidity,
};

/** With Greenspan's enhancement factor in every saturation, and the second virial coefficient in the density. */
export const REAL_GAS: HumidAirModel = {
  name: 'real gas',
  hasSaturation: ({ temperature, pressure }) => overWater(temperature.si) < pressure.si,
  vapourPressureOfRelativeHumidity: vapourPressureFromRelativeHumidityInMoistAir,
  vapourPressureOfDewPoint: ({ pressure, dewPoint: at }) => saturationPressureInMoistAir({ temperature: at, pressure }),
  relativeHumidity: relativeHumidityInMoistAir,
  dewPoint: dewPointInMoistAir,
  degreeOfSaturation: degreeOfSaturationInMoistAir,
  humidityRatioOfWetBulb: byWick(
    humidityRatioFromWetBulbInMoistAir,
    humidityRatioFromWetBulbInMoistAirOverWater,
    humidityRatioFromWetBulbInMoistAirOverIce,
  ),
  wetBulb: byWick(wetBulbInMoistAir, wetBulbInMoistAirOverWater, wetBulbInMoistAirOverIce),
  density: ({ temperature, pressure, humidityRatio }) => realGasDensity({ temperature, pressure, humidityRatio }),
  dryDensity: ({ temperature, pressure, humidityRatio }) =>
    dryPartOfDensity({ density: realGasDensity({ temperature, pressure, humidityRatio }), humidityRatio }),
  dryBulbOfRelativeHumidity: dryBulbFromRelativeHumidityInMoistAir,
  dryBulbOfWetBulb: byWick(
    dryBulbFromWetBulbInMoistAir,
    dryBulbFromWetBulbInMoistAirOverWater,
    dryBulbFromWetBulbInMoistAirOverIce,
  ),
  dryBulbOfWetBulbAndRelativeHumidity: byWick(
    dryBulbFromWetBulbAndRelativeHumidityInMoistAir,
    dryBulbFromWetBulbAndRelativeHumidityInMoistAirOverWater,
    dryBulbFromWetBulbAndRelativeHumidityInMoistAirOverIce,
  ),
  dryBulbOfEnthalpyAndRelativeHumidity: dryBulbFromEnthalpyAndRelativeHumidityInMoistAir,
};
