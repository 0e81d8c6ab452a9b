import { CalculationError, calculation, commonPractice, input, output, type Problem } from '../calculation/index.js';
import { powerRatioFromChargeTemperature } from '../engine/index.js';
import { dryPressure, vapourPressureFromRelativeHumidityOverWater } from '../psychrometrics/index.js';
import { ratio, type Quantity } from '../units/index.js';
import { describe, isPlain, merged, quantityOf, unknownNames } from '../units/internal.js';
import { pressureFactorGaugeSpringMoist } from './boost-control.js';
import type { HumidRoom } from './correction-factor.js';

const NAME = 'correction factor of a boosted engine';

/** Charge temperatures to correct between: as measured in the manifold, and the one that figures are to be stated at. */
export interface ChargeTemperatures {
  readonly measured: Quantity<'temperature'>;
  readonly reference: Quantity<'temperature'>;
  /** Exponent of power on charge temperature; 0.6 when left out. */
  readonly exponent?: Quantity<'ratio'> | undefined;
}

/** What {@link boostedCorrectionFactor} takes. */
export type BoostedCorrectionRequest =
  | { readonly boostControl: 'absolute closed loop'; readonly chargeTemperature?: ChargeTemperatures | undefined }
  | {
      readonly boostControl: 'gauge spring';
      readonly room: HumidRoom;
      /** Boost above the room, as the spring holds it. */
      readonly boost: Quantity<'gauge pressure'>;
      readonly chargeTemperature?: ChargeTemperatures | undefined;
    };

const productOfParts = calculation({
  name: NAME,
  task: 'correct power to a standard atmosphere',
  inputs: {
    /** Part that the barometer and the humidity have. */
    pressureFactor: input('F_p', 'ratio', { min: 0.3, max: 3, typical: 1.037 }),
    /** Part that the charge temperature has. */
    temperatureFactor: input('F_T', 'ratio', { min: 0.3, max: 3, typical: 1.01 }),
  },
  output: output('F', 'ratio', '1'),
  formula: 'F_p * F_T',
  si: (pressure, temperature) => pressure * temperature,
  sources: [commonPractice('pressure by what holds the boost, temperature by that of the charge')],
});

/**
 * Factor for an engine whose boost control decides what the room can do to it: the pressure part by what the boost is held
 * against, the temperature part by the *charge* temperature, not that of the room.
 *
 * - `'absolute closed loop'`: the controller makes up for the barometer, so the pressure part is 1.
 * - `'gauge spring'`: {@link pressureFactorGaugeSpringMoist}.
 * - Charge temperature, where given: the power law of `powerRatioFromChargeTemperature`.
 *
 * It is common practice and no standard: print the room, the boost and the charge temperatures beside the figure. Two
 * set-ups tried in one session are best compared as observed, `correctionFactor({ standard: 'none' })`.
 *
 * @returns The number that observed power or torque is multiplied by, with a note that says what it is.
 * @throws CalculationError if the boost control is none of the two, or an input is missing, of the wrong kind or
 * impossible.
 * @example
 * boostedCorrectionFactor({
 *   boostControl: 'gauge spring',
 *   boost: gaugePressure(1.1, 'bar'),
 *   room: {
 *     pressure: absolutePressure(941, 'hPa'),
 *     temperature: temperature(18, '°C'),
 *     relativeHumidity: relativeHumidity(45, '%'),
 *   },
 *   chargeTemperature: { measured: temperature(45, '°C'), reference: temperature(40, '°C') },
 * }).in('1') //=> 1.0386
 */
export function boostedCorrectionFactor(request: BoostedCorrectionRequest): Quantity<'ratio'> {
  check(request);
  const { chargeTemperature } = request;
  const pressureFactor =
    request.boostControl === 'gauge spring' ? gaugeSpringPart(request) : ratio(1).named('no part of the barometer');
  const temperatureFactor = chargeTemperature
    ? powerRatioFromChargeTemperature({
        referenceTemperature: chargeTemperature.measured,
        chargeTemperature: chargeTemperature.reference,
        exponent: chargeTemperature.exponent,
      })
    : ratio(1).named('no part of the charge temperature');
  const factor = productOfParts({ pressureFactor, temperatureFactor });
  const message = `${PARTS[request.boostControl]} ${chargeTemperature ? BY_CHARGE : NOT_BY_CHARGE} ${NO_STANDARD}`;
  const notes = merged(factor.notes, [{ code: 'boost control', calculation: NAME, message }]);
  return quantityOf('ratio', factor.si, factor.unit, factor.origin, notes, NAME);
}

const PARTS = {
  'absolute closed loop': 'Boost is held to an absolute pressure, so nothing is corrected for the barometer.',
  'gauge spring': 'Boost sits on a spring against the room, so the barometer moves only its own share of the charge.',
} as const;
const BY_CHARGE = 'Corrected to a charge temperature, at fixed spark timing.';
const NOT_BY_CHARGE = 'Not corrected for charge temperature: state it beside the figure.';
const NO_STANDARD = 'This is common practice and no standard.';

function gaugeSpringPart({ room, boost }: { room: HumidRoom; boost: Quantity<'gauge pressure'> }): Quantity<'ratio'> {
  const { pressure, temperature, relativeHumidity } = room;
  const vapourPressure = vapourPressureFromRelativeHumidityOverWater({ temperature, relativeHumidity });
  return pressureFactorGaugeSpringMoist({
    barometer: pressure,
    dryPressure: dryPressure({ pressure, vapourPressure }),
    boost,
  });
}

function check(request: unknown): void {
  const given = (request ?? {}) as Record<string, unknown>;
  const { boostControl, room, boost, chargeTemperature } = given;
  const problems: Problem[] = [];
  const say = (input: string, value: unknown, need: string, mend = ''): void => {
    problems.push({ code: value === undefined ? 'missing' : 'kind', input, need, got: describe(value), mend });
  };
  const isSpring = boostControl === 'gauge spring';
  if (!isSpring && boostControl !== 'absolute closed loop') {
    const mend = 'For anything else compare power as observed.';
    say('boostControl', boostControl, "one of 'absolute closed loop', 'gauge spring'", mend);
  }
  if (isSpring && (typeof room !== 'object' || room === null))
    say('room', room, 'the air of the room, { pressure, temperature, relativeHumidity }');
  if (isSpring && boost === undefined) say('boost', boost, 'a gauge pressure');
  if (chargeTemperature !== undefined && (typeof chargeTemperature !== 'object' || chargeTemperature === null))
    say('chargeTemperature', chargeTemperature, 'the charge temperatures, { measured, reference }');
  const known = ['boostControl', 'chargeTemperature', ...(isSpring ? ['room', 'boost'] : [])];
  problems.push(
    ...unknownNames(given, known),
    ...unknownNames(chargeTemperature, ['measured', 'reference', 'exponent'], 'chargeTemperature.'),
    ...(isSpring && isPlain(room) ? unknownNames(room, ['pressure', 'temperature', 'relativeHumidity'], 'room.') : []),
  );
  if (problems.length > 0) throw new CalculationError(NAME, problems);
}
