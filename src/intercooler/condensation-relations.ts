import { input, output, type Bounds } from '../calculation/index.js';
import { ratioAt, vapourPressureAt } from '../psychrometrics/humidity-ratio.js';
import { latentHeat, LATENT_HEAT_AT_FREEZING, LATENT_HEAT_LOST_PER_KELVIN } from '../psychrometrics/latent-heat.js';
import { rootBetween } from '../statistics/root-between.js';

const FREEZING = 273.15;
const COLDEST = 193.15;
const HUMIDITY = { min: 0, max: 0.2, typical: 0.0255 };
const HOT = { min: COLDEST, max: 523.15, typical: 394.15 };
const COLD = { min: COLDEST, max: 473.15, typical: 313.15 };
const DRY_AIR_FLOW = { min: 1e-4, max: 50, typical: 0.2 };

// Constants of the moist-air enthalpy that the psychrometrics topic uses, so that heat balances with it to the last digits.
const HEAT_CAPACITY_OF_DRY_AIR = 1006;
const HEAT_CAPACITY_OF_VAPOUR = 1860;

const ABOVE_FREEZING = {
  need: 'a temperature above 0 °C (below it frost grows in the core, blocks it, and gives its heat of fusion on top)',
  otherwise: 'note',
} as const;

/** What sets apart condensation with one way to take saturation from that with another. */
export interface CondensationSaturation {
  /** Saturation pressure of the charge, from its temperature and pressure. */
  readonly saturated: (T: number, p: number) => number;
  /** Dew point from the pressure of the charge and that of its vapour. */
  readonly dewPoint: (p: number, pv: number) => number;
  readonly pressure: Bounds;
}

/**
 * What holds of condensation in a core however saturation is taken: six definitions without their names, sources, and the formulas that
 * name saturation.
 */
