/** What is possible on the way of the charge, and what is everyday. */
export const DRY_FLOW = { min: 0, max: 5, typical: 0.164 } as const;
export const CHARGE_FLOW = { min: 1e-6, max: 5, typical: 0.165 } as const;
export const COOLANT_FLOW = { min: 1e-6, max: 50, typical: 0.55 } as const;
export const HUMIDITY_RATIO = { min: 0, max: 0.5, typical: 0.009 } as const;
export const CHARGE_TEMPERATURE = { min: 150, max: 900, typical: 394 } as const;
export const COOLED_TEMPERATURE = { min: 150, max: 900, typical: 323 } as const;
export const CHARGE_PRESSURE = { min: 1e4, max: 2e6, typical: 189e3 } as const;
export const BAROMETER = { min: 3e4, max: 1.2e5, typical: 94e3 } as const;
export const LOSS = { min: 0, max: 2e5, typical: 6000 } as const;
export const POWER = { min: 0, max: 5e6, typical: 16e3 } as const;
