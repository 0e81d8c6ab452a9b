/**
 * Exact conversion between units, in decimals of any length: for checking, for teaching, and for records that must not round.
 * It loads decimal.js; nothing else in the library does.
 *
 * @module units/exact
 */
import { Decimal as DecimalClass } from 'decimal.js';
import { UnitError } from '../errors.js';
import { kindOf, type Kind, type UnitOf } from '../kinds.js';
import { unitOf } from '../unit.js';

const Decimal = DecimalClass.clone({ precision: 60 });

/** A decimal number of decimal.js, 60 digits. */
export type ExactNumber = DecimalClass;

/**
 * Each unit in SI by its definition, as products and quotients of exact numbers. Sources: SI Brochure; NIST SP 811 appendix B;
 * NIST Handbook 44. `inHg(60F)`, `inH2O(4C)`, `inH2O(60F)` are NIST SP 811's printed values (from memory), not definitions.
 */
const DEFINITIONS: Readonly<Record<string, string>> = {
  psi: '4.4482216152605 / 0.0254 / 0.0254',
  torr: '101325 / 760',
  inHg: '25.4 * 133.322387415',
  inH2O: '0.0254 * 1000 * 9.80665',
  'kgf/cm²': '9.80665 * 10000',
  'gr/lb': '1 / 7000',
  '1/lb': '1 / 0.45359237',
  'lb/ft³': '0.45359237 / 0.3048 / 0.3048 / 0.3048',
  'lb/gal(US)': '0.45359237 / 231 / 0.0254 / 0.0254 / 0.0254',
  oz: '0.45359237 / 16',
  'kg/min': '1 / 60',
  'kg/h': '1 / 3600',
  'g/min': '0.001 / 60',
  'lb/min': '0.45359237 / 60',
  'lb/h': '0.45359237 / 3600',
  'in³': '0.0254 * 0.0254 * 0.0254',
  'ft³': '0.3048 * 0.3048 * 0.3048',
  'gal(US)': '231 * 0.0254 * 0.0254 * 0.0254',
  'm³/h': '1 / 3600',
  'L/min': '0.001 / 60',
  'L/h': '0.001 / 3600',
  'cm³/min': '0.000001 / 60',
  cfm: '0.3048 * 0.3048 * 0.3048 / 60',
  'gal(US)/min': '231 * 0.0254 * 0.0254 * 0.0254 / 60',
  'gal(US)/h': '231 * 0.0254 * 0.0254 * 0.0254 / 3600',
  'gal(imp)/h': '0.00454609 / 3600',
  'in²': '0.0254 * 0.0254',
  'ft²': '0.3048 * 0.3048',
  rpm: '1 / 60',
  'rpm/s': '1 / 60',
  'km/h': '1 / 3.6',
  mph: '1609.344 / 3600',
  'ft/min': '0.3048 / 60',
  'lb·ft': '4.4482216152605 * 0.3048',
  'lb·in': '4.4482216152605 * 0.0254',
  'ft·lbf': '4.4482216152605 * 0.3048',
  'lb·ft²': '0.45359237 * 0.3048 * 0.3048',
  lbf: '0.45359237 * 9.80665',
  hp: '550 * 4.4482216152605 * 0.3048',
  PS: '75 * 9.80665',
  'Btu/h': '1055.05585262 / 3600',
  'Btu/min': '1055.05585262 / 60',
  'Btu(th)': '4.184 * 453.59237 / 1.8',
  'Btu/lb': '1055.05585262 / 0.45359237',
  'Btu/(lb·°F)': '1055.05585262 / 0.45359237 * 1.8',
  'Btu/(h·ft·°F)': '1055.05585262 / 3600 / 0.3048 * 1.8',
  'Btu/(h·ft²·°F)': '1055.05585262 / 3600 / 0.3048 / 0.3048 * 1.8',
  'h·ft²·°F/Btu': '3600 * 0.3048 * 0.3048 / 1.8 / 1055.05585262',
  'g/kWh': '0.001 / 3600000',
  'lb/(hp·h)': '0.45359237 / 550 / 4.4482216152605 / 0.3048 / 3600',
  '°': 'pi / 180',
  'rad/s': '1 / 2 / pi',
  'rad/s²': '1 / 2 / pi',
  // Dry air as an ideal gas with R = 287.042 J/(kg·K) at the reference state the unit names; at 68F moist air, of which see there.
  'Nm³/h(0C)': '101325 / 287.042 / 273.15 / 3600',
  'L/min(0C)': '101325 / 287.042 / 273.15 / 60000',
  'L/min(15C)': '101325 / 287.042 / 288.15 / 60000',
  'L/min(20C)': '101325 / 287.042 / 293.15 / 60000',
  'scfm(60F)': '14.696 * 4.4482216152605 / 0.0254 / 0.0254 / 287.042 / 519.67 * 1.8 * 0.3048 * 0.3048 * 0.3048 / 60',
  // 14.7 psi, of which 36 % of 2338.8 Pa is vapour (R = 461.5 J/(kg·K)): 1.200701 kg/m³, where dry air would have 1.2045.
  'scfm(68F)': '1.200701 * 0.3048 * 0.3048 * 0.3048 / 60',
  'scfm(70F)': '29.92 * 25.4 * 133.322387415 / 287.042 / 529.67 * 1.8 * 0.3048 * 0.3048 * 0.3048 / 60',
  'scfm(20C,1bar)': '100000 / 287.042 / 293.15 * 0.3048 * 0.3048 * 0.3048 / 60',
};

