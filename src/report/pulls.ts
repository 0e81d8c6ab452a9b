import { counted, listed, shown } from '../comparison/words.js';
import type { Comparison, PullResult, SideResult } from '../comparison/index.js';
import { pullQuality, roleWords, type Pull, type PullQuality } from '../sweep/index.js';
import type { UnitPreferences } from '../units/index.js';
import { labelText } from '../plot/words.js';
import { list, paragraph, type Block, type DataTable } from './document.js';
import { preferred } from './numbers.js';

/** A log that could not be read, in words. */
export interface Unread {
  readonly setup: string;
  readonly file: string;
  readonly why: string;
}

/** Which pulls were refused and why, what could not be read, and every pull with its readings. */
export function pullBlocks(
  comparison: Comparison,
  unread: readonly Unread[],
  logs: readonly Pull[],
  units: UnitPreferences,
): Block[] {
  const sides = [comparison.baseline, comparison.candidate];
  const refusals = sides.flatMap((side) =>
    side.pulls.flatMap((pull) =>
      pull.refusals.map(({ reason, overruled, because }) => {
        const name = `${labelText(side.name)}, ${labelText(pull.name)}`;
        if (!overruled) return `${name}: refused. ${reason}`;
        const why = because === undefined ? '' : ` (“${because}”)`;
        return `${name}: would have been refused, but was overruled${why} and counts. ${reason}`;
      }),
    ),
  );
  const remarks = sides.flatMap((side) =>
    side.pulls.flatMap((pull) =>
      pull.remarks.map((remark) => `${labelText(side.name)}, ${labelText(pull.name)}: ${remark}`),
    ),
  );
  return [
    ...(refusals.length === 0
      ? [paragraph(`None refused: all ${counted(sides.flatMap(({ pulls }) => pulls).length, 'pull')} count.`)]
      : list(refusals)),
    ...list(unread.map(({ setup, file, why }) => `${labelText(setup)}, ${labelText(file, 80)}: not read. ${why}`)),
    ...(remarks.length === 0 ? [] : [paragraph('Worth a look, no reason to refuse:'), ...list(remarks, 'small')]),
    { type: 'table', table: pullsTable(sides, units) },
    ...qualityBlocks(sides, logs, units),
  ];
}

/** What each log is worth as it was recorded: ramp, settled part, boost oscillation, readings that jump. */
function qualityBlocks(sides: readonly SideResult[], logs: readonly Pull[], units: UnitPreferences): Block[] {
  const lines = sides.flatMap((side) =>
    side.pulls.flatMap(({ name }) => {
      const log = logs.find((pull) => pull.setup === side.name && pull.name === name);
      return log ? [`${labelText(side.name)}, ${labelText(name)}: ${qualityText(pullQuality(log), units)}`] : [];
    }),
  );
  return lines.length === 0 ? [] : [paragraph('Each pull as it was recorded:'), ...list(lines, 'small')];
}

function qualityText({ ramp, settled, oscillation, remarks }: PullQuality, units: UnitPreferences): string {
  const parts: string[] = [];
  if (ramp?.rate) parts.push(`ramp ${ramp.direction} at ${Math.round(Math.abs(ramp.rate.in('rpm/s')))} rpm/s`);
  if (settled.engineSpeed) parts.push(`settled from ${shown(settled.engineSpeed)}`);
  if (oscillation) {
    const { role, amplitude, frequency } = oscillation;
    const size = shown(preferred(amplitude, units));
    parts.push(`${roleWords(role)} oscillates by ${size} either way, ${frequency.toFixed(1)} times a second`);
  }
  return `${[...parts, ...remarks].map((part) => part.replace(/\.$/, '')).join('; ')}.`;
}

function pullsTable(sides: readonly SideResult[], units: UnitPreferences): DataTable {
  const pulls = sides.flatMap((side) => side.pulls.map((pull) => ({ side, pull })));
  pulls.sort((a, b) => (a.pull.order ?? Infinity) - (b.pull.order ?? Infinity) || 0);
  const names = [...new Set(pulls.flatMap(({ pull }) => pull.channels.map(({ name }) => name)))];
  const all = names.map((name) => ({ name, values: pulls.map(({ pull }) => channelMean(pull, name, units)) }));
  // What is the same in every pull needs no column of its own.
  const isAlike = ({ values }: (typeof all)[number]): boolean =>
    values.length > 1 && values[0] !== undefined && new Set(values.map((value) => value && shown(value))).size === 1;
  const channels = all.filter((channel) => !isAlike(channel));
  const alike = all.filter(isAlike).map(({ name, values }) => `${name} ${shown(values[0]!)}`);
  const heads = channels.map(({ name, values }) => {
    const shape = values.find((value) => value !== undefined);
    const unit = shape?.unit;
    // The unit says that it is a temperature.
    const short = shape?.kind === 'temperature' ? name.replace(/ temperature$/, '') : name;
    return { head: unit === undefined || unit === '1' ? short : `${short}, ${unit}`, align: 'right' } as const;
  });
  return {
    caption: `Every pull: means over the range of engine speed${alike.length === 0 ? '' : `; alike in all: ${listed(alike)}`}`,
    look: 'wide',
    columns: [
      { head: 'pull', align: 'left' },
      { head: 'order', align: 'right' },
      { head: 'used', align: 'left' },
      { head: 'mean', align: 'right' },
      ...heads,
    ],
    rows: pulls.map(({ side, pull }, i) => [
      `${labelText(side.name)}, ${labelText(pull.name)}`,
      pull.order === undefined ? 'not known' : String(pull.order),
      pull.accepted ? (pull.refusals.length > 0 ? 'overruled' : 'yes') : 'refused',
      pull.mean ? shown(pull.mean) : 'none',
      ...channels.map(({ values }) => bare(values[i])),
    ]),
  };
}

function channelMean(pull: PullResult, name: string, units: UnitPreferences): PullResult['mean'] {
  const found = pull.channels.find((channel) => channel.name === name);
  return found && preferred(found.mean, units);
}

/** The number alone: its unit stands in the head of the column. */
function bare(value: PullResult['mean']): string {
  if (value === undefined) return '';
  const text = shown(value);
  return value.unit !== '1' && text.endsWith(` ${value.unit}`) ? text.slice(0, -value.unit.length - 1) : text;
}
