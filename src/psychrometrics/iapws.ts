import { calculation, input, output, source } from '../calculation/index.js';

const CRITICAL_TEMPERATURE = 647.096;
const CRITICAL_PRESSURE = 22.064e6;
const SATURATION = { min: 273.15, max: CRITICAL_TEMPERATURE, trusted: [273.15, 647.096], typical: 291.15 } as const;

function wagnerPruss(T: number): number {
  const distance = (CRITICAL_TEMPERATURE - T) / CRITICAL_TEMPERATURE;
  const root = Math.sqrt(distance);
  const cube = distance ** 3;
  const sum =
    distance * (-7.85951783 + 1.84408259 * root) +
    cube * (-11.7866497 + 22.6807411 * root - 15.9618719 * distance + 1.80122502 * distance ** 4 * root);
  return CRITICAL_PRESSURE * Math.exp((CRITICAL_TEMPERATURE / T) * sum);
}

/**
 * Saturation pressure of water by the reference equation of IAPWS (Wagner and Pruss), from the triple to the critical point.
 *
 * To check {@link saturationPressureOverWater}, the handbook's fit, which agrees within 0.03 % from 0 to 100 °C.
 *
 * @function
 * @returns One absolute pressure.
 * @throws CalculationError if the temperature is outside 273.15 to 647.096 K.
 * @example
 * saturationPressureWagnerPruss({ temperature: temperature(18, '°C') }).in('Pa') //=> 2064.61
 */
export const saturationPressureWagnerPruss = calculation({
  name: 'saturation pressure, Wagner and Pruss',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the vapour and the water. */
    temperature: input('T', 'temperature', SATURATION),
  },
  output: output('ps', 'absolute pressure', 'Pa'),
  formula:
    '22064000 * exp(647.096 / T * (-7.85951783 * (1 - T / 647.096) + 1.84408259 * (1 - T / 647.096)^1.5 - 11.7866497 * (1 - T / 647.096)^3 + 22.6807411 * (1 - T / 647.096)^3.5 - 15.9618719 * (1 - T / 647.096)^4 + 1.80122502 * (1 - T / 647.096)^7.5))',
  si: wagnerPruss,
  rises: ['T'],
  sources: [source('iapwsSr1', 'equation for the vapour pressure', 'memory')],
});

/** As hot as humid air is taken here; toward the critical point the quadratic equations lose digits. */
const REGION_4 = { min: 273.15, max: 523.15, typical: 291.15 } as const;

const N = [
  1167.0521452767, -724213.16703206, -17.073846940092, 12020.82470247, -3232555.0322333, 14.91510861353,
  -4823.2657361591, 405113.40542057, -0.23855557567849, 650.17534844798,
] as const;

function region4(T: number): number {
  const v = T + N[8] / (T - N[9]);
  const A = (v + N[0]) * v + N[1];
  const B = (N[2] * v + N[3]) * v + N[4];
  const C = (N[5] * v + N[6]) * v + N[7];
  const root = (2 * C) / (Math.sqrt(B * B - 4 * A * C) - B);
  return root ** 4 * 1e6;
}

function region4Temperature(p: number): number {
  const beta = (p / 1e6) ** 0.25;
  const E = (beta + N[2]) * beta + N[5];
  const F = (N[0] * beta + N[3]) * beta + N[6];
  const G = (N[1] * beta + N[4]) * beta + N[7];
  const D = (2 * G) / (-F - Math.sqrt(F * F - 4 * E * G));
  const T = (2 * (N[8] + N[9] * D)) / (N[9] + D + Math.sqrt((N[9] - D) ** 2 - 4 * N[8]));
  // The equation backward loses more digits than the one forward, so a step of Newton's with the latter brings them back.
  const p0 = region4(T);
  const slope = (region4(T * (1 + 1e-6)) - p0) / (T * 1e-6);
  return T - (p0 - p) / slope;
}

const V = `(T + (${N[8]}) / (T - ${N[9]}))`;
const quadratic = (a: string, b: number, c: number): string => `(${a}${V}^2 + (${b}) * ${V} + (${c}))`;
const A = quadratic('', N[0], N[1]);
const B = quadratic(`(${N[2]}) * `, N[3], N[4]);
const C = quadratic(`${N[5]} * `, N[6], N[7]);

