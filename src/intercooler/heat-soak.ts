import { refusal } from '../calculation/refusal.js';
import { column, isColumn, type Column, type Quantity } from '../units/index.js';
import { describe, NO_NOTES, quantityOf } from '../units/internal.js';
import { cellFlowOf, type CoreFlows, type SoakingCore } from './soaking-core.js';

/** The flows through a core over time: channels of a log, and quantities for what stays the same. */
export type RecordedFlows = {
  readonly [N in keyof CoreFlows]: CoreFlows[N] extends Quantity<infer K> ? Quantity<K> | Column<K> : never;
};

/** A core followed through a record. */
export interface HeatSoak {
  /** Charge temperature behind the core, row by row; missing where no charge flows. */
  readonly chargeOutlet: Column<'temperature'>;
  /** Temperature of the coolant behind the core, row by row; missing where none flows. */
  readonly coolantOutlet: Column<'temperature'>;
  /** Mean temperature of the metal, row by row. */
  readonly meanTemperature: Column<'temperature'>;
  /** Heat that the charge gave to the core over the record. */
  readonly heatFromCharge: Quantity<'energy'>;
  /** Heat that the core gave to the coolant over the record. */
  readonly heatToCoolant: Quantity<'energy'>;
  /** Heat that stayed in the metal. */
  readonly heatStored: Quantity<'energy'>;
  /** The core at the end of the record, for the rest and the next pull. */
  readonly core: SoakingCore;
}

const NAME = 'heat soak';

/**
 * Follows a core through a recorded or planned pull: what the charge temperature would be with this much metal.
 *
 * Between two rows the flows are held at the mean of both; each such step is exact. Missing values are refused: fill or cut them first,
 * because the metal remembers.
 *
 * @param core - the core at the first row, from {@link soakingCore}, {@link settledCore} or an earlier record.
 * @param time - time of each row, rising.
 * @param flows - columns of that length, or quantities that hold throughout.
 * @returns Temperatures row by row, heats over the whole, and the core at the end. The numbers carry no history.
 * @throws CalculationError if lengths differ, time does not rise, a value is missing or impossible.
 * @example
 * const pull = heatSoak(
 *   soakingCore({ heatCapacity: heatCapacity(5382, 'J/K'), temperature: temperature(18, '°C') }),
 *   column('time', [0, 2, 4, 6], 's'),
 *   {
 *     hotInlet: column('temperature', [60, 85, 105, 121], '°C'),
 *     chargeCapacityRate: heatCapacityRate(202, 'W/K'), chargeTransferUnits: ratio(2),
 *     coolantInlet: temperature(18, '°C'), coolantCapacityRate: heatCapacityRate(500, 'W/K'), coolantTransferUnits: ratio(1),
 *   },
 * );
 * pull.chargeOutlet.in('°C') //=> [23.68, 29.16, 34.58, 39.81]
 */
export function heatSoak(core: SoakingCore, time: Column<'time'>, flows: RecordedFlows): HeatSoak {
  const times = checkedTimes(time);
  const rows = times.length;
  const at = flowsByRow(flows, rows);
  const [charge, coolant, mean] = [new Float64Array(rows), new Float64Array(rows), new Float64Array(rows)];
  const heat = { fromCharge: 0, toCoolant: 0, stored: 0 };
  let metal = core;
  let before: CoreFlows | undefined;
  for (let row = 0; row < rows; row++) {
    const now = at(row);
    cellFlowOf(`${NAME}, row ${row}`, now);
    if (before) {
      const step = metal.after(seconds(times[row]! - times[row - 1]!), between(before, now));
      metal = step.core;
      heat.fromCharge += step.heatFromCharge.si;
      heat.toCoolant += step.heatToCoolant.si;
      heat.stored += step.heatStored.si;
    }
    charge[row] = now.chargeCapacityRate.si > 0 ? metal.chargeOutlet(now).si : NaN;
    coolant[row] = now.coolantCapacityRate.si > 0 ? metal.coolantOutlet(now).si : NaN;
    mean[row] = metal.meanTemperature.si;
    before = now;
  }
  return {
    chargeOutlet: kelvins(charge),
    coolantOutlet: kelvins(coolant),
    meanTemperature: kelvins(mean),
    heatFromCharge: joule(heat.fromCharge),
    heatToCoolant: joule(heat.toCoolant),
    heatStored: joule(heat.stored),
    core: metal,
  };
}

const plain = <Q extends Quantity>(like: Q, si: number): Q =>
  quantityOf(like.kind, si, like.unit, undefined, NO_NOTES) as Q;

const seconds = (si: number): Quantity<'time'> => quantityOf('time', si, 's', undefined, NO_NOTES);

const joule = (si: number): Quantity<'energy'> => quantityOf('energy', si, 'kJ', undefined, NO_NOTES);

const kelvins = (si: Float64Array): Column<'temperature'> => column('temperature', Array.from(si), 'K').to('°C');

/** The flows of a step: halfway between those at its ends. */
function between(first: CoreFlows, last: CoreFlows): CoreFlows {
  const half = <N extends keyof CoreFlows>(name: N): CoreFlows[N] =>
    plain(first[name] as Quantity, (first[name].si + last[name].si) / 2) as CoreFlows[N];
  return {
    hotInlet: half('hotInlet'),
    chargeCapacityRate: half('chargeCapacityRate'),
    chargeTransferUnits: half('chargeTransferUnits'),
    coolantInlet: half('coolantInlet'),
    coolantCapacityRate: half('coolantCapacityRate'),
    coolantTransferUnits: half('coolantTransferUnits'),
  };
}

function checkedTimes(time: unknown): Float64Array {
  if (!isColumn(time) || time.kind !== 'time') throw refusal(NAME, 'kind', 'time', 'a column of time', describe(time));
  const { si } = time as Column<'time'>;
  if (si.length === 0) throw refusal(NAME, 'missing', 'time', 'at least one row', 'an empty column');
  for (let row = 0; row < si.length; row++) {
    if (Number.isFinite(si[row]) && (row === 0 || si[row]! > si[row - 1]!)) continue;
    const got = `${si[row]} s in row ${row}${row > 0 ? ` after ${si[row - 1]} s` : ''}`;
    throw refusal(NAME, 'impossible', 'time', 'a time in every row, later than that of the row before', got);
  }
  return si;
}

/** The flows of any row as quantities; a missing sample is said to be one. */
function flowsByRow(flows: RecordedFlows, rows: number): (row: number) => CoreFlows {
  const given = Object.entries((flows ?? {}) as Record<string, unknown>);
  for (const [name, value] of given) {
    if (!isColumn(value)) continue;
    if (value.length !== rows) {
      throw refusal(NAME, 'length', name, `as many rows as time has, ${rows}`, `${value.length} rows`);
    }
    const missing = value.si.findIndex((si) => Number.isNaN(si));
    if (missing >= 0) throw refusal(NAME, 'missing', name, 'a value in every row', `none in row ${missing}`);
  }
  return (row) =>
    Object.fromEntries(
      given.map(([name, value]) => [
        name,
        isColumn(value) ? quantityOf(value.kind, value.si[row]!, value.unit, undefined, NO_NOTES) : value,
      ]),
    ) as unknown as CoreFlows;
}
