import { gasConstantOfDryAir, partialDensityOfDryAir } from '../air/index.js';
import { assumed, calculation, constant, derived, input, output, source } from '../calculation/index.js';
import { absolutePressure } from '../units/index.js';
import { fourStroke, wholeCycles } from './cycle.js';

/** No water vapour in the charge: what charge density assumes when none is given. */
export const dryCharge = constant('engine/dry-charge', absolutePressure(0, 'kPa'), {
  label: 'vapour pressure of a dry charge',
  source: derived('dry air holds no vapour'),
});

/**
 * Mass of dry air per volume of charge in the manifold, which is what an engine burns fuel with.
 *
 * Humid room air keeps its humidity ratio through the compressor, so its vapour pressure grows with boost: at 10 g/kg
 * it takes 1.6 % of the charge pressure. Give it where the comparison is finer than that.
 *
 * @function
 * @returns The density of the dry air in the charge.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible, or vapour is given more pressure
 * than the charge has.
 * @example
 * chargeDensity({
 *   manifoldPressure: absolutePressure(180, 'kPa'),
 *   chargeTemperature: temperature(45, '°C'),
 * }).in('kg/m³') //=> 1.97104
 */
export const chargeDensity = calculation({
  name: 'charge density',
  task: 'describe the engine',
  inputs: {
    /** Absolute pressure in the inlet manifold: boost plus the barometer at the place. */
    manifoldPressure: input('p', 'absolute pressure', { min: 5e3, max: 2e6, typical: 204e3 }),
    /** Temperature of the charge in the manifold. A sensor soaked in heat reads above it. */
    chargeTemperature: input('T', 'temperature', { min: 200, max: 600, typical: 318.15 }),
    /** Pressure of the water vapour in the charge, at manifold pressure. */
    vapourPressure: assumed('p_v', 'absolute pressure', { min: 0, max: 2e5, assume: dryCharge }),
    /** Gas constant of dry air. */
    gasConstant: assumed('R', 'specific gas constant', { min: 280, max: 295, assume: gasConstantOfDryAir }),
  },
  output: output('rho', 'density', 'kg/m³'),
  formula: '(p - p_v) / (R * T)',
  si: (p, T, pv, R) => partialDensityOfDryAir.kernel(T, p, pv, R),
  rules: [{ need: 'a vapour pressure below the manifold pressure', holds: (p, _T, pv) => pv < p }],
  rises: ['p'],
  falls: ['T', 'p_v', 'R'],
  sources: [source('heywood', 'section 2.10', 'memory')],
});

/**
 * Volumetric efficiency on the density in the manifold: how well the engine itself breathes, whatever feeds it.
 *
 * Near 0.8 to 1.0 for road engines, more where the pipes are tuned. Airflow and density must both be of dry air, or
 * both of humid. A colder charge shows a slightly lower value: see {@link volumetricEfficiencyAtTemperature}.
 *
 * @function
 * @returns The volumetric efficiency. Say which density it is on; {@link volumetricEfficiencyOnAmbientDensity} has the
 * same name in the trade.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * volumetricEfficiencyOnManifoldDensity({
 *   airMassFlow: massFlow(166.2, 'g/s'),
 *   chargeDensity: density(1.971, 'kg/m³'),
 *   sweptVolume: volume(2, 'L'),
 *   engineSpeed: rotationalSpeed(5500, 'rpm'),
 * }).in('%') //=> 91.9884
 */
export const volumetricEfficiencyOnManifoldDensity = calculation({
  name: 'volumetric efficiency on manifold density',
  task: 'describe the engine',
  inputs: {
    /** Mass flow of air into the engine. */
    airMassFlow: input('mdot', 'mass flow', { min: 0, max: 100, typical: 0.19 }),
    /** Density of the charge in the manifold, of dry air where the flow is of dry air. */
    chargeDensity: input('rho', 'density', { min: 0.02, max: 40, typical: 2.23 }),
    /** Swept volume of all cylinders together. */
    sweptVolume: input('V_d', 'volume', { min: 1e-5, max: 1, typical: 1.8e-3 }),
    /** Engine speed. */
    engineSpeed: input('n', 'rotational speed', { min: 0.5, max: 1000, typical: 100 }),
    /** Revolutions from one inlet stroke of a cylinder to its next. */
    revolutionsPerCycle: assumed('n_R', 'ratio', { min: 1, max: 2, assume: fourStroke }),
  },
  output: output('eta_v', 'ratio', '%'),
  formula: 'mdot * n_R / (rho * V_d * n)',
  si: (mdot, rho, Vd, n, nR) => (mdot * nR) / (rho * Vd * n),
  rules: [wholeCycles(4)],
  rises: ['mdot'],
  sources: [source('heywood', 'section 2.10', 'memory')],
});

/**
 * Volumetric efficiency on the density of the room: engine, compressor and cooler together. It passes 1 as soon as
 * boost does its work.
 *
 * @function
 * @returns The volumetric efficiency. Say which density it is on; {@link volumetricEfficiencyOnManifoldDensity} has the
 * same name in the trade.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * volumetricEfficiencyOnAmbientDensity({
 *   airMassFlow: massFlow(166.2, 'g/s'),
 *   ambientDensity: density(1.145, 'kg/m³'),
 *   sweptVolume: volume(2, 'L'),
 *   engineSpeed: rotationalSpeed(5500, 'rpm'),
 * }).in('%') //=> 158.349
 */
