import { calculation, derived, output, source } from '../calculation/index.js';
import { CARBON_DIOXIDE_CAUTIONS, DRY_ICE_CAUTIONS, NITROUS_OXIDE_CAUTIONS, WATER_CAUTIONS } from './spray-cautions.js';
import {
  BOTTLE_INPUT,
  CARBON_DIOXIDE_SOURCES,
  GAS_INPUT,
  hasCarbonDioxideLiquid,
  hasNitrousOxideLiquid,
  LATENT_HEAT_AT_NOZZLE,
  latentPartOfCarbonDioxide,
  latentPartOfNitrousOxide,
  latentPartOfWater,
  NITROUS_OXIDE_SOURCES,
  sensiblePartOfCarbonDioxide,
  sensiblePartOfNitrousOxide,
  sensiblePartOfWater,
  VAPOUR_INPUT,
  WATER_INPUT,
  WATER_SOURCES,
} from './spray-parts.js';

const SUBLIMATION = source('encyclopaedia', 'carbon dioxide, heat of sublimation at 1 atm', 'read');
const THROTTLING = derived('enthalpy before and behind a throttling nozzle');

interface Bottled {
  readonly name: string;
  readonly latent: typeof latentPartOfCarbonDioxide;
  readonly sensible: typeof sensiblePartOfCarbonDioxide;
  readonly latentHeatAtNozzle: number;
  readonly hasLiquid: typeof hasCarbonDioxideLiquid;
  readonly cautions: typeof CARBON_DIOXIDE_CAUTIONS;
  readonly sources: typeof CARBON_DIOXIDE_SOURCES;
}

const CARBON_DIOXIDE: Bottled = {
  name: 'carbon dioxide',
  latent: latentPartOfCarbonDioxide,
  sensible: sensiblePartOfCarbonDioxide,
  latentHeatAtNozzle: LATENT_HEAT_AT_NOZZLE.carbonDioxide,
  hasLiquid: hasCarbonDioxideLiquid,
  cautions: CARBON_DIOXIDE_CAUTIONS,
  sources: CARBON_DIOXIDE_SOURCES,
};

const NITROUS_OXIDE: Bottled = {
  name: 'nitrous oxide',
  latent: latentPartOfNitrousOxide,
  sensible: sensiblePartOfNitrousOxide,
  latentHeatAtNozzle: LATENT_HEAT_AT_NOZZLE.nitrousOxide,
  hasLiquid: hasNitrousOxideLiquid,
  cautions: NITROUS_OXIDE_CAUTIONS,
  sources: NITROUS_OXIDE_SOURCES,
};

function capacityFromBottle({ name, latent, sensible, hasLiquid, cautions, sources }: Bottled) {
  return calculation({
    name: `cold in ${name} spray`,
    task: 'spray coolant on an intercooler',
    inputs: {
      /** Temperature of the liquid in the bottle. */
      bottleTemperature: BOTTLE_INPUT,
      /** Temperature at which the gas leaves the core. */
      gasTemperature: GAS_INPUT,
    },
    output: output('q', 'specific energy', 'kJ/kg'),
    formula: 'latent(Tb) + sensible(Tg)',
    uses: { latent, sensible },
    si: (Tb, Tg) => latent.kernel(Tb) + sensible.kernel(Tg),
    rules: [hasLiquid],
    notes: cautions,
    rises: ['Tg'],
    falls: ['Tb'],
    sources,
  });
}

function shareAtNozzle(
  what: 'snow' | 'liquid',
  { name, latent, latentHeatAtNozzle, hasLiquid, cautions }: Bottled,
  sources: Bottled['sources'],
) {
  return calculation({
    name: `${what} in ${name} spray`,
    task: 'spray coolant on an intercooler',
    inputs: {
      /** Temperature of the liquid in the bottle. */
      bottleTemperature: BOTTLE_INPUT,
    },
    output: output('x', 'mass fraction', '%'),
    formula: `latent(Tb) / ${latentHeatAtNozzle}`,
    uses: { latent },
    si: (Tb) => latent.kernel(Tb) / latentHeatAtNozzle,
    rules: [hasLiquid],
    notes: cautions,
    falls: ['Tb'],
    sources,
  });
}

/**
 * Cold in a kilogram of carbon dioxide from a liquid bottle: everything it can take up until it leaves as gas.
 *
 * About 250 kJ/kg in all from a bottle at 20 °C, more from a colder one. The sublimation heat of dry ice, 571 kJ/kg, is not on top of
 * it: only 29 % of the liquid becomes snow, and what that snow takes up is the latent part.
 *
 * @function
 * @returns One specific energy, with the cautions for carbon dioxide.
 * @throws CalculationError at or above 31.0 °C, where the bottle holds no liquid.
 * @example
 * sprayCapacity.carbonDioxide({ bottleTemperature: temperature(20, '°C') }).in('kJ/kg') //=> 249.97
 */
export const sprayCapacityOfCarbonDioxide = capacityFromBottle(CARBON_DIOXIDE);

