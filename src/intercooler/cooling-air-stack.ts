import { dryAirDensity } from '../air/density.js';
import { mean } from '../calculation/repeats.js';
import { refusal, requireLabel } from '../calculation/refusal.js';
import { solve } from '../calculation/solve.js';
import { CalculationError, massFlow, subtract, type Note, type Quantity, type QuantityRecord } from '../units/index.js';
import { describe, merged, requireNames } from '../units/internal.js';
import { coolingAirBehindCore, coolingAirFlow, stackPressureLoss } from './cooling-air.js';
import { LOSS_EXPONENT } from './pressure-loss.js';

/** What drives the cooling air, and what air it is. */
export interface CoolingAirDrive {
  /** Temperature of the air in front of the first core. */
  readonly temperature: Quantity<'temperature'>;
  /** Absolute pressure of the air around the car. */
  readonly pressure: Quantity<'absolute pressure'>;
  /** Speed of the car through the air; zero on the bench. */
  readonly roadSpeed: Quantity<'speed'>;
  /** Share of the free-stream head that reaches the stack. */
  readonly ramRecovery?: Quantity<'ratio'> | undefined;
  /** Pressure of the fan without flow; without it, no fan. */
  readonly fanPressure?: Quantity<'pressure difference'> | undefined;
  /** Volume flow of the fan without resistance. */
  readonly fanFreeFlow?: Quantity<'volume flow'> | undefined;
  /** How the pressure of the fan falls with its flow. */
  readonly fanExponent?: Quantity<'ratio'> | undefined;
}

/** One core of a stack on the air side. */
export interface StackedCore {
  /** Names it in results and errors. */
  readonly label: string;
  /** Heat it gives to the air, or how that follows from the temperature at its face and the flow; stay in quantities there. */
  readonly heat:
    Quantity<'power'> | ((face: Quantity<'temperature'>, coolingAirFlow: Quantity<'mass flow'>) => Quantity<'power'>);
  /** Pressure loss of the cooling air where it was measured. */
  readonly measuredLoss: Quantity<'pressure difference'>;
  /** Mass flow there. */
  readonly measuredFlow: Quantity<'mass flow'>;
  /** Mean density over the core there. */
  readonly measuredDensity: Quantity<'density'>;
  /** How the loss grows with mass flow; without it 1.8. */
  readonly exponent?: Quantity<'ratio'> | undefined;
}

/** One core of a solved stack. */
export interface CoolingAirAtCore {
  readonly label: string;
  /** Temperature of the cooling air at its face. */
  readonly face: Quantity<'temperature'>;
  /** Heat it gives to the cooling air. */
  readonly heat: Quantity<'power'>;
  /** Temperature of the cooling air behind it. */
  readonly behind: Quantity<'temperature'>;
  /** Density of the cooling air, mean over the core. */
  readonly meanDensity: Quantity<'density'>;
}

/** A solved stack. */
export interface CoolingAirThroughStack {
  /** Mass flow of cooling air, the same through every core. */
  readonly flow: Quantity<'mass flow'>;
  /** Pressure loss of all cores together: what ram and fan give. */
  readonly loss: Quantity<'pressure difference'>;
  /** The cores from front to back. */
  readonly cores: readonly CoolingAirAtCore[];
  readonly notes: readonly Note[];
  /** As text. */
  toString(): string;
  /** As plain data. */
  toJSON(): { readonly flow: QuantityRecord; readonly loss: QuantityRecord; readonly cores: readonly object[] };
}

const NAME = 'cooling air through a stack';
const DRIVE_NAMES = [
  'temperature',
  'pressure',
  'roadSpeed',
  'ramRecovery',
  'fanPressure',
  'fanFreeFlow',
  'fanExponent',
] as const satisfies (keyof CoolingAirDrive)[];
const CORE_NAMES = [
  'label',
  'heat',
  'measuredLoss',
  'measuredFlow',
  'measuredDensity',
  'exponent',
] as const satisfies (keyof StackedCore)[];

