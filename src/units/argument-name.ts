import type { Operation, OperationInput } from './origin.js';

/** The input that a value at a position belongs to: lists come last, one after another, and share one length. */
export function inputAt(operation: Operation, position: number, count: number): OperationInput {
  const { inputs } = operation;
  if (position < inputs.length && inputs[position]!.list !== true) return inputs[position]!;
  const firstList = inputs.findIndex((input) => input.list === true);
  const perList = (count - firstList) / (inputs.length - firstList);
  return inputs[firstList + Math.floor((position - firstList) / perList)]!;
}

/** The name of the argument at a position, with its index in a list. */
export function argumentName(operation: Operation, position: number, count: number): string {
  const input = inputAt(operation, position, count);
  if (input.list !== true) return input.name;
  const firstList = operation.inputs.findIndex((other) => other.list === true);
  const perList = (count - firstList) / (operation.inputs.length - firstList);
  return `${input.name}[${(position - firstList) % perList}]`;
}

/** `inletTemperature` as `inlet temperature`. */
export function inWords(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}
