import { CalculationError, type Problem, type Quantity } from '../units/index.js';
import { inputProblems, requireOptions, unknownNames } from '../units/internal.js';
import { vapourPressureFromDewPoint } from './dew-point.js';
import { dryBulbFromEnthalpy, dryBulbFromWetBulb } from './dry-bulb.js';
import { humidityRatioFromEnthalpy } from './enthalpy.js';
import { possible, type HumidAir, type Known } from './humid-air-state.js';
import {
  degreeOfSaturation,
  humidityRatioFromVapourPressure,
  vapourPressureFromHumidityRatio,
} from './humidity-ratio.js';
import { PERFECT_GAS, REAL_GAS, type HumidAirModel, type Wick } from './model.js';
import { vapourPressureFromRelativeHumidity } from './vapour-pressure.js';

/** Measures of humid air, of which any two beside the pressure fix its state. */
export interface HumidAirMeasures {
  /** Dry-bulb temperature. */
  readonly temperature?: Quantity<'temperature'>;
  /** Wet-bulb temperature. */
  readonly wetBulb?: Quantity<'temperature'>;
  /** Dew point, below 0.01 °C the frost point. */
  readonly dewPoint?: Quantity<'temperature'>;
  readonly relativeHumidity?: Quantity<'relative humidity'>;
  /** Mass of vapour per mass of dry air. */
  readonly humidityRatio?: Quantity<'humidity ratio'>;
  /** Partial pressure of the water vapour. */
  readonly vapourPressure?: Quantity<'absolute pressure'>;
  /** Enthalpy per mass of dry air, counted from dry air and liquid water at 0 °C. */
  readonly enthalpy?: Quantity<'specific energy'>;
}

/** What the state of {@link humidAir} follows. */
export interface HumidAirOptions {
  /**
   * `'perfect gas'` when left out: the handbook's simple relations, relative humidity counted from saturation of pure vapour, as power
   * standards do. `'real gas'`: Greenspan's enhancement factor in every saturation, so relative humidity counted from saturated air, and
   * the second virial coefficient in the density.
   */
  readonly model?: HumidAirModel['name'];
  /**
   * What a given wet bulb's wick carries, where that was seen. When left out, ice below 0.01 °C, and a note from -10 °C to there says what
   * it would be over supercooled water.
   */
  readonly wick?: Wick;
}

type Measure = keyof HumidAirMeasures;
type Given = HumidAirMeasures & { readonly pressure: Quantity<'absolute pressure'> };

const NAME = 'humid air';
const OPTIONS = { model: [PERFECT_GAS.name, REAL_GAS.name], wick: ['water', 'ice'] } as const;
const OF_MEASURE = {
  temperature: degreeOfSaturation,
  wetBulb: dryBulbFromWetBulb,
  dewPoint: vapourPressureFromDewPoint,
  relativeHumidity: vapourPressureFromRelativeHumidity,
  humidityRatio: vapourPressureFromHumidityRatio,
  vapourPressure: humidityRatioFromVapourPressure,
  enthalpy: humidityRatioFromEnthalpy,
} as const satisfies Record<Measure, unknown>;
const MEASURES = Object.keys(OF_MEASURE) as readonly Measure[];
const OF_VAPOUR: readonly string[] = ['dewPoint', 'humidityRatio', 'vapourPressure'];

/** What is wrong with what was given, all of it at once. */
function problemsOf(given: Readonly<Record<string, unknown>>, measures: readonly Measure[]): readonly Problem[] {
  const names = ['pressure', ...MEASURES];
  const inputs = ['pressure', ...measures].map((name) => {
    const { spec } = name === 'pressure' ? degreeOfSaturation : OF_MEASURE[name as Measure];
    return spec.inputs.find((input) => input.name === name)!;
  });
  const wrong = inputProblems(
    { ...degreeOfSaturation.spec, name: NAME, inputs, rules: [] },
    inputs.map(({ name }) => given[name]),
  );
  return [...unknownNames(given, names), ...wrong, ...pairProblems(measures)];
}

function pairProblems(measures: readonly Measure[]): readonly Problem[] {
  const problem = (need: string, mend: string): Problem[] => [
    { code: 'rule', input: measures.join(' and '), need, got: measures.join(' and ') || 'none', mend },
  ];
  const need = `two of ${MEASURES.join(', ')} beside the pressure`;
  if (measures.length !== 2) return problem(need, 'Two fix the state; a third can only contradict them.');
  if (measures.every((measure) => OF_VAPOUR.includes(measure)))
    return problem(need, 'At a given pressure these two say the same thing: how much vapour there is.');
  if (measures.includes('wetBulb') && measures.includes('enthalpy'))
    return problem(need, 'Wet bulb and enthalpy say nearly the same thing: give another measure in place of one.');
  return [];
}

