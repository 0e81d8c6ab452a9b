import type { Quantity, QuantityRecord } from '../../units/index.js';
import { requireNames } from '../../units/internal.js';
import { correctedFlow, massFlowFromCorrectedFlow } from '../corrected-flow.js';
import { speedFromCorrectedSpeed } from '../corrected-speed.js';
import { compressorPower } from '../power.js';
import { outletPressure } from '../pressure-ratio.js';
import { dryInlet, outletTemperatureVariableHeat, specificWorkVariableHeat } from '../variable-heat.js';
import type { CompressorMap } from './compressor-map.js';
import { chokeMargin, surgeMargin, surgeMarginAtSpeed } from './margins.js';

/** The air that a compressor breathes. */
export interface CompressorInlet {
  /** Total temperature at the inlet. */
  readonly inletTemperature: Quantity<'temperature'>;
  /** Total absolute pressure at the inlet: below the barometer by the loss of filter and hose. */
  readonly inletPressure: Quantity<'absolute pressure'>;
  /** Mass of vapour per mass of dry air; dry when left out. */
  readonly humidityRatio?: Quantity<'humidity ratio'> | undefined;
}

/** @internal */
export const INLET_NAMES = [
  'inletTemperature',
  'inletPressure',
  'humidityRatio',
] as const satisfies (keyof CompressorInlet)[];

interface PointProperties {
  readonly inletTemperature: Quantity<'temperature'>;
  readonly inletPressure: Quantity<'absolute pressure'>;
  readonly humidityRatio: Quantity<'humidity ratio'>;
  readonly pressureRatio: Quantity<'ratio'>;
  /** Mass flow of humid air. */
  readonly massFlow: Quantity<'mass flow'>;
  /** Flow as the map shows it. */
  readonly correctedFlow: Quantity<'mass flow'>;
  /** Speed as the map shows it. */
  readonly correctedSpeed: Quantity<'rotational speed'>;
  /** Speed of the wheel. */
  readonly speed: Quantity<'rotational speed'>;
  readonly isentropicEfficiency: Quantity<'ratio'>;
  readonly outletPressure: Quantity<'absolute pressure'>;
  /** With variable heat capacity and the humidity of the inlet. */
  readonly outletTemperature: Quantity<'temperature'>;
  /** Work per kilogram of humid air. */
  readonly specificWork: Quantity<'specific energy'>;
  /** Power put into the air. */
  readonly power: Quantity<'power'>;
  /** At constant pressure ratio: {@link surgeMargin}. */
  readonly surgeMargin: Quantity<'ratio'>;
  /** At constant speed: {@link surgeMarginAtSpeed}. */
  readonly surgeMarginAtSpeed: Quantity<'ratio'>;
  /** At constant speed: {@link chokeMargin}. */
  readonly chokeMargin: Quantity<'ratio'>;
}

/**
 * A point on a compressor map. Every property is calculated when it is first read, and is then one value of the graph; one that does
 * not exist there, such as the surge margin below the surge line's lowest pressure ratio, throws CalculationError.
 */
export interface CompressorOperatingPoint extends PointProperties {
  readonly map: CompressorMap;
  /** As text. */
  toString(): string;
  /** The point and its usual measures as records. */
  toJSON(): Readonly<Record<string, QuantityRecord>>;
}

/** Properties that were given, and those calculated since. */
type Known = { -readonly [P in keyof PointProperties]?: PointProperties[P] };

/**
 * Where a compressor works on its map, and what it does to the air there.
 *
 * The map's own flows are of dry air; the small effect of humidity on corrected flow and speed is left out.
 *
 * @returns One point, whose properties are calculated when they are read.
 * @throws CalculationError if a name is none of these; when a property is read that the map does not hold: left of surge, beyond
 * choke, above the highest speed.
 * @example
 * const inlet = { inletTemperature: temperature(18, '°C'), inletPressure: absolutePressure(93, 'kPa') };
 * const point = pointOnMap(map, { ...inlet, massFlow: massFlow(190, 'g/s'), pressureRatio: ratio(2.2) });
 * point.outletTemperature.in('°C') //=> 119.888
 * point.surgeMargin.in('%') //=> 48.7725
 */
export function pointOnMap(
  map: CompressorMap,
  point: CompressorInlet & { readonly massFlow: Quantity<'mass flow'>; readonly pressureRatio: Quantity<'ratio'> },
): CompressorOperatingPoint {
  requireNames('point on a compressor map', point, [...INLET_NAMES, 'massFlow', 'pressureRatio']);
  const { inletTemperature, inletPressure, humidityRatio = dryInlet, massFlow, pressureRatio } = point;
  return new Point(map, { inletTemperature, inletPressure, humidityRatio, massFlow, pressureRatio });
}

/** @internal The same from what the map shows; what else is known of the point spares reading it again. */
export function pointFromMap(
  map: CompressorMap,
  { inletTemperature, inletPressure, humidityRatio = dryInlet }: CompressorInlet,
  shown: Pick<PointProperties, 'correctedFlow' | 'pressureRatio'> & Pick<Known, 'correctedSpeed' | 'speed'>,
): CompressorOperatingPoint {
  return new Point(map, { inletTemperature, inletPressure, humidityRatio, ...shown });
}