/** Steps of the search for two flows that enclose the answer. */
const SHRINK = 0.85;
const MOST_STEPS = 60;

/**
 * Cooling air through cores one behind another, heat and flow solved together: each core breathes what the one in front has warmed,
 * and thin hot air is held up more.
 *
 * Give the cores from front to back; the same list turned round answers "in front of the radiator or behind it?". Everything stays in
 * quantities, so a flow found here has its uncertainty and can be explained.
 *
 * @returns Flow, loss, and the state of the air at every core.
 * @throws CalculationError if there is no core, nothing drives the air, an input is impossible, or so weak a drive cannot carry the heat.
 * @example
 * const { flow, cores } = coolingAirThroughStack(
 *   { temperature: temperature(18, '°C'), pressure: absolutePressure(941, 'hPa'), roadSpeed: speed(100, 'km/h') },
 *   [
 *     { label: 'radiator', heat: power(24, 'kW'), measuredLoss: pressureDifference(150, 'Pa'), measuredFlow: massFlow(0.5, 'kg/s'), measuredDensity: density(1.15, 'kg/m³') },
 *     { label: 'charge cooler', heat: power(12, 'kW'), measuredLoss: pressureDifference(120, 'Pa'), measuredFlow: massFlow(0.5, 'kg/s'), measuredDensity: density(1.15, 'kg/m³') },
 *   ],
 * );
 * flow.in('kg/s') //=> 0.4250
 * cores[1].face.in('°C') //=> 74.19
 */
export function coolingAirThroughStack(drive: CoolingAirDrive, cores: readonly StackedCore[]): CoolingAirThroughStack {
  requireNames(NAME, drive, DRIVE_NAMES, 'drive.');
  const stack = checkedCores(cores);
  const at = (flow: Quantity<'mass flow'>): Trial => trial(drive, stack, flow);
  const ambient = dryAirDensity({ temperature: drive.temperature, pressure: drive.pressure });
  const unheated = drivenFlow(
    drive,
    stack,
    ambient,
    stack.map(() => ambient),
  );
  const { solution, cores: states } = solve(
    { label: 'flow of cooling air', kind: 'mass flow', unit: 'kg/s', between: enclosing(unheated, at) },
    at,
  );
  const meanDensity = states.map((state) => state.meanDensity);
  return new SolvedStack(
    solution,
    stackPressureLoss({ coolingAirFlow: solution, ...losses(stack), meanDensity }),
    states,
  );
}

interface Trial {
  readonly residual: Quantity<'mass flow'>;
  readonly cores: readonly CoolingAirAtCore[];
}

/** The stack at a trial flow; the residual is what the drive would move through air of these densities, less the trial. */
function trial(drive: CoolingAirDrive, stack: readonly StackedCore[], flow: Quantity<'mass flow'>): Trial {
  const { pressure } = drive;
  let face = drive.temperature;
  const cores = stack.map(({ label, heat }): CoolingAirAtCore => {
    const given = typeof heat === 'function' ? heat(face, flow) : heat;
    const behind = coolingAirBehindCore({ face, heat: given, coolingAirFlow: flow });
    // At one pressure the mean of the specific volumes is that at the mean temperature.
    const meanDensity = dryAirDensity({ temperature: mean([face, behind]), pressure });
    const state = { label, face, heat: given, behind, meanDensity };
    face = behind;
    return state;
  });
  const ambient = dryAirDensity({ temperature: drive.temperature, pressure });
  const driven = drivenFlow(
    drive,
    stack,
    ambient,
    cores.map((core) => core.meanDensity),
  );
  return { residual: subtract(driven, flow), cores };
}

function drivenFlow(
  drive: CoolingAirDrive,
  stack: readonly StackedCore[],
  airDensity: Quantity<'density'>,
  meanDensity: readonly Quantity<'density'>[],
): Quantity<'mass flow'> {
  const { roadSpeed, ramRecovery, fanPressure, fanFreeFlow, fanExponent } = drive;
  const drives = { roadSpeed, ramRecovery, fanPressure, fanFreeFlow, fanExponent };
  return coolingAirFlow({ ...drives, airDensity, ...losses(stack), meanDensity });
}

