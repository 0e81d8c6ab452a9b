import { correctionFactorIso1585, correctionFactorSaeJ1349 } from '../correction/index.js';
import { absolutePressure, temperature, type Quantity } from '../units/index.js';
import { vapourPressureOf } from './acceptance.js';
import type { ResolvedOptions } from './options.js';
import { meanSi } from './pull-means.js';
import type { TakenPull } from './taken-pull.js';
import { counted, listed, shown } from './words.js';

/** The standards that spark-ignition power is corrected by, and the room in which each may be. */
const STANDARDS = [
  { name: 'SAE J1349', spec: correctionFactorSaeJ1349.spec },
  { name: 'ISO 1585', spec: correctionFactorIso1585.spec },
] as const;

/**
 * Where the room's air lies outside the range of a correction standard: power that a logger corrected there is not by the standard, and
 * power as observed cannot be. Nothing where the barometer and the temperature were not logged.
 */
export function correctionRangeLines(
  sides: readonly (readonly TakenPull[])[],
  { loggedPower, units }: ResolvedOptions,
): string[] {
  const rooms = sides.flat().flatMap((pull) => {
    const barometer = meanSi(pull.grid.channels.barometer);
    const inlet = meanSi(pull.grid.channels.intakeTemperature) ?? meanSi(pull.grid.channels.roomTemperature);
    if (barometer === undefined || inlet === undefined) return [];
    return [{ dry: barometer - (vapourPressureOf(pull.grid.channels) ?? 0), inlet }];
  });
  if (rooms.length === 0) return [];
  const outside = STANDARDS.flatMap(({ name, spec }) => {
    const [dry, inlet] = ['dryPressure', 'inletTemperature'].map(
      (input) => spec.inputs.find((one) => one.name === input)!.trusted!,
    ) as [Range, Range];
    const count = rooms.filter((room) => isOutside(room.dry, dry) || isOutside(room.inlet, inlet)).length;
    if (count === 0) return [];
    const range = `${pressures(dry, units)} of dry air, ${temperatures(inlet, units)}`;
    return [{ count, words: `${name} (${range})` }];
  });
  if (outside.length === 0) return [];
  const dries = rooms.map(({ dry }) => dry);
  const inlets = rooms.map(({ inlet }) => inlet);
  const span = (values: readonly number[]): Range => [Math.min(...values), Math.max(...values)];
  const what =
    loggedPower === 'observed'
      ? 'observed power cannot be corrected by it'
      : loggedPower === 'corrected'
        ? 'a correction by it was not allowed there'
        : 'a correction by it, if the logger made one, was not allowed there';
  const count = Math.max(...outside.map((one) => one.count));
  return [
    `In ${counted(count, 'pull')} the room's air (${pressures(span(dries), units)} dry, ${temperatures(span(inlets), units)}) lay outside the range of ${listed(outside.map(({ words }) => words))}: ${what}.`,
  ];
}

type Range = readonly [number, number];

const isOutside = (value: number, [low, high]: Range): boolean => value < low || value > high;

function pressures(range: Range, units: ResolvedOptions['units']): string {
  return spanned(
    range.map((si) => absolutePressure(si, 'Pa').to('kPa')),
    units,
  );
}

function temperatures(range: Range, units: ResolvedOptions['units']): string {
  return spanned(
    range.map((si) => temperature(si, 'K').to('°C')),
    units,
  );
}

/** `95.0 to 101.0 kPa`: the unit once. */
function spanned([low, high]: readonly Quantity[], units: ResolvedOptions['units']): string {
  const [first, last] = [shown(low!, units), shown(high!, units)];
  return first === last ? first : `${first.replace(/ \S+$/, '')} to ${last}`;
}
