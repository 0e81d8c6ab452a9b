import { gasConstantMass } from '../air/ideal-gas.js';
import { moistAirEntropyFunction, moistAirGasConstant, moistAirSensibleEnthalpy } from '../air/moist-gas.js';
import { assumed, calculation, constant, derived, input, output, source } from '../calculation/index.js';
import { humidityRatio } from '../units/index.js';
import { ISENTROPIC_EFFICIENCY, POLYTROPIC_EFFICIENCY, PRESSURE_RATIO } from './bounds.js';
import { efficiencyRules } from './efficiency-rules.js';
import {
  enthalpyGained,
  entropyFunctionGained,
  HOTTEST_OUTLET,
  riseByEnthalpy,
  riseByEntropy,
} from './ideal-gas-rise.js';

/** No water vapour in the air: what compression assumes where no humidity is given. */
export const dryInlet = constant('compressor/dry-inlet', humidityRatio(0, 'g/kg'), {
  label: 'humidity ratio of dry air',
  source: derived('dry air holds no vapour'),
});

const INLET = { min: 200, max: 500, typical: 291.15 } as const;
const OUTLET = { min: 200, max: HOTTEST_OUTLET, typical: 394.15 } as const;
const HUMIDITY = { min: 0, max: 0.2, assume: dryInlet } as const;
const USES = { h: moistAirSensibleEnthalpy, phi: moistAirEntropyFunction, R: moistAirGasConstant } as const;
const SOURCES = [
  source('dixonHall', 'isentropic efficiency of a compressor', 'memory'),
  derived('enthalpy and entropy function from the NASA polynomials'),
];
const TOO_HOT = 'an outlet of at most 1000 K, where the heat capacities are known';

const idealRiseOf = (T1: number, PR: number, W: number): number =>
  riseByEntropy(T1, gasConstantMass(W) * Math.log(PR), W);

const outletOf = (T1: number, PR: number, eta: number, W: number): number =>
  T1 + riseByEnthalpy(T1, enthalpyGained(T1, idealRiseOf(T1, PR, W), W) / eta, W);

const polytropicOutletOf = (T1: number, PR: number, etap: number, W: number): number =>
  T1 + riseByEntropy(T1, (gasConstantMass(W) * Math.log(PR)) / etap, W);

const efficiencyOf = (T1: number, T2: number, PR: number, W: number): number =>
  enthalpyGained(T1, idealRiseOf(T1, PR, W), W) / enthalpyGained(T1, T2 - T1, W);

const polytropicEfficiencyOf = (T1: number, T2: number, PR: number, W: number): number =>
  (gasConstantMass(W) * Math.log(PR)) / entropyFunctionGained(T1, T2 - T1, W);

function ratioOf(T1: number, T2: number, eta: number, W: number): number {
  const ideal = riseByEnthalpy(T1, eta * enthalpyGained(T1, T2 - T1, W), W);
  return Math.exp(entropyFunctionGained(T1, ideal, W) / gasConstantMass(W));
}

/**
 * Temperature of the air leaving an ideal compressor, with the heat capacity that changes with temperature.
 *
 * The first half of {@link outletTemperatureVariableHeat}; on its own the least that any compressor can do.
 *
 * @function
 * @returns One total temperature.
 * @throws CalculationError if the air would leave above 1000 K, or an input is physically impossible.
 * @example
 * isentropicOutletTemperature({ inletTemperature: temperature(25, '°C'), pressureRatio: ratio(2) }).in('K') //=> 363.301
 */
export const isentropicOutletTemperature = calculation({
  name: 'isentropic outlet temperature',
  task: 'compress the charge',
  inputs: {
    /** Total temperature at the compressor inlet. */
    inletTemperature: input('T1', 'temperature', INLET),
    /** Outlet over inlet total pressure, both absolute. */
    pressureRatio: input('PR', 'ratio', PRESSURE_RATIO),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: assumed('W', 'humidity ratio', HUMIDITY),
  },
  output: output('T2s', 'temperature', '°C'),
  formula: 'phi(T2s, W) - phi(T1, W) == R(W) * log(PR)',
  uses: USES,
  si: (T1, PR, W) => T1 + idealRiseOf(T1, PR, W),
  rules: [{ need: TOO_HOT, holds: (T1, PR, W) => !Number.isNaN(idealRiseOf(T1, PR, W)) }],
  rises: ['T1', 'PR'],
  falls: ['W'],
  sources: SOURCES,
});

