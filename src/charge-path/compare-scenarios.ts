import type { StationChange, PowerFactor, PowerPart, ScenarioComparison } from './scenario-result.js';
import { refusal } from '../calculation/refusal.js';
import { compareKnockMargins, type KnockComparison } from '../knock/index.js';
import { dryPressure } from '../psychrometrics/index.js';
import { merged } from '../units/internal.js';
import { add, ratio, ratioOf, subtract, type Note, type Quantity } from '../units/index.js';
import { contributionToChange } from './contribution.js';
import type { OperatingPoint } from './point-result.js';
import { comparisonText } from './scenario-text.js';
import type { Station } from './station.js';

/** What a comparison may be told beside the two points. */
export interface ScenarioOptions {
  /** Octane number of the fuel, for the difference in knock margin: a trend, never a licence to run. */
  readonly octaneNumber?: Quantity<'octane number'>;
}

/**
 * What another scenario does to the same engine at the same speed: station by station, and the change of power split into what made it.
 *
 * @param before - a solved point.
 * @param after - a point of the same engine and speed; everything before the cylinders may differ.
 * @returns The differences; what was measured and is the same in both, such as one sensor's error, cancels in them.
 * @throws CalculationError if engine speed or swept volume differ, whose share is not separated here.
 * @example
 * const comparison = compareScenarios(operatingPoint(bench, speed), operatingPoint(car, speed));
 * String(comparison)
 */
export function compareScenarios(
  before: OperatingPoint,
  after: OperatingPoint,
  { octaneNumber }: ScenarioOptions = {},
): ScenarioComparison {
  requireSameEngine(before, after);
  return new Comparison(before, after, octaneNumber);
}

function requireSameEngine(before: OperatingPoint, after: OperatingPoint): void {
  const name = 'compare scenarios';
  if (before.engineSpeed.si !== after.engineSpeed.si) {
    const got = `${String(before.engineSpeed)} and ${String(after.engineSpeed)}`;
    throw refusal(name, 'rule', 'engineSpeed', 'the same in both', got);
  }
  const [first, second] = [before.engine.sweptVolume, after.engine.sweptVolume];
  if (first.si !== second.si)
    throw refusal(name, 'rule', 'engine', 'of the same swept volume in both', `${String(first)} and ${String(second)}`);
}

class Comparison implements ScenarioComparison {
  readonly before: OperatingPoint;
  readonly after: OperatingPoint;
  readonly parts: readonly PowerPart[];
  readonly knock: KnockComparison | undefined;

  constructor(before: OperatingPoint, after: OperatingPoint, octaneNumber: Quantity<'octane number'> | undefined) {
    this.before = before;
    this.after = after;
    this.parts = partsOf(before, after);
    this.knock =
      octaneNumber &&
      compareKnockMargins({ octaneNumber, before: before.stations.manifold, after: after.stations.manifold });
  }

  get stations(): readonly StationChange[] {
    const [first, second] = [Object.values(this.before.stations), Object.values(this.after.stations)];
    return first.map((station, i) => stationChange(station, second[i]!));
  }

  get change(): Quantity<'power'> {
    return subtract(this.after.power, this.before.power);
  }

  get air(): Quantity<'ratio'> {
    return ratioOf(this.after.airFlow, this.before.airFlow);
  }

  get boost(): Quantity<'pressure difference'> {
    return subtract(this.after.boostReading, this.before.boostReading);
  }

  get temperatureWithBreathing(): Quantity<'power'> {
    const part = (name: PowerFactor): Quantity<'power'> => this.parts.find(({ factor }) => factor === name)!.part;
    return add(part('charge temperature'), part('breathing'));
  }

  get notes(): readonly Note[] {
    return merged(this.before.notes, this.after.notes);
  }

  toString(): string {
    return comparisonText(this);
  }

  toJSON(): object {
    const { stations, change, air, boost, parts, temperatureWithBreathing, knock } = this;
    return { stations, change, air, boost, parts, temperatureWithBreathing, ...(knock ? { knock } : {}) };
  }

  /** @internal */
  [Symbol.for('nodejs.util.inspect.custom')](): string {
    return this.toString();
  }
}

function stationChange(before: Station, after: Station): StationChange {
  return {
    name: before.name,
    pressure: subtract(after.pressure, before.pressure),
    temperature: subtract(after.temperature, before.temperature),
    humidityRatio: subtract(after.humidityRatio, before.humidityRatio),
    density: ratioOf(after.density, before.density),
    flow: subtract(after.flow, before.flow),
  };
}

/** Timing of best torque, which is what is meant where none is given, leaves all of the torque. */
function sparkOf(before: Ratio | undefined, after: Ratio | undefined): Ratio | undefined {
  if (before === undefined && after === undefined) return undefined;
  return ratioOf(after ?? ratio(1), before ?? ratio(1));
}

type Ratio = Quantity<'ratio'>;

/** Factors whose product is the power, each after over before. */
function partsOf(before: OperatingPoint, after: OperatingPoint): readonly PowerPart[] {
  const [first, second] = [before.stations.manifold, after.stations.manifold];
  const dryShare = ({ pressure, vapourPressure }: Station): Quantity<'ratio'> =>
    ratioOf(dryPressure({ pressure, vapourPressure }), pressure);
  const [e1, e2] = [before.engine, after.engine];
  const fuel = ratioOf(e2.fuelFlow, e1.fuelFlow);
  const spark = sparkOf(e1.sparkRatio, e2.sparkRatio);
  const gross = ratioOf(e2.grossPower, e1.grossPower);
  const beforeSpark = spark ? ratioOf(gross, spark) : gross;
  const ratios: Readonly<Record<PowerFactor, Quantity<'ratio'> | undefined>> = {
    'charge pressure': ratioOf(second.pressure, first.pressure),
    'charge temperature': ratioOf(first.temperature, second.temperature),
    'dry share of the charge': ratioOf(dryShare(second), dryShare(first)),
    breathing: ratioOf(e2.volumetricEfficiency, e1.volumetricEfficiency),
    'mixture (fuel per air)': ratioOf(fuel, ratioOf(after.airFlow, before.airFlow)),
    'spark timing': spark,
    'work per fuel': ratioOf(beforeSpark, fuel),
    'compressor drive': ratioOf(ratioOf(after.power, e2.grossPower), ratioOf(before.power, e1.grossPower)),
  };
  return Object.entries(ratios).flatMap(([factor, factorRatio]) => {
    if (factorRatio === undefined) return [];
    const part = contributionToChange({ powerBefore: before.power, powerAfter: after.power, factorRatio });
    return [{ factor: factor as PowerFactor, ratio: factorRatio, part }];
  });
}