type Given = Pick<PointProperties, 'inletTemperature' | 'inletPressure' | 'humidityRatio' | 'pressureRatio'> & Known;

class Point implements CompressorOperatingPoint {
  readonly map: CompressorMap;
  readonly inletTemperature: Quantity<'temperature'>;
  readonly inletPressure: Quantity<'absolute pressure'>;
  readonly humidityRatio: Quantity<'humidity ratio'>;
  readonly pressureRatio: Quantity<'ratio'>;
  readonly #known: Known;

  constructor(map: CompressorMap, given: Given) {
    this.map = map;
    this.inletTemperature = given.inletTemperature;
    this.inletPressure = given.inletPressure;
    this.humidityRatio = given.humidityRatio;
    this.pressureRatio = given.pressureRatio;
    this.#known = { ...given };
  }

  get massFlow(): Quantity<'mass flow'> {
    const { inletTemperature, inletPressure, map } = this;
    return (this.#known.massFlow ??= massFlowFromCorrectedFlow({
      correctedFlow: this.correctedFlow,
      inletTemperature,
      inletPressure,
      ...map.reference,
    }));
  }

  get correctedFlow(): Quantity<'mass flow'> {
    const { inletTemperature, inletPressure, map } = this;
    return (this.#known.correctedFlow ??= correctedFlow({
      massFlow: this.massFlow,
      inletTemperature,
      inletPressure,
      ...map.reference,
    }));
  }

  get correctedSpeed(): Quantity<'rotational speed'> {
    const { correctedFlow: flow, pressureRatio, map } = this;
    return (this.#known.correctedSpeed ??= map.correctedSpeed({ correctedFlow: flow, pressureRatio }));
  }

  get speed(): Quantity<'rotational speed'> {
    return (this.#known.speed ??= speedFromCorrectedSpeed({
      correctedSpeed: this.correctedSpeed,
      inletTemperature: this.inletTemperature,
      referenceTemperature: this.map.reference.referenceTemperature,
    }));
  }

  get isentropicEfficiency(): Quantity<'ratio'> {
    const { correctedFlow: flow, pressureRatio, map } = this;
    return (this.#known.isentropicEfficiency ??= map.isentropicEfficiency({ correctedFlow: flow, pressureRatio }));
  }

  get outletPressure(): Quantity<'absolute pressure'> {
    const { inletPressure, pressureRatio } = this;
    return (this.#known.outletPressure ??= outletPressure({ inletPressure, pressureRatio }));
  }

  get outletTemperature(): Quantity<'temperature'> {
    const { inletTemperature, pressureRatio, isentropicEfficiency, humidityRatio } = this;
    return (this.#known.outletTemperature ??= outletTemperatureVariableHeat({
      inletTemperature,
      pressureRatio,
      isentropicEfficiency,
      humidityRatio,
    }));
  }

  get specificWork(): Quantity<'specific energy'> {
    const { inletTemperature, outletTemperature, humidityRatio } = this;
    return (this.#known.specificWork ??= specificWorkVariableHeat({
      inletTemperature,
      outletTemperature,
      humidityRatio,
    }));
  }

  get power(): Quantity<'power'> {
    const { massFlow, specificWork } = this;
    return (this.#known.power ??= compressorPower({ massFlow, specificWork }));
  }

  get surgeMargin(): Quantity<'ratio'> {
    const { correctedFlow: flow, pressureRatio, map } = this;
    return (this.#known.surgeMargin ??= surgeMargin({
      correctedFlow: flow,
      surgeFlow: map.surgeFlow({ pressureRatio }),
    }));
  }

  get surgeMarginAtSpeed(): Quantity<'ratio'> {
    const { correctedFlow: flow, correctedSpeed, pressureRatio, map } = this;
    return (this.#known.surgeMarginAtSpeed ??= surgeMarginAtSpeed({
      correctedFlow: flow,
      pressureRatio,
      surgeFlow: map.surgeFlowAtSpeed({ correctedSpeed }),
      surgePressureRatio: map.surgePressureRatio({ correctedSpeed }),
    }));
  }

  get chokeMargin(): Quantity<'ratio'> {
    const { correctedFlow: flow, correctedSpeed, map } = this;
    return (this.#known.chokeMargin ??= chokeMargin({
      correctedFlow: flow,
      chokeFlow: map.chokeFlow({ correctedSpeed }),
    }));
  }

  toString(): string {
    const { map, correctedFlow: flow, pressureRatio, isentropicEfficiency, speed, outletTemperature } = this;
    const where = `${String(flow)} corrected at pressure ratio ${String(pressureRatio)} on ${map.name}`;
    return `${where}: efficiency ${String(isentropicEfficiency)}, ${String(speed)}, outlet ${String(outletTemperature)}`;
  }

  toJSON(): Readonly<Record<string, QuantityRecord>> {
    const { correctedFlow: flow, pressureRatio, isentropicEfficiency, speed, outletTemperature, power } = this;
    const shown = { correctedFlow: flow, pressureRatio, isentropicEfficiency, speed, outletTemperature, power };
    return Object.fromEntries(Object.entries(shown).map(([name, quantity]) => [name, quantity.toJSON()]));
  }

  /** @internal */
  [Symbol.for('nodejs.util.inspect.custom')](): string {
    return this.toString();
  }
}
