import { moistAirDensityFromVapourPressure, partialDensityOfDryAir } from '../air/density.js';
import type { Quantity, QuantityRecord } from '../units/index.js';
import { dewPoint } from './dew-point.js';
import { moistAirEnthalpy } from './enthalpy.js';
import {
  degreeOfSaturation,
  humidityRatioFromVapourPressure,
  specificHumidity,
  vapourPressureFromHumidityRatio,
} from './humidity-ratio.js';
import { dryPressure, relativeHumidityFromVapourPressure } from './vapour-pressure.js';
import { wetBulb } from './wet-bulb.js';

/** The properties of humid air. */
interface HumidAirProperties {
  /** Dry-bulb temperature. */
  readonly temperature: Quantity<'temperature'>;
  /** Total absolute pressure. */
  readonly pressure: Quantity<'absolute pressure'>;
  /** Partial pressure of the water vapour. */
  readonly vapourPressure: Quantity<'absolute pressure'>;
  /** Pressure without the vapour. */
  readonly dryPressure: Quantity<'absolute pressure'>;
  /** Mass of vapour per mass of dry air. */
  readonly humidityRatio: Quantity<'humidity ratio'>;
  /** Mass of vapour per mass of humid air. */
  readonly specificHumidity: Quantity<'mass fraction'>;
  /** Vapour pressure over saturation; over ice below 0.01 °C. */
  readonly relativeHumidity: Quantity<'relative humidity'>;
  /** Humidity ratio over that of saturated air. */
  readonly degreeOfSaturation: Quantity<'ratio'>;
  /** Dew point, below 0.01 °C the frost point. */
  readonly dewPoint: Quantity<'temperature'>;
  /** Wet bulb by adiabatic saturation, below 0.01 °C over ice. */
  readonly wetBulb: Quantity<'temperature'>;
  /** Density of the mixture. */
  readonly density: Quantity<'density'>;
  /** Mass of dry air per volume: what the oxygen follows. */
  readonly dryDensity: Quantity<'density'>;
  /** Enthalpy per mass of dry air. */
  readonly enthalpy: Quantity<'specific energy'>;
}

/**
 * A state of humid air. Every property is calculated when it is first read, and is then one value of the graph; one that does not
 * exist (the dew point of perfectly dry air, the degree of saturation where saturation cannot exist) throws CalculationError.
 */
export interface HumidAir extends HumidAirProperties {
  toString(): string;
  /** The state and its usual measures as records. */
  toJSON(): Readonly<Record<string, QuantityRecord>>;
}

/** Properties that were given, and those calculated since. */
export type Known = { -readonly [P in keyof HumidAirProperties]?: HumidAirProperties[P] };

/** Temperature and pressure of the air, which every way of stating its humidity needs beside it. */
export interface AirPlace {
  /** Dry-bulb temperature. */
  readonly temperature: Quantity<'temperature'>;
  /** Total absolute pressure. */
  readonly pressure: Quantity<'absolute pressure'>;
}

/** Either the vapour pressure or the humidity ratio is known from the start; all else follows from it. */
export class HumidAirState implements HumidAir {
  readonly temperature: Quantity<'temperature'>;
  readonly pressure: Quantity<'absolute pressure'>;
  readonly #known: Known;

  constructor({ temperature, pressure }: AirPlace, known: Known) {
    this.temperature = temperature;
    this.pressure = pressure;
    this.#known = known;
  }

  get vapourPressure(): Quantity<'absolute pressure'> {
    return (this.#known.vapourPressure ??= vapourPressureFromHumidityRatio({
      pressure: this.pressure,
      humidityRatio: this.humidityRatio,
    }));
  }

  get humidityRatio(): Quantity<'humidity ratio'> {
    return (this.#known.humidityRatio ??= humidityRatioFromVapourPressure({
      pressure: this.pressure,
      vapourPressure: this.vapourPressure,
    }));
  }

  get dryPressure(): Quantity<'absolute pressure'> {
    return (this.#known.dryPressure ??= dryPressure({ pressure: this.pressure, vapourPressure: this.vapourPressure }));
  }

  get specificHumidity(): Quantity<'mass fraction'> {
    return (this.#known.specificHumidity ??= specificHumidity({ humidityRatio: this.humidityRatio }));
  }

  get relativeHumidity(): Quantity<'relative humidity'> {
    return (this.#known.relativeHumidity ??= relativeHumidityFromVapourPressure({
      temperature: this.temperature,
      vapourPressure: this.vapourPressure,
    }));
  }

  get degreeOfSaturation(): Quantity<'ratio'> {
    return (this.#known.degreeOfSaturation ??= degreeOfSaturation({
      temperature: this.temperature,
      pressure: this.pressure,
      humidityRatio: this.humidityRatio,
    }));
  }

  get dewPoint(): Quantity<'temperature'> {
    return (this.#known.dewPoint ??= dewPoint({ vapourPressure: this.vapourPressure }));
  }

  get wetBulb(): Quantity<'temperature'> {
    return (this.#known.wetBulb ??= wetBulb({
      temperature: this.temperature,
      pressure: this.pressure,
      humidityRatio: this.humidityRatio,
    }));
  }

  get density(): Quantity<'density'> {
    return (this.#known.density ??= moistAirDensityFromVapourPressure({
      temperature: this.temperature,
      pressure: this.pressure,
      vapourPressure: this.vapourPressure,
    }));
  }

  get dryDensity(): Quantity<'density'> {
    return (this.#known.dryDensity ??= partialDensityOfDryAir({
      temperature: this.temperature,
      pressure: this.pressure,
      vapourPressure: this.vapourPressure,
    }));
  }

  get enthalpy(): Quantity<'specific energy'> {
    return (this.#known.enthalpy ??= moistAirEnthalpy({
      temperature: this.temperature,
      humidityRatio: this.humidityRatio,
    }));
  }

  toString(): string {
    const { temperature, pressure, relativeHumidity, humidityRatio, density } = this;
    const state = `humid air at ${String(temperature)} and ${String(pressure)}`;
    return `${state}: relative humidity ${String(relativeHumidity)}, humidity ratio ${String(humidityRatio)}, density ${String(density)}`;
  }

  toJSON(): Readonly<Record<string, QuantityRecord>> {
    const { temperature, pressure, relativeHumidity, humidityRatio, vapourPressure, density } = this;
    const shown = { temperature, pressure, relativeHumidity, humidityRatio, vapourPressure, density };
    return Object.fromEntries(Object.entries(shown).map(([name, quantity]) => [name, quantity.toJSON()]));
  }

  /** @internal */
  [Symbol.for('nodejs.util.inspect.custom')](): string {
    return this.toString();
  }
}
