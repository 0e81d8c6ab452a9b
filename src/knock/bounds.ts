/** What is possible in front of an engine and in its end gas, and what is everyday. */
export const OCTANE = { min: 20, max: 150, trusted: [80, 100], typical: 95 } as const;
export const CHARGE_PRESSURE = { min: 2e4, max: 1e6, typical: 204e3 } as const;
export const CHARGE_TEMPERATURE = { min: 200, max: 600, typical: 318.15 } as const;
export const END_GAS_PRESSURE = { min: 1e5, max: 5e7, typical: 75e5 } as const;
export const END_GAS_TEMPERATURE = { min: 400, max: 1600, typical: 820 } as const;
export const END_GAS_PRESSURE_RATIO = { min: 1, max: 200, typical: 40 } as const;
