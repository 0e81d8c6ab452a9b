import { column, type Column, type Quantity } from '../units/index.js';
import type { Installation } from './installation.js';
import type { PullRow } from './pull-row.js';
import type { PullInTime, PullMoment } from './pull-result.js';
import { pullText } from './pull-text.js';
import { refusal, requireQuantity } from '../calculation/refusal.js';

/** A pull as columns over its rows. */
export class Pull implements PullInTime {
  readonly installation: Installation;
  readonly #rows: readonly PullRow[];
  readonly #momentOf: (row: PullRow) => PullMoment;

  constructor(installation: Installation, rows: readonly PullRow[], momentOf: (row: PullRow) => PullMoment) {
    this.#momentOf = momentOf;
    this.installation = installation;
    this.#rows = rows;
  }

  get time(): Column<'time'> {
    return column(
      'time',
      this.#of(({ at }) => at),
      's',
    );
  }

  get engineSpeed(): Column<'rotational speed'> {
    return column(
      'rotational speed',
      this.#of(({ path }) => 60 * path.speed.si),
      'rpm',
    );
  }

  get coreOutletTemperature(): Column<'temperature'> {
    return celsius(this.#of(({ solved }) => solved.walked.unknowns.coreOutletTemperature));
  }

  get chargeTemperature(): Column<'temperature'> {
    return celsius(this.#of(({ solved }) => solved.walked.manifold.temperature));
  }

  get sensorReading(): Column<'temperature'> {
    return celsius(this.#of(({ sensor }) => sensor));
  }

  get coreTemperature(): Column<'temperature'> {
    return celsius(this.#of(({ core }) => core));
  }

  get manifoldPressure(): Column<'absolute pressure'> {
    return column(
      'absolute pressure',
      this.#of(({ solved }) => solved.walked.manifold.pressure / 1000),
      'kPa',
    );
  }

  get airFlow(): Column<'mass flow'> {
    return column(
      'mass flow',
      this.#of(({ solved }) => 1000 * solved.walked.unknowns.airFlow),
      'g/s',
    );
  }

  get power(): Column<'power'> {
    return column(
      'power',
      this.#of(({ solved }) => solved.power / 1000),
      'kW',
    );
  }

  get torque(): Column<'torque'> {
    return column(
      'torque',
      this.#of(({ solved }) => solved.torque),
      'N·m',
    );
  }

  get heatFromCharge(): Column<'energy'> {
    return kilojoules(this.#of(({ fromCharge }) => fromCharge));
  }

  get heatToCoolant(): Column<'energy'> {
    return kilojoules(this.#of(({ toCoolant }) => toCoolant));
  }

  get heatStored(): Column<'energy'> {
    return kilojoules(this.#of(({ stored }) => stored));
  }

  get liquidTemperature(): Column<'temperature'> | undefined {
    if (this.#rows[0]!.store.liquid === undefined) return undefined;
    return celsius(this.#of(({ store }) => store.liquid!));
  }

  at(time: Quantity<'time'>): PullMoment {
    requireQuantity('pull in time', 'time', time, 'time');
    const last = this.#rows.at(-1)!.at;
    if (!(time.si >= 0 && time.si <= last * (1 + 1e-12)))
      throw refusal('pull in time', 'impossible', 'time', `between 0 and the end of the pull, ${last} s`, String(time));
    const row = Math.round((time.si / last) * (this.#rows.length - 1));
    return this.#momentOf(this.#rows[Math.min(row, this.#rows.length - 1)]!);
  }

  #of(value: (row: PullRow) => number): number[] {
    return this.#rows.map(value);
  }

  toString(): string {
    return pullText(this);
  }

  toJSON(): object {
    const { time, engineSpeed, chargeTemperature, sensorReading, coreTemperature, power, torque } = this;
    return { time, engineSpeed, chargeTemperature, sensorReading, coreTemperature, power, torque };
  }

  /** @internal */
  [Symbol.for('nodejs.util.inspect.custom')](): string {
    return this.toString();
  }
}

const celsius = (si: readonly number[]): Column<'temperature'> => column('temperature', si, 'K').to('°C');
const kilojoules = (si: readonly number[]): Column<'energy'> =>
  column(
    'energy',
    si.map((joule) => joule / 1000),
    'kJ',
  );
