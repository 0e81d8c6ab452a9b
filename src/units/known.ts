import type { Kind } from './kinds.js';
import type { Quantity } from './origin.js';
import { quantityOf } from './quantity.js';

/** A given value with the name it has in explanations and exercises. It is a value of its own: two of one number do not cancel. */
export function known<K extends Kind>(label: string, value: Quantity<K>): Quantity<K> {
  return quantityOf(value.kind, value.si, value.unit, { type: 'leaf', role: 'given', label }, value.notes ?? [], label);
}

/** The same value without its history: for long loops, where every step would be kept alive. Its uncertainty goes too. */
export function forget<K extends Kind>(value: Quantity<K>): Quantity<K> {
  return quantityOf(value.kind, value.si, value.unit, undefined, value.notes ?? [], value.label);
}