/**
 * Humid air from its pressure and any two measures: dry bulb, wet bulb, dew point, relative humidity, humidity ratio, vapour pressure,
 * enthalpy.
 *
 * The dry bulb is calculated where it is not given. Dew point, humidity ratio and vapour pressure say the same thing at one pressure, and
 * wet bulb and enthalpy nearly so; those pairs are refused.
 *
 * @throws CalculationError if not just two measures are given, they contradict each other, or no such air can exist.
 * @example
 * const pressure = absolutePressure(941, 'hPa');
 * const bulbs = { wetBulb: temperature(11.3, '°C'), dewPoint: temperature(6, '°C') };
 * humidAir({ pressure, ...bulbs }).temperature.in('°C') //=> 17.9519
 * humidAir({ pressure, ...bulbs }, { model: 'real gas' }).density.in('kg/m³') //=> 1.12223
 */
export function humidAir(given: Given, options: HumidAirOptions = {}): HumidAir {
  requireOptions(NAME, options, OPTIONS);
  const model = options.model === 'real gas' ? REAL_GAS : PERFECT_GAS;
  const values = { ...given } as Readonly<Record<string, unknown>>;
  const measures = MEASURES.filter((measure) => values[measure] !== undefined);
  const problems = [...problemsOf(values, measures), ...wickProblems(measures, options)];
  if (problems.length > 0) throw new CalculationError(NAME, problems);
  const { pressure, wetBulb, enthalpy, relativeHumidity } = given;
  const known = { ...knownVapour(given, model), ...without(given) };
  if (given.temperature) {
    const air = { temperature: given.temperature, pressure };
    if (relativeHumidity) known.vapourPressure = model.vapourPressureOfRelativeHumidity({ ...air, relativeHumidity });
    if (wetBulb) known.humidityRatio = model.humidityRatioOfWetBulb({ ...air, wetBulb }, options.wick);
    if (enthalpy) known.humidityRatio = humidityRatioFromEnthalpy({ temperature: air.temperature, enthalpy });
    return possible(air, known, model);
  }
  const temperature = dryBulb(given, known, model, options.wick);
  if (relativeHumidity)
    known.vapourPressure ??= model.vapourPressureOfRelativeHumidity({ temperature, pressure, relativeHumidity });
  return possible({ temperature, pressure }, known, model);
}

/** A wick that nobody read would be left out, silently. */
function wickProblems(measures: readonly Measure[], { wick }: HumidAirOptions): readonly Problem[] {
  if (wick === undefined || measures.includes('wetBulb')) return [];
  const need = 'left out where no wet bulb is given';
  return [
    { code: 'rule', input: 'wick', need, got: `'${wick}'`, mend: 'It says what the wick of a wet bulb carries.' },
  ];
}

/** The given measures that are properties of the state as they are. */
function without({ wetBulb, relativeHumidity, enthalpy }: Given): Known {
  return {
    ...(wetBulb ? { wetBulb } : {}),
    ...(relativeHumidity ? { relativeHumidity } : {}),
    ...(enthalpy ? { enthalpy } : {}),
  };
}

/** The vapour, where one of its measures was given. */
function knownVapour({ pressure, dewPoint, humidityRatio, vapourPressure }: Given, model: HumidAirModel): Known {
  if (dewPoint) return { dewPoint, vapourPressure: model.vapourPressureOfDewPoint({ pressure, dewPoint }) };
  if (humidityRatio) return { humidityRatio };
  return vapourPressure ? { vapourPressure } : {};
}

function dryBulb(given: Given, known: Known, model: HumidAirModel, wick: Wick | undefined): Quantity<'temperature'> {
  const { pressure, wetBulb, enthalpy, relativeHumidity } = given;
  const hasVapour = known.vapourPressure !== undefined || known.humidityRatio !== undefined;
  if (hasVapour && relativeHumidity) {
    const vapourPressure = (known.vapourPressure ??= vapourPressureFromHumidityRatio({
      pressure,
      humidityRatio: known.humidityRatio!,
    }));
    return model.dryBulbOfRelativeHumidity({ pressure, vapourPressure, relativeHumidity });
  }
  if (hasVapour) {
    const humidityRatio = (known.humidityRatio ??= humidityRatioFromVapourPressure({
      pressure,
      vapourPressure: known.vapourPressure!,
    }));
    return wetBulb
      ? model.dryBulbOfWetBulb({ pressure, wetBulb, humidityRatio }, wick)
      : dryBulbFromEnthalpy({ enthalpy: enthalpy!, humidityRatio });
  }
  return wetBulb
    ? model.dryBulbOfWetBulbAndRelativeHumidity({ pressure, wetBulb, relativeHumidity: relativeHumidity! }, wick)
    : model.dryBulbOfEnthalpyAndRelativeHumidity({
        pressure,
        enthalpy: enthalpy!,
        relativeHumidity: relativeHumidity!,
      });
}