function losses(stack: readonly StackedCore[]): {
  measuredLoss: Quantity<'pressure difference'>[];
  measuredFlow: Quantity<'mass flow'>[];
  measuredDensity: Quantity<'density'>[];
  exponent: Quantity<'ratio'>[];
} {
  return {
    measuredLoss: stack.map((core) => core.measuredLoss),
    measuredFlow: stack.map((core) => core.measuredFlow),
    measuredDensity: stack.map((core) => core.measuredDensity),
    exponent: stack.map((core) => core.exponent ?? LOSS_EXPONENT),
  };
}

/** Two flows with the answer between them: from the flow without heat downwards while heat slows it, upwards while a core cools it. */
function enclosing(
  start: Quantity<'mass flow'>,
  at: (flow: Quantity<'mass flow'>) => Trial,
): readonly [Quantity<'mass flow'>, Quantity<'mass flow'>] {
  const residual = (flow: Quantity<'mass flow'>): number => at(flow).residual.si;
  const isSlowed = residual(start) < 0;
  let near = start;
  for (let step = 1; step <= MOST_STEPS; step++) {
    const far = flowOf(start.si * (isSlowed ? SHRINK : 1 / SHRINK) ** step);
    try {
      if (residual(far) < 0 !== isSlowed) return [near, far];
    } catch (error) {
      if (error instanceof CalculationError) throw tooWeak(near, error);
      throw error;
    }
    near = far;
  }
  throw tooWeak(near);
}

const flowOf = (si: number): Quantity<'mass flow'> => massFlow(si, 'kg/s');

function tooWeak(near: Quantity<'mass flow'>, cause?: CalculationError): CalculationError {
  const got = `no balance down to ${String(near)}`;
  return refusal(NAME, 'not converged', '', 'a drive that can carry the heat away', got, cause?.message ?? '');
}

function checkedCores(cores: unknown): readonly StackedCore[] {
  if (!Array.isArray(cores) || cores.length === 0) {
    const got = Array.isArray(cores) ? 'an empty list' : describe(cores);
    throw refusal(NAME, 'missing', 'cores', 'a list of cores, front to back', got);
  }
  (cores as Partial<StackedCore>[]).forEach((core, i) => {
    requireNames(NAME, core, CORE_NAMES, `cores[${i}].`);
    requireLabel(NAME, core?.label);
  });
  return cores as readonly StackedCore[];
}

class SolvedStack implements CoolingAirThroughStack {
  readonly flow: Quantity<'mass flow'>;
  readonly loss: Quantity<'pressure difference'>;
  readonly cores: readonly CoolingAirAtCore[];

  constructor(flow: Quantity<'mass flow'>, loss: Quantity<'pressure difference'>, cores: readonly CoolingAirAtCore[]) {
    this.flow = flow;
    this.loss = loss;
    this.cores = cores;
  }

  get notes(): readonly Note[] {
    return this.cores.reduce((notes, core) => merged(notes, core.behind.notes), this.loss.notes);
  }

  toString(): string {
    const stations = this.cores.map(
      ({ label, face, heat, behind }) => `${label} ${String(face)} to ${String(behind)} by ${String(heat)}`,
    );
    return `cooling air ${String(this.flow)} at a loss of ${String(this.loss)}: ${stations.join('; ')}`;
  }

  toJSON(): { readonly flow: QuantityRecord; readonly loss: QuantityRecord; readonly cores: readonly object[] } {
    const cores = this.cores.map(({ label, face, heat, behind, meanDensity }) => ({
      label,
      face: face.toJSON(),
      heat: heat.toJSON(),
      behind: behind.toJSON(),
      meanDensity: meanDensity.toJSON(),
    }));
    return { flow: this.flow.toJSON(), loss: this.loss.toJSON(), cores };
  }

  /** @internal */
  [Symbol.for('nodejs.util.inspect.custom')](): string {
    return this.toString();
  }
}