/**
 * Temperature of the air leaving a compressor, from its pressure ratio and isentropic efficiency, with the heat capacity that changes
 * with temperature and humidity.
 *
 * Within 0.2 K of real air up to a pressure ratio of 4.5, where {@link outletTemperature} with its one heat-capacity ratio of 1.4 is
 * 2.7 K high (25 °C, efficiency 72 %), 4.2 K (50 °C, 72 %) or 6.2 K (50 °C, 60 %). Humid air leaves colder: 20 g/kg make 0.5 K at a
 * pressure ratio of 2.
 *
 * @function
 * @returns One total temperature.
 * @throws CalculationError if the air would leave above 1000 K, or an input is physically impossible.
 * @example
 * outletTemperatureVariableHeat({ inletTemperature: temperature(50, '°C'), pressureRatio: ratio(4.5), isentropicEfficiency: percent(72) }).in('°C') //=> 286.753
 */
export const outletTemperatureVariableHeat = calculation({
  name: 'compressor outlet temperature, variable heat capacity',
  task: 'compress the charge',
  inputs: {
    /** Total temperature at the compressor inlet. */
    inletTemperature: input('T1', 'temperature', INLET),
    /** Outlet over inlet total pressure, both absolute. */
    pressureRatio: input('PR', 'ratio', PRESSURE_RATIO),
    /** Total-to-total isentropic efficiency. */
    isentropicEfficiency: input('eta', 'ratio', ISENTROPIC_EFFICIENCY),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: assumed('W', 'humidity ratio', HUMIDITY),
  },
  output: output('T2', 'temperature', '°C'),
  formula: 'h(T2, W) - h(T1, W) == (h(ideal(T1, PR, W), W) - h(T1, W)) / eta',
  uses: { h: moistAirSensibleEnthalpy, ideal: isentropicOutletTemperature },
  si: outletOf,
  rules: [{ need: TOO_HOT, holds: (T1, PR, eta, W) => !Number.isNaN(outletOf(T1, PR, eta, W)) }],
  rises: ['T1', 'PR'],
  falls: ['eta', 'W'],
  sources: SOURCES,
});

/**
 * Temperature of the air leaving a compressor, from its pressure ratio and polytropic efficiency, with the heat capacity that changes
 * with temperature and humidity.
 *
 * @function
 * @returns One total temperature.
 * @throws CalculationError if the air would leave above 1000 K, or an input is physically impossible.
 * @example
 * outletTemperaturePolytropicVariableHeat({ inletTemperature: temperature(25, '°C'), pressureRatio: ratio(2), polytropicEfficiency: percent(74.57) }).in('°C') //=> 115.379
 */
export const outletTemperaturePolytropicVariableHeat = calculation({
  name: 'compressor outlet temperature, polytropic, variable heat capacity',
  task: 'compress the charge',
  inputs: {
    /** Total temperature at the compressor inlet. */
    inletTemperature: input('T1', 'temperature', INLET),
    /** Outlet over inlet total pressure, both absolute. */
    pressureRatio: input('PR', 'ratio', PRESSURE_RATIO),
    /** Polytropic (small-stage) efficiency. */
    polytropicEfficiency: input('etap', 'ratio', POLYTROPIC_EFFICIENCY),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: assumed('W', 'humidity ratio', HUMIDITY),
  },
  output: output('T2', 'temperature', '°C'),
  formula: 'phi(T2, W) - phi(T1, W) == R(W) * log(PR) / etap',
  uses: USES,
  si: polytropicOutletOf,
  rules: [{ need: TOO_HOT, holds: (T1, PR, etap, W) => !Number.isNaN(polytropicOutletOf(T1, PR, etap, W)) }],
  rises: ['T1', 'PR'],
  falls: ['etap', 'W'],
  sources: [
    source('dixonHall', 'small-stage (polytropic) efficiency', 'memory'),
    derived('entropy function from the NASA polynomials'),
  ],
});

