import { assumed, calculation, constant, input, output, source } from '../calculation/index.js';
import { absolutePressure, ratio, temperature, type Quantity } from '../units/index.js';

/** The mechanical efficiency that ISO 3046 takes where the maker states none. */
export const mechanicalEfficiencyOfIso3046 = constant('correction/mechanical-efficiency-of-iso-3046', ratio(0.8), {
  label: 'mechanical efficiency taken by ISO 3046',
  source: source('iso3046', 'where the maker states none', 'memory'),
});

const ratedPressure = constant('correction/rated-pressure-of-iso-3046', absolutePressure(100, 'kPa'), {
  label: 'pressure of the rating',
  source: source('iso3046', 'standard reference conditions', 'memory'),
});
const ratedTemperature = constant('correction/rated-temperature-of-iso-3046', temperature(298.15, 'K'), {
  label: 'air temperature of the rating',
  source: source('iso3046', 'standard reference conditions, 298 K', 'memory'),
});
const ratedVapourPressure = constant('correction/rated-vapour-pressure-of-iso-3046', absolutePressure(950.76, 'Pa'), {
  label: 'vapour pressure of the rating, 30 % at 25 °C',
  source: source('iso3046', 'standard reference conditions, relative humidity 30 %', 'memory'),
});
const ratedCoolantTemperature = constant('correction/rated-coolant-temperature-of-iso-3046', temperature(298.15, 'K'), {
  label: 'charge-coolant temperature of the rating',
  source: source('iso3046', 'standard reference conditions, 298 K', 'memory'),
});

/** How the power of a class of engine follows the air and the charge coolant at its site. */
export interface SiteExponents {
  /** 1 where power follows the dry pressure, 0 where it follows the barometer. */
  readonly humidityWeight: Quantity<'ratio'>;
  readonly pressureExponent: Quantity<'ratio'>;
  readonly temperatureExponent: Quantity<'ratio'>;
}

/** The same for an engine with a charge cooler. */
export interface ChargeCooledSiteExponents extends SiteExponents {
  readonly coolantExponent: Quantity<'ratio'>;
}

function exponent(engine: string, name: string, value: number): Quantity<'ratio'> {
  return constant(`correction/iso-3046/${engine}/${name}`, ratio(value), {
    label: `${name} (${engine})`,
    source: source('iso3046', engine, 'memory'),
  });
}

function exponents(engine: string, a: number, m: number, n: number): SiteExponents {
  return {
    humidityWeight: exponent(engine, 'weight of humidity', a),
    pressureExponent: exponent(engine, 'exponent of pressure', m),
    temperatureExponent: exponent(engine, 'exponent of temperature', n),
  };
}

/**
 * The exponents of ISO 3046 by class of engine, from memory, to be spread into {@link sitePowerIso3046}.
 *
 * @example
 * String(siteExponents['diesel, unboosted, air limited'].temperatureExponent) //=> '0.75'
 */
export const siteExponents = {
  'diesel, unboosted, air limited': exponents('diesel, unboosted, air limited', 1, 1, 0.75),
  'diesel, unboosted, heat limited': exponents('diesel, unboosted, heat limited', 0, 1, 1),
  'diesel, turbocharged': exponents('diesel, turbocharged', 0, 0.7, 2),
  'spark ignition, unboosted': exponents('spark ignition, unboosted', 1, 1, 0.5),
} as const;

const CHARGE_COOLED = 'diesel, turbocharged, charge cooled';

/** The exponents of ISO 3046 for {@link sitePowerIso3046ChargeCooled}, from memory. */
export const chargeCooledSiteExponents: ChargeCooledSiteExponents = {
  ...exponents(CHARGE_COOLED, 0, 0.7, 1.2),
  coolantExponent: exponent(CHARGE_COOLED, 'exponent of charge-coolant temperature', 1),
};

const SITE = {
  /** Power that the engine is rated at under the standard's reference conditions. */
  ratedPower: input('P_r', 'power', { min: 1, max: 1e9, typical: 160e3 }),
  /** Barometer at the site, vapour included, not reduced to sea level. */
  sitePressure: input('p_x', 'absolute pressure', { min: 40e3, max: 120e3, typical: 94100 }),
  /** Temperature of the air that enters the engine at the site. */
  siteTemperature: input('T_x', 'temperature', { min: 220, max: 350, typical: 303.15 }),
  /** Pressure of the water vapour in the air of the site. */
  siteVapourPressure: input('pv_x', 'absolute pressure', { min: 0, max: 2e4, typical: 930 }),
} as const;
const CLASS = {
  /** 1 where power follows the dry pressure, 0 where it follows the barometer. */
  humidityWeight: input('a', 'ratio', { min: 0, max: 1, typical: 1 }),
  /** Exponent of the pressure ratio. */
  pressureExponent: input('m', 'ratio', { min: 0, max: 3, typical: 1 }),
  /** Exponent of the air temperature ratio. */
  temperatureExponent: input('n', 'ratio', { min: 0, max: 3, typical: 0.75 }),
} as const;
const RATING = {
  /** Brake over indicated power at the rating. */
  mechanicalEfficiency: assumed('eta_m', 'ratio', { min: 0.5, max: 1, assume: mechanicalEfficiencyOfIso3046 }),
  /** Barometer that the rating holds at. */
  ratedPressure: assumed('p_r', 'absolute pressure', { min: 40e3, max: 120e3, assume: ratedPressure }),
  /** Air temperature that the rating holds at. */
  ratedTemperature: assumed('T_r', 'temperature', { min: 250, max: 330, assume: ratedTemperature }),
  /** Vapour pressure that the rating holds at. */
  ratedVapourPressure: assumed('pv_r', 'absolute pressure', { min: 0, max: 5e3, assume: ratedVapourPressure }),
} as const;

