import { constant, source } from '../calculation/index.js';
import { molarMass, ratio, specificGasConstant, specificHeatCapacity } from '../units/index.js';

/** Gas constant of dry air. Published values spread from 287.042 to 287.053 J/(kg·K) with the composition assumed. */
export const gasConstantOfDryAir = constant('air/gas-constant-of-dry-air', specificGasConstant(287.042, 'J/(kg·K)'), {
  label: 'gas constant of dry air',
  source: source('ashrae2017', 'equation 1', 'memory'),
  halfWidth: 0.011,
});

/**
 * Heat-capacity ratio of air, for formulas that take it as constant. The half width covers dry air from 250 to 430 K and humid air
 * up to a humidity ratio of 20 g/kg, whose own value lies mostly below.
 */
export const heatCapacityRatioOfAir = constant('air/heat-capacity-ratio', ratio(1.4), {
  label: 'heat-capacity ratio of air',
  source: source('dixonHall', 'perfect gas', 'memory'),
  halfWidth: 0.01,
});

/**
 * Specific heat capacity of air at constant pressure, for formulas that take it as constant. The half width covers dry air from 250
 * to 440 K and room air up to a humidity ratio of 15 g/kg, whose own value lies mostly above.
 */
export const specificHeatCapacityOfAir = constant(
  'air/specific-heat-capacity',
  specificHeatCapacity(1005, 'J/(kg·K)'),
  { label: 'specific heat capacity of air', source: source('dixonHall', 'perfect gas', 'memory'), halfWidth: 15 },
);

/** Molar mass of dry air. */
export const molarMassOfDryAir = constant('air/molar-mass-of-dry-air', molarMass(28.966, 'g/mol'), {
  label: 'molar mass of dry air',
  source: source('ashrae2017', 'composition of dry air', 'memory'),
  halfWidth: 1.6e-6,
});

/** Molar mass of water over that of dry air: what turns a vapour pressure into a mass. ASHRAE's figure since 2009; before, 0.62198. */
export const MOLAR_MASS_RATIO = 0.621945;
