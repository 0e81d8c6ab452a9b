import type { Quantity, QuantityRecord } from '../units/index.js';
import { moistAirEnthalpy } from './enthalpy.js';
import {
  humidityRatioFromVapourPressure,
  specificHumidity,
  vapourPressureFromHumidityRatio,
} from './humidity-ratio.js';
import type { HumidAirModel } from './model.js';
import { dryPressure } from './vapour-pressure.js';

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
  /** Vapour pressure over saturation of pure vapour, or as a real gas over saturation in air; over ice below 0.01 °C. */
  readonly relativeHumidity: Quantity<'relative humidity'>;
  /** Humidity ratio over that of saturated air. */
  readonly degreeOfSaturation: Quantity<'ratio'>;
  /** Dew point, below 0.01 °C the frost point. */
  readonly dewPoint: Quantity<'temperature'>;
  /** Wet bulb by adiabatic saturation, over water where that gives 0.01 °C or more, else over ice. */
  readonly wetBulb: Quantity<'temperature'>;
  /** Wet bulb of a wick that carries water, supercooled below 0 °C. */
  readonly wetBulbOverWater: Quantity<'temperature'>;
  /** Wet bulb of a wick that carries ice; there is none in air in which it would melt. */
  readonly wetBulbOverIce: Quantity<'temperature'>;
  /** Density of the mixture; as a real gas with its compressibility. */
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
  /** Which relations the properties follow. */
  readonly model: HumidAirModel['name'];
  /** As text. */
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
  readonly #model: HumidAirModel;

  constructor({ temperature, pressure }: AirPlace, known: Known, model: HumidAirModel) {
    this.temperature = temperature;
    this.pressure = pressure;
    this.#known = known;
    this.#model = model;
  }

  get model(): HumidAirModel['name'] {
    return this.#model.name;
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
    return (this.#known.relativeHumidity ??= this.#model.relativeHumidity(this.#ofVapour()));
  }

  get degreeOfSaturation(): Quantity<'ratio'> {
    return (this.#known.degreeOfSaturation ??= this.#model.degreeOfSaturation(this.#ofRatio()));
  }

  get dewPoint(): Quantity<'temperature'> {
    return (this.#known.dewPoint ??= this.#model.dewPoint({
      pressure: this.pressure,
      vapourPressure: this.vapourPressure,
    }));
  }

  get wetBulb(): Quantity<'temperature'> {
    return (this.#known.wetBulb ??= this.#model.wetBulb(this.#ofRatio()));
  }

  get wetBulbOverWater(): Quantity<'temperature'> {
    return (this.#known.wetBulbOverWater ??= this.#model.wetBulb(this.#ofRatio(), 'water'));
  }

  get wetBulbOverIce(): Quantity<'temperature'> {
    return (this.#known.wetBulbOverIce ??= this.#model.wetBulb(this.#ofRatio(), 'ice'));
  }

  get density(): Quantity<'density'> {
    return (this.#known.density ??= this.#model.density({ ...this.#ofVapour(), ...this.#ofRatio() }));
  }

  get dryDensity(): Quantity<'density'> {
    return (this.#known.dryDensity ??= this.#model.dryDensity({ ...this.#ofVapour(), ...this.#ofRatio() }));
  }

  get enthalpy(): Quantity<'specific energy'> {
    return (this.#known.enthalpy ??= moistAirEnthalpy({
      temperature: this.temperature,
      humidityRatio: this.humidityRatio,
    }));
  }

  #ofVapour(): AirPlace & Pick<HumidAir, 'vapourPressure'> {
    return { temperature: this.temperature, pressure: this.pressure, vapourPressure: this.vapourPressure };
  }

  #ofRatio(): AirPlace & Pick<HumidAir, 'humidityRatio'> {
    return { temperature: this.temperature, pressure: this.pressure, humidityRatio: this.humidityRatio };
  }

  toString(): string {
    const { temperature, pressure, humidityRatio, density } = this;
    const state = `humid air at ${String(temperature)} and ${String(pressure)}`;
    const relative = this.#model.hasSaturation(this) ? `relative humidity ${String(this.relativeHumidity)}, ` : '';
    return `${state}: ${relative}humidity ratio ${String(humidityRatio)}, density ${String(density)}`;
  }

  toJSON(): Readonly<Record<string, QuantityRecord>> {
    const { temperature, pressure, humidityRatio, vapourPressure, density } = this;
    const relativeHumidity = this.#model.hasSaturation(this) ? { relativeHumidity: this.relativeHumidity } : {};
    const shown = { temperature, pressure, ...relativeHumidity, humidityRatio, vapourPressure, density };
    return Object.fromEntries(Object.entries(shown).map(([name, quantity]) => [name, quantity.toJSON()]));
  }

  /** @internal */
  [Symbol.for('nodejs.util.inspect.custom')](): string {
    return this.toString();
  }
}

/** Air that cannot exist is refused when it is stated, not when a property happens to need what is wrong with it. */
export function possible(place: AirPlace, known: Known, model: HumidAirModel): HumidAir {
  const air = new HumidAirState(place, known, model);
  humidityRatioFromVapourPressure({ pressure: air.pressure, vapourPressure: air.vapourPressure });
  if (model.hasSaturation(air)) {
    const { temperature, pressure, vapourPressure } = air;
    model.relativeHumidity({ temperature, pressure, vapourPressure });
  }
  return air;
}
