import { calculation, constant, derived, input, assumed, output } from '../../src/calculation/index.js';
import { CalculationError, ratio, type Quantity } from '../../src/units/index.js';

const open = { min: -1e9, max: 1e9 };
const sources = [derived('made for tests')];
const task = 'describe the air' as const;

export const powerOf = calculation({
  name: 'power from torque and speed',
  task,
  inputs: {
    torque: input('T', 'torque', { min: 0, max: 1e5 }),
    speed: input('n', 'rotational speed', { min: 0, max: 1e4 }),
  },
  output: output('P', 'power', 'kW'),
  formula: '2 * pi * T * n',
  si: (T, n) => 2 * Math.PI * T * n,
  sources,
});

/** A heat-capacity ratio as a constant that calculations assume. */
export const heatCapacityRatio = constant('test/heat-capacity-ratio', ratio(1.4), {
  label: 'heat-capacity ratio',
  source: sources[0]!,
  halfWidth: 0.005,
});

export const outlet = calculation({
  name: 'outlet temperature',
  task,
  inputs: {
    inletTemperature: input('T1', 'temperature', { min: 150, max: 500 }),
    pressureRatio: input('PR', 'ratio', { min: 1, max: 8, trusted: [1, 4] }),
    efficiency: input('eta', 'ratio', { min: 0.05, max: 1 }),
    heatCapacityRatio: assumed('k', 'ratio', { min: 1.2, max: 1.67, assume: heatCapacityRatio }),
  },
  output: output('T2', 'temperature', '°C'),
  formula: 'T1 * (1 + (PR^((k - 1) / k) - 1) / eta)',
  si: (T1, PR, eta, k) => T1 * (1 + (PR ** ((k - 1) / k) - 1) / eta),
  sources,
});

/** Air density of an ideal gas, with a rule between the inputs that the value can sit on. */
export const density = calculation({
  name: 'density',
  task,
  inputs: {
    pressure: input('p', 'absolute pressure', { min: 1e4, max: 2e6 }),
    temperature: input('T', 'temperature', { min: 200, max: 500 }),
  },
  output: output('rho', 'density', 'kg/m³'),
  formula: 'p / (287.05 * T)',
  si: (p, T) => p / (287.05 * T),
  sources,
});

export const kepler = calculation({
  name: 'Kepler residual',
  task,
  inputs: {
    anomaly: input('E', 'ratio', open),
    eccentricity: input('e', 'ratio', { min: 0, max: 0.999 }),
    mean: input('M', 'ratio', open),
  },
  output: output('r', 'ratio', '1'),
  formula: 'E - e * sin(E) - M',
  si: (E, e, M) => E - e * Math.sin(E) - M,
  sources,
});

/** C. F. Colebrook, J. Inst. Civ. Eng. 11 (1939) 133: friction factor of a rough pipe. */
export const colebrook = calculation({
  name: 'Colebrook residual',
  task,
  inputs: {
    frictionFactor: input('f', 'ratio', { min: 1e-4, max: 1 }),
    reynolds: input('Re', 'ratio', { min: 3000, max: 1e9 }),
    roughness: input('k', 'ratio', { min: 0, max: 0.1 }),
  },
  output: output('r', 'ratio', '1'),
  formula: '1 / sqrt(f) + 2 * log10(k / 3.7 + 2.51 / (Re * sqrt(f)))',
  si: (f, Re, k) => 1 / Math.sqrt(f) + 2 * Math.log10(k / 3.7 + 2.51 / (Re * Math.sqrt(f))),
  sources,
});

/** The message a call refuses with. */
export function messageOf(run: () => unknown): string {
  return errorOf(run).message;
}

/** The error a call refuses with. */
export function errorOf(run: () => unknown): CalculationError {
  try {
    run();
  } catch (error) {
    if (error instanceof CalculationError) return error;
    throw error;
  }
  throw new Error('it did not refuse');
}

/** Relative difference of a quantity or number from what it should be. */
export function relativeError(actual: Quantity | number, expected: Quantity | number): number {
  const si = (value: Quantity | number): number => (typeof value === 'number' ? value : value.si);
  return Math.abs(si(actual) - si(expected)) / Math.abs(si(expected));
}
