import { escapeLatex } from './escape.js';
import { raiseUnitPowers, readSuperscript } from './numerals.js';

const unitSigns: Readonly<Record<string, string>> = {
  '°': '{}^{\\circ}',
  '·': '{\\cdot}',
  '⋅': '{\\cdot}',
  µ: '\\mu ',
  μ: '\\mu ',
  Ω: '\\Omega ',
  '%': '\\%',
  ' ': '\\,',
};

/** Writes a unit as people type it, `kg/m3`, `kJ/(kg·K)`, `°C` or `%`, for upright math mode. */
export function writeUnit(unit: string): string {
  return raiseUnitPowers(unit).replace(/⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹]+|[^A-Za-z0-9/().]/gu, (part) => {
    if (/[⁰¹²³⁴⁵⁶⁷⁸⁹]/.test(part)) return `^{${readSuperscript(part)}}`;
    return Object.hasOwn(unitSigns, part) ? (unitSigns[part] ?? '') : `\\text{${escapeLatex(part)}}`;
  });
}
