import { cadenceOf } from '../statistics/signal/index.js';
import { outlierRows, outlierRule, type OutlierOptions } from './channel-quality.js';
import { mapChannels, record, type Prepared } from './preparation.js';
import type { Preparation, Pull } from './pull.js';
import { roleWords } from './roles.js';
import { timeBaseOf } from './time-base.js';
import { counted } from './words-for-people.js';

/** Outliers blank, in every channel that has any. */
export function withoutOutliers(pull: Pull, options: OutlierOptions): Prepared {
  const base = timeBaseOf(pull.channels);
  const done: Preparation[] = [];
  const channels = mapChannels(pull.channels, (role, si) => {
    const found = outlierRows(si, base, options);
    if (found.length === 0) return si;
    const copy = si.slice();
    for (const { from, to } of found) copy.fill(NaN, from, to + 1);
    const readings = found.reduce((sum, { from, to }) => sum + to - from + 1, 0);
    const message = `${counted(readings, 'outlying reading')} of the ${roleWords(role)} taken out.`;
    done.push(record('outliers', role, readings, message));
    return copy;
  });
  if (done.length > 0) return { channels, done };
  return { channels, done: [record('outliers', undefined, 0, `No outliers were found. ${outlierRule(options)}`)] };
}

/** Repeats blank, but for engine speed, which every row needs: that is laid on straight lines between its own readings. */
export function withoutRepeats(pull: Pull): Prepared {
  const { seconds } = timeBaseOf(pull.channels);
  const done: Preparation[] = [];
  const channels = mapChannels(pull.channels, (role, si) => {
    const cadence = cadenceOf(si);
    if (cadence === undefined || (cadence.how === 'blank' && role !== 'engineSpeed')) return si;
    const own = new Float64Array(si.length).fill(NaN);
    for (const row of cadence.fresh) own[row] = si[row]!;
    const readings = si.length - cadence.fresh.length;
    const fate = role === 'engineSpeed' ? 'laid on straight lines between its readings' : 'taken out';
    const what = cadence.how === 'held' ? 'repeat' : 'blank';
    done.push(record('held readings', role, readings, `${counted(readings, what)} of the ${roleWords(role)} ${fate}.`));
    return role === 'engineSpeed' ? bridged(own, seconds) : own;
  });
  if (done.length > 0) return { channels, done };
  return { channels, done: [record('held readings', undefined, 0, 'No channel repeats its readings.')] };
}

/** Straight lines over the blanks between readings; blanks before the first and after the last stay. */
function bridged(si: Float64Array, seconds: Float64Array | undefined): Float64Array {
  const at = (row: number): number => seconds?.[row] ?? row;
  const result = si.slice();
  let before = -1;
  for (let row = 0; row < si.length; row++) {
    if (Number.isNaN(si[row]!)) continue;
    for (let gap = before + 1; before >= 0 && gap < row; gap++) {
      result[gap] = si[before]! + ((si[row]! - si[before]!) * (at(gap) - at(before))) / (at(row) - at(before));
    }
    before = row;
  }
  return result;
}