const PI = '3.14159265358979323846264338327950288419716939937510582097494459';

/** The exact size of a unit in the SI unit of its kind, by its definition. */
export function exactSize<K extends Kind>(kind: K, unit: UnitOf<K>): ExactNumber {
  const name = unitOf(kind, unit);
  const size = kindOf(kind).units[name]!;
  if (kind === 'temperature' || kind === 'temperature difference') {
    return name === 'K' || name === '°C' ? new Decimal(1) : new Decimal(1).div('1.8');
  }
  const definition = Object.hasOwn(DEFINITIONS, name) ? DEFINITIONS[name]! : String(size);
  return evaluate(definition);
}

/**
 * Converts between two units of a kind exactly, by their definitions.
 *
 * @param value - The number as text or as a decimal; a double would already have been rounded.
 * @returns A decimal of 60 digits; round it with its own `toFixed` or `toSignificantDigits`.
 * @throws UnitError if a unit is not of the kind, or the text is no number.
 * @example
 * convertExactly('torque', '300', 'lb·ft', 'N·m').toString() //=> '406.74538449942012'
 */
export function convertExactly<K extends Kind>(
  kind: K,
  value: string | ExactNumber,
  from: UnitOf<K>,
  to: UnitOf<K>,
): ExactNumber {
  const si = number(value).plus(offset(kind, from)).times(exactSize(kind, from));
  return si.div(exactSize(kind, to)).minus(offset(kind, to));
}

function number(value: string | ExactNumber): ExactNumber {
  if (typeof value !== 'string') return new Decimal(value);
  if (!/^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d{1,4})?$/.test(value.trim())) {
    throw new UnitError('not a number', `"${value.slice(0, 60)}" is not a decimal number.`);
  }
  return new Decimal(value.trim());
}

function offset<K extends Kind>(kind: K, unit: UnitOf<K>): string {
  const size = kindOf(kind).units[unitOf(kind, unit)]!;
  return typeof size === 'number' ? '0' : String(size[1]);
}

/** Products and quotients, from left to right. */
function evaluate(definition: string): ExactNumber {
  const [first, ...rest] = definition.split(' ') as [string, ...string[]];
  const factor = (text: string): ExactNumber => new Decimal(text === 'pi' ? PI : text);
  let result = factor(first);
  for (let i = 0; i < rest.length; i += 2) {
    const next = factor(rest[i + 1]!);
    result = rest[i] === '*' ? result.times(next) : result.div(next);
  }
  return result;
}
