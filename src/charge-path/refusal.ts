import { CalculationError } from '../calculation/index.js';
import type { Quantity } from '../units/index.js';
import type { Installation } from './installation.js';
import type { Reason } from './solve-path.js';

/** Why an installation has no steady point at an engine speed. Its code is `no answer`; test `reason`, never the words. */
export class NoSteadyPoint extends CalculationError {
  readonly reason: Reason;
  readonly engineSpeed: Quantity<'rotational speed'>;

  /** True for an error of another copy of the library too. */
  static override [Symbol.hasInstance](value: unknown): value is NoSteadyPoint {
    return value instanceof CalculationError && Object.hasOwn(NEEDS, String((value as Partial<NoSteadyPoint>).reason));
  }

  /** @param cause - what a formula on the way refused, where one did. */
  constructor(
    reason: Reason,
    installation: Installation,
    engineSpeed: Quantity<'rotational speed'>,
    cause?: CalculationError,
  ) {
    const mend = cause?.message ?? mendOf(reason, installation);
    super('operating point', [{ code: 'no answer', input: '', need: NEEDS[reason], got: 'none', mend }]);
    this.reason = reason;
    this.engineSpeed = engineSpeed;
  }
}

const NEEDS: Readonly<Record<Reason, string>> = {
  'flow cannot pass': 'there must be a flow that the core can pass and the engine takes',
  'recirculation without end': 'the air that comes back from behind the core must settle at a temperature',
  'beyond the formulas': 'the steady point must lie where every formula on the way has an answer',
  'boost out of reach': 'there must be a boost, between none and a pressure ratio of 8, that the control lets stand',
};

function mendOf(reason: Reason, { boost }: Installation): string {
  if (reason === 'flow cannot pass')
    return 'The loss of the core takes all the pressure: look at core.loss and its flow.';
  if (reason === 'recirculation without end')
    return 'It is heated more than it gives off each time it comes round: look at both recirculatedShare, and at the cooling air.';
  switch (boost.by) {
    case 'displacement blower':
      return 'The blower passes less than the engine takes without boost, or far more: look at its volume and drive ratio.';
    case 'fixed wastegate':
      return 'More air makes more boost without end, or too little to begin with: look at the two areas.';
    case 'fixed compressor speed':
    case 'fixed compressor speed on its map':
      return 'The speed line does not meet what the engine takes: look at its point and its slope.';
    case 'held torque':
      return 'The engine makes more than that without boost, or less at any.';
    case 'spring':
    case 'closed loop, absolute':
    case 'closed loop, gauge':
      return 'The losses between compressor and manifold ask for a pressure ratio above 8, or the pressure is below what stands without boost.';
  }
}