/**
 * Work that a compressor puts into each kilogram of humid air, from the temperatures across it, with the heat capacity that changes with
 * temperature and humidity.
 *
 * Multiply it by the flow of humid air, not of dry air: {@link compressorPower}. Heat from the turbine housing counts as work.
 *
 * @function
 * @returns One specific energy.
 * @throws CalculationError if the air leaves colder than it came, or an input is physically impossible.
 * @example
 * specificWorkVariableHeat({ inletTemperature: temperature(25, '°C'), outletTemperature: temperature(388.54048, 'K') }).in('kJ/kg') //=> 91.1032
 */
export const specificWorkVariableHeat = calculation({
  name: 'compressor specific work, variable heat capacity',
  task: 'compress the charge',
  inputs: {
    /** Total temperature at the compressor inlet. */
    inletTemperature: input('T1', 'temperature', INLET),
    /** Total temperature at the compressor outlet, before any cooler. */
    outletTemperature: input('T2', 'temperature', OUTLET),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: assumed('W', 'humidity ratio', HUMIDITY),
  },
  output: output('w', 'specific energy', 'kJ/kg'),
  formula: 'h(T2, W) - h(T1, W)',
  uses: { h: moistAirSensibleEnthalpy },
  si: (T1, T2, W) => enthalpyGained(T1, T2 - T1, W),
  rules: [{ need: 'outletTemperature must not be below inletTemperature', holds: (T1, T2) => T2 >= T1 }],
  rises: ['T2', 'W'],
  falls: ['T1'],
  sources: [
    source('dixonHall', 'steady-flow energy equation', 'memory'),
    derived('enthalpy from the NASA polynomials'),
  ],
});

/**
 * Isentropic efficiency of a compressor from the temperatures and the pressure ratio measured across it, with the heat capacity that
 * changes with temperature and humidity.
 *
 * The inverse of {@link outletTemperatureVariableHeat}. Heat from the turbine housing makes it read low: see
 * {@link apparentIsentropicEfficiency}.
 *
 * @function
 * @returns One ratio. Above 1 it carries a note, because such readings are not consistent; it is never cut off at 1. Carries a note
 * too where the rise is below 20 K, where 1 K of sensor error is more than 5 % of the efficiency.
 * @throws CalculationError if the air does not leave warmer than it came, or an input is physically impossible.
 * @example
 * const readings = { inletTemperature: temperature(25, '°C'), outletTemperature: temperature(395, 'K') };
 * isentropicEfficiencyVariableHeat({ ...readings, pressureRatio: ratio(2) }).in('%') //=> 67.1775
 */
export const isentropicEfficiencyVariableHeat = calculation({
  name: 'compressor isentropic efficiency from measurement, variable heat capacity',
  task: 'compress the charge',
  inputs: {
    /** Total temperature at the compressor inlet. */
    inletTemperature: input('T1', 'temperature', INLET),
    /** Total temperature at the compressor outlet, before any cooler. */
    outletTemperature: input('T2', 'temperature', OUTLET),
    /** Outlet over inlet total pressure, both absolute. */
    pressureRatio: input('PR', 'ratio', PRESSURE_RATIO),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: assumed('W', 'humidity ratio', HUMIDITY),
  },
  output: output('eta', 'ratio', '%'),
  formula: '(h(ideal(T1, PR, W), W) - h(T1, W)) / (h(T2, W) - h(T1, W))',
  uses: { h: moistAirSensibleEnthalpy, ideal: isentropicOutletTemperature },
  si: efficiencyOf,
  rules: efficiencyRules(efficiencyOf),
  rises: ['T1', 'PR'],
  falls: ['T2'],
  sources: [
    ...SOURCES,
    source('caseyFesich2010', 'abstract: heat transfer makes the efficiency from temperatures read low', 'read'),
    derived('the 20 K limit: 1 K of error in the rise is then 5 % of the efficiency'),
  ],
});

