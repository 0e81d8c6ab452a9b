import type { SetUp } from '../sweep/index.js';
import type { Answer } from './answer.js';
import { reservationLines } from './between-set-ups.js';
import { correctionRangeLines } from './correction-range.js';
import { meanPressureLines } from './mean-pressure.js';
import type { ComparedQuantity, ResolvedOptions } from './options.js';
import type { FairnessCheck } from './result.js';
import { lagLines } from './sensor-lags.js';
import type { TakenPull } from './taken-pull.js';

/** What is said of the conditions under which the pulls were made and measured. */
export interface Conditions {
  readonly rests: readonly string[];
  readonly findings: readonly string[];
}

/** What a comparison knows of them. */
export interface ConditionInputs {
  readonly names: readonly [string, string];
  readonly accepted: readonly [readonly TakenPull[], readonly TakenPull[]];
  readonly setUps: readonly [SetUp, SetUp];
  readonly compared: ComparedQuantity;
  readonly answer: Answer | undefined;
  readonly fairness: readonly FairnessCheck[];
}

/** Lag of the sensors, unlike starts, rooms outside a correction standard, and what could not be judged. */
export function conditionsOf(inputs: ConditionInputs, options: ResolvedOptions): Conditions {
  const { names, accepted, setUps, compared, answer, fairness } = inputs;
  const lags = lagLines(
    { names, accepted, pulls: [setUps[0].pulls, setUps[1].pulls], overall: answer?.overall },
    options,
  );
  const isAir = compared === 'air flow' || compared === 'air per cycle';
  const rooms = isAir ? [] : correctionRangeLines(accepted, options);
  // Observed power is not corrected, so what a standard allows is only worth knowing.
  const isObserved = options.loggedPower === 'observed';
  return {
    rests: [...lags.rests, ...meanPressureLines(accepted, options), ...(isObserved ? [] : rooms)],
    findings: [...reservationLines(fairness), ...lags.findings, ...(isObserved ? rooms : [])],
  };
}