/**
 * Cold in a kilogram of nitrous oxide from a liquid bottle: everything it can take up until it leaves as gas. As a coolant only.
 *
 * @function
 * @returns One specific energy, with the cautions for nitrous oxide.
 * @throws CalculationError at or above 36.4 °C, where the bottle holds no liquid.
 * @example
 * sprayCapacity.nitrousOxide({ bottleTemperature: temperature(20, '°C') }).in('kJ/kg') //=> 254.16
 */
export const sprayCapacityOfNitrousOxide = capacityFromBottle(NITROUS_OXIDE);

/**
 * Cold in a kilogram of sprayed water, if all of it evaporates.
 *
 * Ten times that of carbon dioxide, but no colder than the wet bulb of the cooling air.
 *
 * @function
 * @returns One specific energy, with the cautions for water.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * sprayCapacity.water({ waterTemperature: temperature(18, '°C') }).in('kJ/kg') //=> 2471
 */
export const sprayCapacityOfWater = calculation({
  name: 'cold in water spray',
  task: 'spray coolant on an intercooler',
  inputs: {
    /** Temperature of the water in the tank. */
    waterTemperature: WATER_INPUT,
    /** Temperature at which the vapour leaves the core. */
    gasTemperature: VAPOUR_INPUT,
  },
  output: output('q', 'specific energy', 'kJ/kg'),
  formula: 'latent(Tg) + sensible(Tw, Tg)',
  uses: { latent: latentPartOfWater, sensible: sensiblePartOfWater },
  si: (Tw, Tg) => latentPartOfWater.kernel(Tg) + sensiblePartOfWater.kernel(Tw, Tg),
  notes: WATER_CAUTIONS,
  rises: ['Tg'],
  falls: ['Tw'],
  sources: WATER_SOURCES,
});

/**
 * Cold in a kilogram of dry ice laid on or blown at a core.
 *
 * @function
 * @returns One specific energy, with the cautions for dry ice.
 * @throws CalculationError if an input is physically impossible.
 * @example
 * sprayCapacity.dryIce({ gasTemperature: temperature(25, '°C') }).in('kJ/kg') //=> 654.2
 */
export const sprayCapacityOfDryIce = calculation({
  name: 'cold in dry ice',
  task: 'spray coolant on an intercooler',
  inputs: {
    /** Temperature at which the gas leaves the core. */
    gasTemperature: GAS_INPUT,
  },
  output: output('q', 'specific energy', 'kJ/kg'),
  formula: `${LATENT_HEAT_AT_NOZZLE.carbonDioxide} + sensible(Tg)`,
  uses: { sensible: sensiblePartOfCarbonDioxide },
  si: (Tg) => LATENT_HEAT_AT_NOZZLE.carbonDioxide + sensiblePartOfCarbonDioxide.kernel(Tg),
  notes: DRY_ICE_CAUTIONS,
  rises: ['Tg'],
  sources: [SUBLIMATION, ...CARBON_DIOXIDE_SOURCES],
});

/**
 * Share of the carbon dioxide from a liquid bottle that is snow at the nozzle; the rest is gas already.
 *
 * @function
 * @returns One mass fraction, with the cautions for carbon dioxide.
 * @throws CalculationError at or above 31.0 °C, where the bottle holds no liquid.
 * @example
 * snowShareOfCarbonDioxide({ bottleTemperature: temperature(20, '°C') }).in('%') //=> 29.2
 */
export const snowShareOfCarbonDioxide = shareAtNozzle('snow', CARBON_DIOXIDE, [
  SUBLIMATION,
  THROTTLING,
  ...CARBON_DIOXIDE_SOURCES,
]);

/**
 * Share of the nitrous oxide from a liquid bottle that is still liquid at the nozzle; the rest is gas already.
 *
 * @function
 * @returns One mass fraction, with the cautions for nitrous oxide.
 * @throws CalculationError at or above 36.4 °C, where the bottle holds no liquid.
 * @example
 * liquidShareOfNitrousOxide({ bottleTemperature: temperature(20, '°C') }).in('%') //=> 42.7
 */
export const liquidShareOfNitrousOxide = shareAtNozzle('liquid', NITROUS_OXIDE, [THROTTLING, ...NITROUS_OXIDE_SOURCES]);

/** Cold in a kilogram of coolant, all told, by coolant. */
export const sprayCapacity = {
  carbonDioxide: sprayCapacityOfCarbonDioxide,
  nitrousOxide: sprayCapacityOfNitrousOxide,
  water: sprayCapacityOfWater,
  dryIce: sprayCapacityOfDryIce,
} as const;

/** The part of that cold in snow, droplets or evaporation, by coolant: lost with what blows past. */
export const sprayLatentPart = {
  carbonDioxide: latentPartOfCarbonDioxide,
  nitrousOxide: latentPartOfNitrousOxide,
  water: latentPartOfWater,
} as const;

/** The part of that cold in warming gas, or water, by coolant. */
export const spraySensiblePart = {
  carbonDioxide: sensiblePartOfCarbonDioxide,
  nitrousOxide: sensiblePartOfNitrousOxide,
  water: sensiblePartOfWater,
} as const;