/**
 * Polytropic efficiency of a compressor from the temperatures and the pressure ratio measured across it, with the heat capacity that
 * changes with temperature and humidity.
 *
 * @function
 * @returns One ratio, with notes as those of {@link isentropicEfficiencyVariableHeat}.
 * @throws CalculationError if the air does not leave warmer than it came, or an input is physically impossible.
 * @example
 * const readings = { inletTemperature: temperature(25, '°C'), outletTemperature: temperature(395, 'K') };
 * polytropicEfficiencyVariableHeat({ ...readings, pressureRatio: ratio(2) }).in('%') //=> 70.1716
 */
export const polytropicEfficiencyVariableHeat = calculation({
  name: 'compressor polytropic efficiency from measurement, variable heat capacity',
  task: 'compress the charge',
  inputs: {
    /** Total temperature at the compressor inlet. */
    inletTemperature: input('T1', 'temperature', INLET),
    /** Total temperature at the compressor outlet, before any cooler. */
    outletTemperature: input('T2', 'temperature', OUTLET),
    /** Outlet over inlet total pressure, both absolute. */
    pressureRatio: input('PR', 'ratio', PRESSURE_RATIO),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: assumed('W', 'humidity ratio', HUMIDITY),
  },
  output: output('etap', 'ratio', '%'),
  formula: 'R(W) * log(PR) / (phi(T2, W) - phi(T1, W))',
  uses: USES,
  si: polytropicEfficiencyOf,
  rules: efficiencyRules(polytropicEfficiencyOf),
  rises: ['T1', 'PR'],
  falls: ['T2'],
  sources: [
    source('dixonHall', 'small-stage (polytropic) efficiency', 'memory'),
    derived('entropy function from the NASA polynomials'),
  ],
});

/**
 * Pressure ratio that a compressor must have made, from the temperatures across it and its isentropic efficiency, with the heat
 * capacity that changes with temperature and humidity.
 *
 * @function
 * @returns One ratio of total pressures. Carries a note above 8, where no single compressor of an engine works.
 * @throws CalculationError if the air leaves colder than it came, or an input is physically impossible.
 * @example
 * const readings = { inletTemperature: temperature(25, '°C'), outletTemperature: temperature(388.54048, 'K') };
 * pressureRatioVariableHeat({ ...readings, isentropicEfficiency: percent(72) }).in('1') //=> 2
 */
export const pressureRatioVariableHeat = calculation({
  name: 'compressor pressure ratio from temperatures, variable heat capacity',
  task: 'compress the charge',
  inputs: {
    /** Total temperature at the compressor inlet. */
    inletTemperature: input('T1', 'temperature', INLET),
    /** Total temperature at the compressor outlet. */
    outletTemperature: input('T2', 'temperature', OUTLET),
    /** Total-to-total isentropic efficiency. */
    isentropicEfficiency: input('eta', 'ratio', ISENTROPIC_EFFICIENCY),
    /** Mass of vapour per mass of dry air. */
    humidityRatio: assumed('W', 'humidity ratio', HUMIDITY),
  },
  output: output('PR', 'ratio', '1'),
  formula: 'h(ideal(T1, PR, W), W) - h(T1, W) == eta * (h(T2, W) - h(T1, W))',
  uses: { h: moistAirSensibleEnthalpy, ideal: isentropicOutletTemperature },
  si: ratioOf,
  rules: [
    { need: 'outletTemperature must not be below inletTemperature', holds: (T1, T2) => T2 >= T1 },
    {
      need: 'a pressure ratio of at most 8 (no single compressor of an engine makes more)',
      holds: (T1, T2, eta, W) => ratioOf(T1, T2, eta, W) <= PRESSURE_RATIO.max,
      otherwise: 'note',
    },
  ],
  rises: ['T2', 'eta', 'W'],
  falls: ['T1'],
  sources: SOURCES,
});