/**
 * Saturation pressure of water by the industrial formulation of IAPWS, region 4, from 0 to 250 °C.
 *
 * @function
 * @returns One absolute pressure; within 0.01 % of {@link saturationPressureWagnerPruss} from 0 to 100 °C.
 * @throws CalculationError if the temperature is outside 0 to 250 °C.
 * @example
 * saturationPressureIf97({ temperature: temperature(18, '°C') }).in('Pa') //=> 2064.66
 */
export const saturationPressureIf97 = calculation({
  name: 'saturation pressure, IAPWS-IF97',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the vapour and the water. */
    temperature: input('T', 'temperature', REGION_4),
  },
  output: output('ps', 'absolute pressure', 'Pa'),
  formula: `(2 * ${C} / (sqrt(${B}^2 - 4 * ${A} * ${C}) - ${B}))^4 * 1e6`,
  si: region4,
  rises: ['T'],
  sources: [source('iapwsIf97', 'equation 30', 'memory')],
});

/**
 * Saturation temperature of water by the industrial formulation of IAPWS, region 4: the boiling point at a pressure.
 *
 * @function
 * @returns One temperature.
 * @throws CalculationError if the pressure is outside 611.22 Pa to 3.976 MPa.
 * @example
 * saturationTemperatureIf97({ pressure: absolutePressure(941, 'hPa') }).in('°C') //=> 97.9148
 */
export const saturationTemperatureIf97 = calculation({
  name: 'saturation temperature, IAPWS-IF97',
  task: 'describe humid air',
  inputs: {
    /** Absolute pressure of the vapour. */
    pressure: input('p', 'absolute pressure', { min: 611.22, max: 3.976e6, typical: 94100 }),
  },
  output: output('T', 'temperature', '°C'),
  formula: 'p == ps(T)',
  uses: { ps: saturationPressureIf97 },
  si: region4Temperature,
  rises: ['p'],
  sources: [source('iapwsIf97', 'equation 31', 'memory')],
});

/**
 * Saturation pressure over ice by IAPWS, the reference for the frost point.
 *
 * To check {@link saturationPressureOverIce}, the handbook's fit, which agrees within 0.04 % down to -40 °C.
 *
 * @function
 * @returns One absolute pressure.
 * @throws CalculationError if the temperature is outside 50 to 273.16 K.
 * @example
 * sublimationPressureIapws({ temperature: temperature(-10, '°C') }).in('Pa') //=> 259.874
 */
export const sublimationPressureIapws = calculation({
  name: 'sublimation pressure of ice, IAPWS',
  task: 'describe humid air',
  inputs: {
    /** Temperature of the vapour and the ice. */
    temperature: input('T', 'temperature', { min: 50, max: 273.16, typical: 263.15 }),
  },
  output: output('pice', 'absolute pressure', 'Pa'),
  formula:
    '611.657 * exp(273.16 / T * (-21.2144006 * (T / 273.16)^0.00333333333 + 27.3203819 * (T / 273.16)^1.20666667 - 6.1059813 * (T / 273.16)^1.70333333))',
  si: (T) => {
    const u = T / 273.16;
    // The coefficients add up to nothing, so that powers may be taken as distances from 1, which keeps digits near the triple point.
    const l = Math.log1p((T - 273.16) / 273.16);
    const sum =
      -21.2144006 * Math.expm1(0.00333333333 * l) +
      27.3203819 * Math.expm1(1.20666667 * l) -
      6.1059813 * Math.expm1(1.70333333 * l);
    return 611.657 * Math.exp(sum / u);
  },
  rises: ['T'],
  sources: [source('iapwsR14', 'sublimation pressure of ice Ih', 'memory')],
});

/** Saturation by the equations of IAPWS, next to the handbook's fits. */
export const saturationIapws = {
  wagnerPruss: saturationPressureWagnerPruss,
  if97: saturationPressureIf97,
  ice: sublimationPressureIapws,
} as const;
