import { moistAirDensityFromHumidityRatio, partialDensityOfDryAir } from '../air/index.js';
import { relativeHumidityFromVapourPressure, vapourPressureFromHumidityRatio } from '../psychrometrics/index.js';
import { gauge, type Quantity, type QuantityRecord } from '../units/index.js';

/** A place on the way of the charge, and its state there. */
export interface Station {
  readonly name: StationName;
  readonly pressure: Quantity<'absolute pressure'>;
  readonly temperature: Quantity<'temperature'>;
  /** Mass of vapour per mass of dry air. */
  readonly humidityRatio: Quantity<'humidity ratio'>;
  /** Mass flow of humid air. */
  readonly flow: Quantity<'mass flow'>;
  /** Density of the humid air. */
  readonly density: Quantity<'density'>;
  /** Mass of dry air per volume: what the oxygen follows. */
  readonly dryAirDensity: Quantity<'density'>;
  /** Pressure over that of the room. */
  readonly gaugePressure: Quantity<'gauge pressure'>;
  readonly vapourPressure: Quantity<'absolute pressure'>;
  readonly relativeHumidity: Quantity<'relative humidity'>;
  /** As text. */
  toString(): string;
  /** As plain data. */
  toJSON(): Readonly<Record<string, string | QuantityRecord>>;
}

/** The stations, in the order the charge passes them. */
export const STATIONS = ['ambient', 'compressor inlet', 'compressor outlet', 'core outlet', 'manifold'] as const;

/** Name of a station. */
export type StationName = (typeof STATIONS)[number];

/** What the path knows of a station. */
export interface StationState {
  readonly pressure: Quantity<'absolute pressure'>;
  readonly temperature: Quantity<'temperature'>;
  readonly humidityRatio: Quantity<'humidity ratio'>;
  readonly flow: Quantity<'mass flow'>;
  readonly barometer: Quantity<'absolute pressure'>;
}

/** Properties are calculated when they are first read, and are then one value of the graph. */
export class PathStation implements Station {
  readonly name: StationName;
  readonly pressure: Quantity<'absolute pressure'>;
  readonly temperature: Quantity<'temperature'>;
  readonly humidityRatio: Quantity<'humidity ratio'>;
  readonly flow: Quantity<'mass flow'>;
  readonly #barometer: Quantity<'absolute pressure'>;
  #density?: Quantity<'density'>;
  #dryAirDensity?: Quantity<'density'>;
  #vapourPressure?: Quantity<'absolute pressure'>;

  constructor(name: StationName, { pressure, temperature, humidityRatio, flow, barometer }: StationState) {
    this.name = name;
    this.pressure = pressure;
    this.temperature = temperature;
    this.humidityRatio = humidityRatio;
    this.flow = flow;
    this.#barometer = barometer;
  }

  get density(): Quantity<'density'> {
    const { temperature, pressure, humidityRatio } = this;
    return (this.#density ??= moistAirDensityFromHumidityRatio({ temperature, pressure, humidityRatio }));
  }

  get vapourPressure(): Quantity<'absolute pressure'> {
    const { pressure, humidityRatio } = this;
    return (this.#vapourPressure ??= vapourPressureFromHumidityRatio({ pressure, humidityRatio }));
  }

  get dryAirDensity(): Quantity<'density'> {
    const { temperature, pressure, vapourPressure } = this;
    return (this.#dryAirDensity ??= partialDensityOfDryAir({ temperature, pressure, vapourPressure }));
  }

  get gaugePressure(): Quantity<'gauge pressure'> {
    return gauge(this.pressure, this.#barometer);
  }

  get relativeHumidity(): Quantity<'relative humidity'> {
    const { temperature, vapourPressure } = this;
    return relativeHumidityFromVapourPressure({ temperature, vapourPressure });
  }

  toString(): string {
    return `${this.name}: ${String(this.pressure)}, ${String(this.temperature)}, ${String(this.flow)}`;
  }

  toJSON(): Readonly<Record<string, string | QuantityRecord>> {
    const { name, pressure, temperature, humidityRatio, flow, density } = this;
    return {
      name,
      pressure: pressure.toJSON(),
      temperature: temperature.toJSON(),
      humidityRatio: humidityRatio.toJSON(),
      flow: flow.toJSON(),
      density: density.toJSON(),
    };
  }

  /** @internal */
  [Symbol.for('nodejs.util.inspect.custom')](): string {
    return this.toString();
  }
}
