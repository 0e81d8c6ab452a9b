import type { Quantity } from '../units/index.js';
import type { ChannelOscillation } from './pressure-oscillation.js';
import type { PullQuality } from './quality.js';
import type { RampShape } from './ramp-shape.js';
import type { Outlier } from './channel-quality.js';
import { roleWords } from './roles.js';
import { counted, figure, inOwnUnit } from './words-for-people.js';

type Parts = Omit<PullQuality, 'toString' | 'remarks'>;

/** A spread of the ramp rate beyond this share of it is told. */
const UNEVEN = 0.25;

/** What a reader of a pull's quality should know, worst first. */
export function qualityRemarks(parts: Parts): string[] {
  return [
    ...parts.outliers.map(describeOutlier),
    ...rampRemarks(parts.ramp),
    ...parts.breaks
      .slice(0, 5)
      .map(({ row, seconds }) => `Rows are missing: ${figure(seconds)} s pass after row ${row + 1}.`),
    ...blankRemarks(parts),
    ...polledRemarks(parts),
    ...gearRemarks(parts),
    ...(parts.settled.fromRow === undefined ? [`No settled part: ${parts.settled.reason}`] : []),
  ];
}

/** One outlier in words. */
export function describeOutlier({ role, fromRow, toRow, value, expected, engineSpeed, start }: Outlier): string {
  const rows = toRow - fromRow + 1;
  const when = start === undefined ? `at row ${fromRow + 1}` : `${figure(start.si)} s into the pull`;
  const where = engineSpeed === undefined ? '' : ` (${figure(Math.round(engineSpeed.si * 60))} rpm)`;
  return `The ${roleWords(role)} jumps to ${inOwnUnit(value)} for ${counted(rows, 'row')}, ${when}${where}; its neighbours read ${inOwnUnit(expected)}.`;
}

function rampRemarks(ramp: RampShape | undefined): string[] {
  if (ramp === undefined) return ['It has no engine speed.'];
  const { kind, rate, rateSpread, dwells, backSteps, largestBackStep } = ramp;
  const remarks: string[] = [];
  if (kind === 'steady') remarks.push('Engine speed hardly moves: this is a test at one speed, not a sweep.');
  if (kind === 'ramp') {
    for (const { engineSpeed, duration } of dwells.slice(0, 3)) {
      remarks.push(`Engine speed stands at ${rpm(engineSpeed)} rpm for ${figure(duration.si)} s.`);
    }
    if (rate !== undefined && rateSpread !== undefined && rateSpread.si > UNEVEN * Math.abs(rate.si)) {
      remarks.push(
        `The ramp is uneven: ${figure(Math.round(rate.si * 60))} rpm/s on average, with a standard deviation of ${figure(Math.round(rateSpread.si * 60))} rpm/s along it.`,
      );
    }
  }
  if (backSteps > 0) {
    remarks.push(
      `Engine speed steps back in ${counted(backSteps, 'row')}, by up to ${figure(Math.round(largestBackStep!.si * 60))} rpm; they are left out of a grid.`,
    );
  }
  return remarks;
}

function blankRemarks({ channels }: Parts): string[] {
  const blank = channels.filter(({ blanks, readingRate }) => blanks > 0 && readingRate?.how !== 'blank');
  if (blank.length === 0) return [];
  const each = blank.map(({ role, blanks, longestGap }) => {
    const gap = longestGap > 1 ? `, up to ${longestGap} in a row` : '';
    return `${roleWords(role)} ${blanks}${gap}`;
  });
  return [`Rows without a reading: ${each.join(', ')}.`];
}

function polledRemarks({ polled, channels }: Parts): string[] {
  if (polled === undefined) return [];
  const each = channels.flatMap(({ role, readingRate }) => {
    if (readingRate === undefined) return [];
    const { how, everyRows, interval } = readingRate;
    const often = interval === undefined ? `every ${short(everyRows)} rows` : `every ${short(interval.si)} s`;
    return [`${roleWords(role)} ${often} (${how === 'held' ? 'repeated between' : 'blank between'})`];
  });
  const apart = polled.apart === undefined ? '' : ` Readings of one row lie up to ${short(polled.apart.si)} s apart.`;
  return [`Not every row is a new reading: ${each.join(', ')}.${apart}`];
}

/** Two figures: as many as a rate that was counted in rows has. */
const short = (value: number): string => figure(Number(value.toPrecision(2)));

function gearRemarks({ gearedDelay }: Parts): string[] {
  if (gearedDelay === undefined || !gearedDelay.isApart) return [];
  const { delay, halfWidth } = gearedDelay;
  return [
    `By the ratio of its gear, road speed is ${figure(Math.abs(delay.si))} ± ${figure(halfWidth.si)} s ${delay.si > 0 ? 'older' : 'newer'} than the engine speed in its row: they were not read at one moment.`,
  ];
}

/** The quality of a pull in words: a line for each thing found. */
export function describeQuality(quality: PullQuality): string {
  const { base, step, duration, ramp, settled, oscillation, remarks } = quality;
  const times =
    step === undefined || duration === undefined
      ? 'no times; rows follow engine speed'
      : `${figure(duration.si)} s by ${base}, a row every ${figure(step.si)} s`;
  const lines = [
    `${quality.pull}: ${times}`,
    ...(ramp === undefined ? [] : [describeRamp(ramp)]),
    ...(settled.fromRow === undefined ? [] : [`settled from ${placeOf(quality)}: ${settled.reason}`]),
    ...(oscillation === undefined ? [] : [describeOscillation(oscillation)]),
    ...remarks.map((remark) => `note: ${remark}`),
  ];
  return lines.join('\n  ');
}

function placeOf({ settled: { from, engineSpeed, fromRow } }: PullQuality): string {
  const speed = engineSpeed === undefined ? '' : `${rpm(engineSpeed)} rpm`;
  if (from === undefined) return speed === '' ? `row ${fromRow! + 1}` : speed;
  return speed === '' ? `${figure(from.si)} s` : `${figure(from.si)} s, ${speed}`;
}

function describeRamp({ kind, direction, from, to, rate, rateSpread, dwells }: RampShape): string {
  const range = `${rpm(from)} to ${rpm(to)} rpm`;
  if (kind === 'steady') return `steady, ${range}`;
  if (kind === 'stepped') return `${counted(dwells.length, 'step')} ${direction}, ${range}`;
  const spread = rateSpread === undefined ? '' : ` ± ${figure(Math.round(rateSpread.si * 60))}`;
  const at = rate === undefined ? '' : ` at ${figure(Math.round(Math.abs(rate.si) * 60))}${spread} rpm/s`;
  return `ramp ${direction}, ${range}${at}`;
}

function describeOscillation({ role, frequency, cyclesPer1000Rpm, amplitude }: ChannelOscillation): string {
  const perSpeed =
    cyclesPer1000Rpm === undefined ? '' : `, ${figure(Number(cyclesPer1000Rpm.toPrecision(2)))} in 1000 rpm`;
  const cycles = figure(Number(frequency.toPrecision(3)));
  return `${roleWords(role)} oscillates by ${inOwnUnit(amplitude, 2)} either way, ${cycles} times a second${perSpeed}`;
}

const rpm = ({ si }: Quantity<'rotational speed'>): string => figure(Math.round(si * 60));
