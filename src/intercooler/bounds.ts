/** What is possible at a charge cooler, and what is everyday. */
export const HOT_INLET = { min: 200, max: 700, typical: 394.15 } as const;
export const HOT_OUTLET = { min: 150, max: 700, typical: 317.15 } as const;
export const COOLANT_INLET = { min: 150, max: 450, typical: 291.15 } as const;
export const INLET_PRESSURE = { min: 1e4, max: 1e6, typical: 204100 } as const;
export const OUTLET_PRESSURE = { min: 1e4, max: 1e6, typical: 197100 } as const;
export const MASS_FLOW = { min: 1e-4, max: 50, typical: 0.2 } as const;
export const CHARGE_CAPACITY_RATE = { min: 0.1, max: 5e5, typical: 201 } as const;
export const COOLANT_CAPACITY_RATE = { min: 0.1, max: 5e5, typical: 670 } as const;
export const EFFECTIVENESS = { min: 0, max: 1, typical: 0.75 } as const;
export const CAPACITY_RATIO = { min: 0, max: 1, typical: 0.3 } as const;
/** Far beyond any core: where the series of crossflow still has all its digits. */
export const TRANSFER_UNITS = { min: 0, max: 500, typical: 2 } as const;