const SOURCES = [source('iso3046', 'power adjustment for ambient conditions; the text itself was not read', 'memory')];
const HOW_STILL_RUNNING = 'a site at which the engine still gives power';
const ADJUSTED = '* (1 + 0.7 * (1 / eta_m - 1)) - 0.7 * (1 / eta_m - 1))';

/**
 * Power that an engine *rated* by ISO 3046 (and ISO 15550) gives at a site: the other direction from a correction factor,
 * which goes from observed to standard power.
 *
 * It takes a power and gives a power, and no factor comes out that could be put to the wrong use. For an engine with a
 * charge cooler use {@link sitePowerIso3046ChargeCooled}.
 *
 * @function
 * @returns The power at the site.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible, or the engine would give no power.
 * @example
 * sitePowerIso3046({
 *   ratedPower: power(160, 'kW'),
 *   sitePressure: absolutePressure(941, 'hPa'),
 *   siteTemperature: temperature(30, '°C'),
 *   siteVapourPressure: absolutePressure(929, 'Pa'),
 *   ...siteExponents['diesel, unboosted, air limited'],
 * }).in('kW') //=> 146.651
 */
export const sitePowerIso3046 = calculation({
  name: 'site power by ISO 3046',
  task: 'correct power to a standard atmosphere',
  inputs: { ...SITE, ...CLASS, ...RATING },
  output: output('P_x', 'power', 'kW'),
  formula: `P_r * (((p_x - a * pv_x) / (p_r - a * pv_r))^m * (T_r / T_x)^n ${ADJUSTED}`,
  si: (Pr, px, Tx, pvx, a, m, n, etaM, pr, Tr, pvr) =>
    adjusted(Pr, airPart(px, pvx, pr, pvr, a) ** m * (Tr / Tx) ** n, etaM),
  rules: [
    {
      need: HOW_STILL_RUNNING,
      holds: (Pr, px, Tx, pvx, a, m, n, etaM, pr, Tr, pvr) =>
        adjusted(Pr, airPart(px, pvx, pr, pvr, a) ** m * (Tr / Tx) ** n, etaM) > 0,
    },
  ],
  rises: ['P_r', 'p_x'],
  falls: ['T_x', 'pv_x'],
  sources: SOURCES,
});

/**
 * Power that a turbocharged engine with a charge cooler, *rated* by ISO 3046 (and ISO 15550), gives at a site: the other
 * direction from a correction factor, which goes from observed to standard power.
 *
 * @function
 * @returns The power at the site.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible, or the engine would give no power.
 * @example
 * sitePowerIso3046ChargeCooled({
 *   ratedPower: power(160, 'kW'),
 *   sitePressure: absolutePressure(90, 'kPa'),
 *   siteTemperature: temperature(308, 'K'),
 *   siteVapourPressure: absolutePressure(929, 'Pa'),
 *   siteCoolantTemperature: temperature(308, 'K'),
 *   ...chargeCooledSiteExponents,
 * }).in('kW') //=> 134.582
 */
export const sitePowerIso3046ChargeCooled = calculation({
  name: 'site power by ISO 3046 with a charge cooler',
  task: 'correct power to a standard atmosphere',
  inputs: {
    ...SITE,
    /** Temperature of the medium that cools the charge, where it enters the cooler. */
    siteCoolantTemperature: input('Tc_x', 'temperature', { min: 220, max: 400, typical: 303.15 }),
    ...CLASS,
    /** Exponent of the charge-coolant temperature ratio. */
    coolantExponent: input('q', 'ratio', { min: 0, max: 3, typical: 1 }),
    ...RATING,
    /** Charge-coolant temperature that the rating holds at. */
    ratedCoolantTemperature: assumed('Tc_r', 'temperature', { min: 250, max: 400, assume: ratedCoolantTemperature }),
  },
  output: output('P_x', 'power', 'kW'),
  formula: `P_r * (((p_x - a * pv_x) / (p_r - a * pv_r))^m * (T_r / T_x)^n * (Tc_r / Tc_x)^q ${ADJUSTED}`,
  si: (Pr, px, Tx, pvx, Tcx, a, m, n, q, etaM, pr, Tr, pvr, Tcr) =>
    adjusted(Pr, airPart(px, pvx, pr, pvr, a) ** m * (Tr / Tx) ** n * (Tcr / Tcx) ** q, etaM),
  rules: [
    {
      need: HOW_STILL_RUNNING,
      holds: (Pr, px, Tx, pvx, Tcx, a, m, n, q, etaM, pr, Tr, pvr, Tcr) =>
        adjusted(Pr, airPart(px, pvx, pr, pvr, a) ** m * (Tr / Tx) ** n * (Tcr / Tcx) ** q, etaM) > 0,
    },
  ],
  rises: ['P_r', 'p_x'],
  falls: ['T_x', 'Tc_x', 'pv_x'],
  sources: SOURCES,
});

function airPart(px: number, pvx: number, pr: number, pvr: number, a: number): number {
  return (px - a * pvx) / (pr - a * pvr);
}

/** The power where the indicated power stands to that of the rating as k: alpha = k - 0.7 (1 - k)(1/eta_m - 1). */
function adjusted(Pr: number, k: number, etaM: number): number {
  const friction = 0.7 * (1 / etaM - 1);
  return Pr * (k * (1 + friction) - friction);
}
