import { CalculationError, type Problem } from './errors.js';
import { isKind, KINDS, type Kind } from './kinds.js';
import { meant, requireOptions } from './known-names.js';
import type { Column, Quantity } from './origin.js';
import { describe } from './quantity.js';
import { findUnit, unitChoices } from './unit.js';
import { writtenColumn, writtenValue, type FormatOptions, type UnitPreferences } from './written.js';

export type { FormatOptions, UnitPreferences } from './written.js';

/** Units of an SI shop. */
export const siUnits: UnitPreferences = {
  temperature: '°C',
  'temperature difference': 'K',
  'absolute pressure': 'kPa',
  'gauge pressure': 'kPa',
  'pressure difference': 'kPa',
  'sea-level pressure': 'hPa',
  'mean effective pressure': 'kPa',
  'mass flow': 'g/s',
  power: 'kW',
  torque: 'N·m',
  'rotational speed': 'rpm',
  'specific fuel consumption': 'g/kWh',
  length: 'mm',
  speed: 'km/h',
};

/** Units of a metric workshop: bar and metric horsepower. */
export const metricShop: UnitPreferences = {
  ...siUnits,
  'absolute pressure': 'bar',
  'gauge pressure': 'bar',
  'pressure difference': 'mbar',
  'mean effective pressure': 'bar',
  power: 'PS',
};

/** Units of a US workshop. */
export const usShop: UnitPreferences = {
  temperature: '°F',
  'temperature difference': '°F',
  'absolute pressure': 'psi',
  'gauge pressure': 'psi',
  'pressure difference': 'psi',
  'sea-level pressure': 'inHg',
  'mean effective pressure': 'psi',
  'mass flow': 'lb/min',
  power: 'hp',
  torque: 'lb·ft',
  'rotational speed': 'rpm',
  'specific fuel consumption': 'lb/(hp·h)',
  length: 'in',
  speed: 'mph',
  volume: 'in³',
  density: 'lb/ft³',
};

const OPTIONS = { units: 'any', figures: 'any', decimal: ['.', ','], bare: [true, false] } as const;

function requireFormat(name: string, options: FormatOptions): void {
  requireOptions(name, options, OPTIONS);
  requireUnits(name, options.units);
}

/** Refuses units for what is no kind, and units that its kind has not: the value would show in another, silently. */
export function requireUnits(name: string, units: UnitPreferences | undefined): void {
  if (units === undefined) return;
  const kinds = Object.keys(units).filter((kind) => units[kind as Kind] !== undefined);
  const problems = kinds.flatMap((kind): Problem[] => {
    const unit: unknown = units[kind as Kind];
    const input = `units['${kind}']`;
    if (!isKind(kind)) {
      const mend = meant(kind, Object.keys(KINDS));
      return [{ code: 'unknown', input, need: 'for a kind of quantity', got: describe(unit), mend }];
    }
    if (typeof unit === 'string' && findUnit(kind, unit) !== undefined) return [];
    return [{ code: 'unknown', input, need: `one of ${unitChoices(kind)}`, got: describe(unit), mend: '' }];
  });
  if (problems.length > 0) throw new CalculationError(name, problems);
}

/** A quantity as text: computed values to 4 significant figures, given values as typed. */
export function formatValue(quantity: Quantity, options: FormatOptions = {}): string {
  requireFormat('formatValue', options);
  return writtenValue(quantity, options);
}

/** A column as text: its kind, length and range. */
export function formatColumn(column: Column, options: FormatOptions = {}): string {
  requireFormat('formatColumn', options);
  return writtenColumn(column, options);
}
