import { isQuantity, rotationalSpeed, type Quantity } from '../units/index.js';

/** Whether a value from outside is an engine speed; plain numbers are rpm. */
export function isSpeed(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value) && value >= 0;
  return isQuantity(value) && value.kind === 'rotational speed' && value.si >= 0;
}

/** An engine speed, rpm where it is a plain number. */
export function asSpeed(speed: number | Quantity<'rotational speed'>): Quantity<'rotational speed'> {
  return typeof speed === 'number' ? rotationalSpeed(speed, 'rpm') : speed;
}
