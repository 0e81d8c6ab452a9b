import { merged, NO_NOTES } from '../units/internal.js';
import { gauge, subtract, type Note, type Quantity } from '../units/index.js';
import { balancesOf, type Balance } from './balances.js';
import { cylinderOf, type CylinderState } from './cylinder.js';
import type { Installation } from './installation.js';
import { crankTorque, type Output } from './output.js';
import { compressorOf, coreOf, engineOf, stationsOf } from './point-parts.js';
import type { CompressorResult, CoreResult, EngineResult, OperatingPoint } from './point-result.js';
import { pointText } from './point-text.js';
import type { Path } from './read-installation.js';
import { recirculationNotes } from './recirculation.js';
import type { Walked } from './walked.js';
import { onQuantities } from './way.js';

/** Results beside the walk are calculated when they are first read, and are then one value of the graph. */
export class PointOnPath implements OperatingPoint {
  readonly installation: Installation;
  readonly engineSpeed: Quantity<'rotational speed'>;
  readonly #path: Path;
  readonly #walked: Walked<Quantity>;
  #stations?: OperatingPoint['stations'];
  #compressor?: CompressorResult;
  #core?: CoreResult;
  #engine?: EngineResult;
  #cylinder?: CylinderState;
  readonly #output: Output<Quantity>;

  constructor(installation: Installation, path: Path, walked: Walked<Quantity>) {
    this.installation = installation;
    this.engineSpeed = path.speed;
    this.#path = path;
    this.#walked = walked;
    this.#output = crankTorque(onQuantities, path, walked);
  }

  get airFlow(): Quantity<'mass flow'> {
    return this.#walked.unknowns.airFlow as Quantity<'mass flow'>;
  }

  get humidAirFlow(): Quantity<'mass flow'> {
    return this.#walked.humidFlow as Quantity<'mass flow'>;
  }

  get stations(): OperatingPoint['stations'] {
    return (this.#stations ??= stationsOf(this.#path, this.#walked));
  }

  get cylinder(): CylinderState {
    const { pressure, temperature, dryAirDensity } = this.stations.manifold;
    const { airFlow, engine } = this;
    const { volumetricEfficiency } = engine;
    return (this.#cylinder ??= cylinderOf(this.#path, {
      pressure,
      temperature,
      dryAirDensity,
      volumetricEfficiency,
      airFlow,
    }));
  }

  get compressor(): CompressorResult {
    return (this.#compressor ??= compressorOf(this.#path, this.#walked, this.installation));
  }

  get core(): CoreResult {
    return (this.#core ??= coreOf(this.#path, this.#walked));
  }

  get engine(): EngineResult {
    return (this.#engine ??= engineOf(this.#path, this.#walked, this.#output, this.stations.ambient.dryAirDensity));
  }

  get power(): Quantity<'power'> {
    return this.#output.power as Quantity<'power'>;
  }

  get torque(): Quantity<'torque'> {
    return this.#output.torque as Quantity<'torque'>;
  }

  get boostReading(): Quantity<'gauge pressure'> {
    const { compressorOutlet, manifold } = this.stations;
    const { gaugeAt, barometer, gaugeVentBelowBarometer: depression } = this.#path;
    const { pressure } = gaugeAt === 'manifold' ? manifold : compressorOutlet;
    return gauge(pressure, depression === undefined ? barometer : subtract(barometer, depression));
  }

  get balances(): readonly Balance[] {
    return balancesOf(this.#path, this.#walked);
  }

  get notes(): readonly Note[] {
    const { engineResidual, coreResidual } = this.#walked;
    return [this.power, engineResidual, coreResidual].reduce<readonly Note[]>(
      (notes, value) => merged(notes, value.notes),
      merged(controlNotes(this.installation), recirculationNotes(this.#path)),
    );
  }

  toString(): string {
    return pointText(this);
  }

  toJSON(): object {
    const { engineSpeed, stations, airFlow, compressor, core, engine, boostReading } = this;
    return { engineSpeed, stations: Object.values(stations), airFlow, boostReading, compressor, core, engine };
  }

  /** @internal */
  [Symbol.for('nodejs.util.inspect.custom')](): string {
    return this.toString();
  }
}

/** What must be said of a control before a point is compared with another. */
export function controlNotes({ boost }: Installation): readonly Note[] {
  const isFree = boost.by === 'fixed wastegate' || (boost.by === 'spring' && boost.droop !== undefined);
  if (!isFree) return NO_NOTES;
  const message =
    'With a spring that droops or a wastegate that stands still, colder charge may show more boost or less: no sign is promised.';
  return [{ code: 'no sign promised', calculation: 'operating point', message }];
}
