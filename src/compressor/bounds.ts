import { heatCapacityRatioOfAir } from '../air/constants.js';

/** What is possible at a compressor, what is everyday, and where one heat-capacity ratio is trusted. */
export const INLET_TEMPERATURE = { min: 150, max: 500, typical: 291.15 } as const;
export const OUTLET_TEMPERATURE = { min: 150, max: 900, typical: 394.15 } as const;
export const INLET_PRESSURE = { min: 1e4, max: 1e6, typical: 94100 } as const;
export const OUTLET_PRESSURE = { min: 1e4, max: 1e6, typical: 204100 } as const;
export const PRESSURE_RATIO = { min: 1, max: 8, typical: 2.17 } as const;
export const TRUSTED_RATIO = { ...PRESSURE_RATIO, trusted: [1, 4] } as const;
export const ISENTROPIC_EFFICIENCY = { min: 0.05, max: 1, typical: 0.7 } as const;
export const POLYTROPIC_EFFICIENCY = { min: 0.2, max: 1, typical: 0.73 } as const;
export const HEAT_CAPACITY_RATIO = { min: 1.2, max: 1.67, assume: heatCapacityRatioOfAir } as const;
export const MASS_FLOW = { min: 0, max: 5, typical: 0.2 } as const;
export const CORRECTED_FLOW = { min: 0, max: 5, typical: 0.21 } as const;
export const WHEEL_SPEED = { min: 0, max: 6000, typical: 2000 } as const;
export const REFERENCE_TEMPERATURE = { min: 250, max: 330, typical: 298.15 } as const;
export const REFERENCE_PRESSURE = { min: 8e4, max: 1.1e5, typical: 1e5 } as const;
export const NEW_REFERENCE_TEMPERATURE = { ...REFERENCE_TEMPERATURE, typical: 288.15 } as const;
export const NEW_REFERENCE_PRESSURE = { ...REFERENCE_PRESSURE, typical: 101325 } as const;
