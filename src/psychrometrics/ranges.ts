/** A bound in °C as a typed temperature becomes kelvin, so that one typed right at the bound is inside. */
export const celsius = (t: number): number => t + 273.15;

/** What humid air can be here; everyday values are those of a room at 640 m. */
export const TEMPERATURE = {
  min: celsius(-100),
  max: celsius(250),
  trusted: [celsius(-100), celsius(200)],
  typical: 291.15,
} as const;

export const PRESSURE = { min: 2e4, max: 6e5, typical: 94100 } as const;

/** Where saturation is taken without an enhancement factor: at 3 bar that leaves the saturated vapour 1 % short. */
export const SATURATED_PRESSURE = { ...PRESSURE, trusted: [2e4, 3e5] } as const;

export const VAPOUR_PRESSURE = { min: 0, max: 4e6, typical: 930 } as const;

export const HUMIDITY_RATIO = { min: 0, max: 100, typical: 0.0062 } as const;

/** Saturated air must survive a round trip through another measure of humidity, whose last digit may be rounded up. */
export const ROUNDING = 1 + 1e-12;
