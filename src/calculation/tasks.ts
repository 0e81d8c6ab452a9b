/** The jobs that calculations serve, in the order a user meets them; the index of the docs is grouped by them. */
export const TASKS = [
  'describe the air',
  'describe humid air',
  'compress the charge',
  'rate an intercooler',
  'size an intercooler',
  'cool the intercooler',
  'follow an intercooler through a pull',
  'spray coolant on an intercooler',
  'correct power to a standard atmosphere',
  'describe the engine',
  'fuel the charge',
  'follow the charge',
  'compare knock margins',
] as const;

/** A job that calculations serve. */
export type Task = (typeof TASKS)[number];