export function condensationRelations({ saturated, dewPoint, pressure }: CondensationSaturation) {
  /** Vapour that can stay, where there is more; all of it where that hot air cannot be saturated at all. */
  const condensed = (W: number, T2: number, p: number): number => {
    const ps = saturated(T2, p);
    return ps < p ? Math.max(0, W - ratioAt(p, ps)) : 0;
  };
  const heatOf = (m: number, T1: number, T2: number, W: number, p: number): number => {
    const sensible = (HEAT_CAPACITY_OF_DRY_AIR + HEAT_CAPACITY_OF_VAPOUR * W) * (T1 - T2);
    const latent = condensed(W, T2, p) * latentHeat(T2 - FREEZING);
    return m * (sensible + latent);
  };
  const behindCore = (W: number, T2: number, p: number): number => {
    const ps = saturated(T2, p);
    return ps < p ? Math.min(W, ratioAt(p, ps)) : W;
  };

  return {
    dewPoint: {
      inputs: {
        /** Absolute pressure of the charge in the core. */
        pressure: input('p', 'absolute pressure', pressure),
        /** Humidity ratio of the charge, that of the room. */
        humidityRatio: input('W', 'humidity ratio', { ...HUMIDITY, min: 1e-6 }),
      },
      output: output('Td', 'temperature', '°C'),
      si: (p: number, W: number) => dewPoint(p, vapourPressureAt(p, W)),
      rises: ['p', 'W'],
    },
    water: {
      inputs: {
        /** Humidity ratio of the charge into the core, that of the room. */
        humidityRatio: input('W', 'humidity ratio', HUMIDITY),
        /** Charge temperature out of the core. */
        temperature: input('T2', 'temperature', COLD),
        /** Absolute pressure of the charge out of the core. */
        pressure: input('p', 'absolute pressure', pressure),
      },
      output: output('Wc', 'humidity ratio', 'g/kg'),
      si: condensed,
      rules: [{ ...ABOVE_FREEZING, holds: (_W: number, T2: number) => T2 >= FREEZING }],
      rises: ['W', 'p'],
      falls: ['T2'],
    },
    flow: {
      inputs: {
        /** Mass flow of the dry part of the charge. */
        dryAirFlow: input('m', 'mass flow', DRY_AIR_FLOW),
        /** Humidity ratio of the charge into the core, that of the room. */
        humidityRatio: input('W', 'humidity ratio', HUMIDITY),
        /** Charge temperature out of the core. */
        temperature: input('T2', 'temperature', COLD),
        /** Absolute pressure of the charge out of the core. */
        pressure: input('p', 'absolute pressure', pressure),
      },
      output: output('mc', 'mass flow', 'g/s'),
      si: (m: number, W: number, T2: number, p: number) => m * condensed(W, T2, p),
      rules: [{ ...ABOVE_FREEZING, holds: (_m: number, _W: number, T2: number) => T2 >= FREEZING }],
      rises: ['m', 'W', 'p'],
      falls: ['T2'],
    },
    humidityRatio: {
      inputs: {
        /** Humidity ratio of the charge into the core, that of the room. */
        humidityRatio: input('W', 'humidity ratio', HUMIDITY),
        /** Charge temperature out of the core. */
        temperature: input('T2', 'temperature', COLD),
        /** Absolute pressure of the charge out of the core. */
        pressure: input('p', 'absolute pressure', pressure),
      },
      output: output('W2', 'humidity ratio', 'g/kg'),
      si: behindCore,
      rules: [{ ...ABOVE_FREEZING, holds: (_W: number, T2: number) => T2 >= FREEZING }],
      rises: ['W', 'T2'],
      falls: ['p'],
    },
    heat: {
      inputs: {
        /** Mass flow of the dry part of the charge. */
        dryAirFlow: input('m', 'mass flow', DRY_AIR_FLOW),
        /** Charge temperature into the core. */
        hotInlet: input('T1', 'temperature', HOT),
        /** Charge temperature out of the core. */
        hotOutlet: input('T2', 'temperature', COLD),
        /** Humidity ratio of the charge into the core, that of the room. */
        humidityRatio: input('W', 'humidity ratio', HUMIDITY),
        /** Absolute pressure of the charge out of the core. */
        pressure: input('p', 'absolute pressure', pressure),
      },
      output: output('Q', 'power', 'kW'),
      formula: `m * ((${HEAT_CAPACITY_OF_DRY_AIR} + ${HEAT_CAPACITY_OF_VAPOUR} * W) * (T1 - T2) + Wc(W, T2, p) * (${LATENT_HEAT_AT_FREEZING} - ${LATENT_HEAT_LOST_PER_KELVIN} * (T2 - ${FREEZING})))`,
      si: heatOf,
      rules: [
        { ...ABOVE_FREEZING, holds: (_m: number, _T1: number, T2: number) => T2 >= FREEZING },
        {
          need: 'a charge that leaves no warmer than it came (else the core warms it)',
          holds: (_m: number, T1: number, T2: number) => T2 <= T1,
          otherwise: 'note' as const,
        },
      ],
      rises: ['T1', 'p'],
      falls: ['T2'],
    },
    temperature: {
      inputs: {
        /** Mass flow of the dry part of the charge. */
        dryAirFlow: input('m', 'mass flow', DRY_AIR_FLOW),
        /** Charge temperature into the core, above its dew point. */
        hotInlet: input('T1', 'temperature', HOT),
        /** Heat that the core takes out of the charge, the latent part included. */
        heat: input('Q', 'power', { min: 0, max: 1e6, typical: 18950 }),
        /** Humidity ratio of the charge into the core, that of the room. */
        humidityRatio: input('W', 'humidity ratio', HUMIDITY),
        /** Absolute pressure of the charge out of the core. */
        pressure: input('p', 'absolute pressure', pressure),
      },
      output: output('T2', 'temperature', '°C'),
      si: (m: number, T1: number, Q: number, W: number, p: number) =>
        rootBetween((T2) => Q - heatOf(m, T1, T2, W, p), COLDEST, T1),
      rules: [
        {
          need: 'hotInlet must be above the dew point of the charge: colder, water has dropped out before the core',
          holds: (_m: number, T1: number, _Q: number, W: number, p: number) => condensed(W, T1, p) === 0,
        },
        {
          need: 'the heat must leave the charge above -80 °C',
          holds: (m: number, T1: number, Q: number, W: number, p: number) => heatOf(m, T1, COLDEST, W, p) >= Q,
        },
        {
          ...ABOVE_FREEZING,
          holds: (m: number, T1: number, Q: number, W: number, p: number) => heatOf(m, T1, FREEZING, W, p) >= Q,
        },
      ],
      rises: ['T1', 'p'],
      falls: ['Q'],
    },
  };
}
