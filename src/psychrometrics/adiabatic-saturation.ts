import { MOLAR_MASS_RATIO } from '../air/constants.js';
import { rootBetween } from '../statistics/root-between.js';
import { latentHeat, LATENT_HEAT_AT_FREEZING, LATENT_HEAT_LOST_PER_KELVIN } from './latent-heat.js';
import { celsius } from './ranges.js';
import { TRIPLE_POINT } from './saturation-pressure.js';

/** Air that passes a wet wick: its latent heat, its own heat and the heat that the liquid or ice brings, J/kg. */
export interface Wick {
  /** Saturation pressure at the wick, from its temperature and the total pressure. */
  readonly saturated: (Tw: number, p: number) => number;
  readonly latent: (tw: number) => number;
  readonly carried: (t: number, tw: number) => number;
}

export const COLDEST_ICE = celsius(-100);
export const COLDEST_WATER = celsius(-50);

export const wetWick = (saturated: Wick['saturated']): Wick => ({
  saturated,
  latent: latentHeat,
  carried: (t, tw) => 2501000 + 1860 * t - 4186 * tw,
});

export const icedWick = (saturated: Wick['saturated']): Wick => ({
  saturated,
  latent: (tw) => 2830000 - 240 * tw,
  carried: (t, tw) => 2830000 + 1860 * t - 2100 * tw,
});

/** The balance of a wick as formula text, with a saturation pressure given as text. */
export function balanceText(wick: 'wet' | 'iced', ps: string): string {
  const [latent, slope, liquid] =
    wick === 'wet' ? [LATENT_HEAT_AT_FREEZING, LATENT_HEAT_LOST_PER_KELVIN, 4186] : [2830000, 240, 2100];
  return `((${latent} - ${slope} * (Tw - 273.15)) * ${MOLAR_MASS_RATIO} * ${ps} / (p - ${ps}) - 1006 * (T - Tw)) / (${latent} + 1860 * (T - 273.15) - ${liquid} * (Tw - 273.15))`;
}

/** Humidity ratio of air in which a wick settles at a temperature, bare. */
export function humidityRatioAt({ saturated, latent, carried }: Wick, T: number, p: number, Tw: number): number {
  const ps = saturated(Tw, p);
  const Ws = (MOLAR_MASS_RATIO * ps) / (p - ps);
  return (latent(Tw - 273.15) * Ws - 1006 * (T - Tw)) / carried(T - 273.15, Tw - 273.15);
}

/** Dry bulb of air of a humidity ratio in which a wick settles at a temperature, bare: the same balance solved for it. */
export function dryBulbAt({ saturated, latent }: Wick, p: number, Tw: number, W: number): number {
  const ps = saturated(Tw, p);
  const Ws = (MOLAR_MASS_RATIO * ps) / (p - ps);
  return Tw + (latent(Tw - 273.15) * (Ws - W)) / (1006 + 1860 * W);
}

/** The balance multiplied out, so that it keeps its sign where saturation at the wet bulb would pass the total pressure. */
function imbalance({ saturated, latent, carried }: Wick, T: number, p: number, W: number): (Tw: number) => number {
  return (Tw) => {
    const ps = saturated(Tw, p);
    const brought = 1006 * (T - Tw) + W * carried(T - 273.15, Tw - 273.15);
    return MOLAR_MASS_RATIO * ps * latent(Tw - 273.15) - (p - ps) * brought;
  };
}

/** Just above the dry bulb, where the wet bulb of saturated air lies once it is rounded. */
const above = (T: number): number => T * (1 + 1e-10);

/** Temperature of a wick with water in air of a humidity ratio, bare. */
export const wetBulbAt = (wick: Wick, T: number, p: number, W: number): number =>
  rootBetween(imbalance(wick, T, p, W), COLDEST_WATER, above(T));

/** Temperature of a wick with ice in air of a humidity ratio, bare. */
export const icedBulbAt = (wick: Wick, T: number, p: number, W: number): number =>
  rootBetween(imbalance(wick, T, p, W), COLDEST_ICE, Math.min(TRIPLE_POINT, above(T)));

/** A wick above the triple point is wet; the warmest that it can be iced is the triple point. */
export const canBeWet = (wick: Wick, T: number, p: number, W: number): boolean =>
  T >= TRIPLE_POINT && imbalance(wick, T, p, W)(TRIPLE_POINT) <= 0;
export const canBeIced = (wick: Wick, T: number, p: number, W: number): boolean =>
  T < TRIPLE_POINT || imbalance(wick, T, p, W)(TRIPLE_POINT) >= 0;

/** What a wick does in air, water and ice taken together. */
export interface WickPair {
  readonly wet: Wick;
  readonly iced: Wick;
}

/** Humidity ratio from the wet bulb of a wick that carries ice below the triple point, water above, bare. */
export const humidityRatioEither = ({ wet, iced }: WickPair, T: number, p: number, Tw: number): number =>
  humidityRatioAt(Tw < TRIPLE_POINT ? iced : wet, T, p, Tw);

/** Wet bulb of a wick that carries water where it can, bare. */
export const wetBulbEither = ({ wet, iced }: WickPair, T: number, p: number, W: number): number =>
  canBeWet(wet, T, p, W) ? wetBulbAt(wet, T, p, W) : icedBulbAt(iced, T, p, W);