export const volumetricEfficiencyOnAmbientDensity = calculation({
  name: 'volumetric efficiency on ambient density',
  task: 'describe the engine',
  inputs: {
    /** Mass flow of air into the engine. */
    airMassFlow: input('mdot', 'mass flow', { min: 0, max: 100, typical: 0.19 }),
    /** Density of the room's air, of dry air where the flow is of dry air. */
    ambientDensity: input('rho_a', 'density', { min: 0.2, max: 2.5, typical: 1.11 }),
    /** Swept volume of all cylinders together. */
    sweptVolume: input('V_d', 'volume', { min: 1e-5, max: 1, typical: 1.8e-3 }),
    /** Engine speed. */
    engineSpeed: input('n', 'rotational speed', { min: 0.5, max: 1000, typical: 100 }),
    /** Revolutions from one inlet stroke of a cylinder to its next. */
    revolutionsPerCycle: assumed('n_R', 'ratio', { min: 1, max: 2, assume: fourStroke }),
  },
  output: output('eta_v', 'ratio', '%'),
  formula: 'mdot * n_R / (rho_a * V_d * n)',
  si: (mdot, rho, Vd, n, nR) => (mdot * nR) / (rho * Vd * n),
  rules: [wholeCycles(4)],
  rises: ['mdot'],
  sources: [source('heywood', 'section 2.10', 'memory')],
});

/**
 * The two volumetric efficiencies by the density they are counted on.
 *
 * @example
 * Object.keys(volumetricEfficiency) //=> ['onManifoldDensity', 'onAmbientDensity']
 */
export const volumetricEfficiency = {
  onManifoldDensity: volumetricEfficiencyOnManifoldDensity,
  onAmbientDensity: volumetricEfficiencyOnAmbientDensity,
} as const;

/**
 * Mass flow of dry air into the engine by speed and density: manifold pressure and temperature, engine speed, and the
 * volumetric efficiency on manifold density.
 *
 * It is as good as the volumetric efficiency put in, which moves with speed, with cam position and a little with charge
 * temperature. With recirculated exhaust gas in the manifold it is the total of dry gas, not the fresh air: take the recirculated share
 * off before mixture or power is worked out from it.
 *
 * @function
 * @returns The mass flow of dry air; with recirculated exhaust gas, of all the gas.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * speedDensityAirflow({
 *   volumetricEfficiency: percent(92),
 *   manifoldPressure: absolutePressure(180, 'kPa'),
 *   chargeTemperature: temperature(45, '°C'),
 *   sweptVolume: volume(2, 'L'),
 *   engineSpeed: rotationalSpeed(5500, 'rpm'),
 * }).in('g/s') //=> 166.224
 */
export const speedDensityAirflow = calculation({
  name: 'speed-density airflow',
  task: 'describe the engine',
  inputs: {
    /** Volumetric efficiency on manifold density. */
    volumetricEfficiency: input('eta_v', 'ratio', { min: 0.01, max: 2, typical: 0.95 }),
    /** Absolute pressure in the inlet manifold: boost plus the barometer at the place. */
    manifoldPressure: input('p', 'absolute pressure', { min: 5e3, max: 2e6, typical: 204e3 }),
    /** Temperature of the charge in the manifold. */
    chargeTemperature: input('T', 'temperature', { min: 200, max: 600, typical: 318.15 }),
    /** Swept volume of all cylinders together. */
    sweptVolume: input('V_d', 'volume', { min: 1e-5, max: 1, typical: 1.8e-3 }),
    /** Engine speed. */
    engineSpeed: input('n', 'rotational speed', { min: 0, max: 1000, typical: 100 }),
    /** Pressure of the water vapour in the charge, at manifold pressure. */
    vapourPressure: assumed('p_v', 'absolute pressure', { min: 0, max: 2e5, assume: dryCharge }),
    /** Revolutions from one inlet stroke of a cylinder to its next. */
    revolutionsPerCycle: assumed('n_R', 'ratio', { min: 1, max: 2, assume: fourStroke }),
    /** Gas constant of dry air. */
    gasConstant: assumed('R', 'specific gas constant', { min: 280, max: 295, assume: gasConstantOfDryAir }),
  },
  output: output('mdot', 'mass flow', 'g/s'),
  formula: 'eta_v * (p - p_v) / (R * T) * V_d * n / n_R',
  si: (etaV, p, T, Vd, n, pv, nR, R) => (etaV * partialDensityOfDryAir.kernel(T, p, pv, R) * Vd * n) / nR,
  rules: [
    { need: 'a vapour pressure below the manifold pressure', holds: (_etaV, p, _T, _Vd, _n, pv) => pv < p },
    wholeCycles(6),
  ],
  rises: ['eta_v', 'p'],
  falls: ['T'],
  sources: [source('heywood', 'section 2.10', 'memory')],
});
