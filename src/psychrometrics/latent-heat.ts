/** Heat of evaporation of water at 0 °C, J/kg, as the enthalpy of moist air is counted. */
export const LATENT_HEAT_AT_FREEZING = 2501000;

/** What a kelvin takes off it, J/(kg·K): liquid water takes 4186, vapour 1860. */
export const LATENT_HEAT_LOST_PER_KELVIN = 2326;

/** Heat of evaporation at a temperature in °C, bare. */
export const latentHeat = (celsius: number): number => LATENT_HEAT_AT_FREEZING - LATENT_HEAT_LOST_PER_KELVIN * celsius;
