import { CalculationError } from '../units/index.js';
import { lagOfRamps, splitRamps, type ChannelRole, type Pull, type SensorLag } from '../sweep/index.js';
import { StatisticsError } from '../statistics/index.js';
import { median } from './acceptance.js';
import { meanSi } from './pull-means.js';
import { counted, decimals, named } from './words.js';

const TEMPERATURES = ['chargeTemperature', 'compressorOutletTemperature', 'faceTemperature'] as const;
const WORDS = {
  chargeTemperature: 'charge temperature',
  compressorOutletTemperature: 'compressor outlet temperature',
  faceTemperature: 'temperature at the core face',
} as const;
/** Ramps under another load have other temperatures: coasting down tells no lag. */
const LOAD_ALIKE = 0.1;

/** A lag that was found. */
export interface FoundLag {
  readonly role: ChannelRole;
  readonly lag: number;
  readonly sentence: string;
}

/** The lag of the temperature sensors by the up and down ramps of one set-up, where it has both under the same load. */
export function lagsByRamps(name: string, pulls: readonly Pull[]): FoundLag[] {
  const ramps = pulls
    .flatMap((pull) => splitRamps(pull))
    .map((pull) => ({ pull, way: wayOf(pull), load: loadOf(pull) }));
  const ups = ramps.filter(({ way }) => way > 0);
  const downs = ramps.filter(({ way }) => way < 0);
  if (ups.length === 0 || downs.length === 0) return [];
  const pairs = ups.flatMap((up) => {
    const down = downs.find(
      ({ load }) => load !== undefined && up.load !== undefined && Math.abs(load / up.load - 1) < LOAD_ALIKE,
    );
    return down ? [{ up: up.pull, down: down.pull }] : [];
  });
  return TEMPERATURES.flatMap((role): FoundLag[] => {
    const lags = pairs.flatMap(({ up, down }) => rampLag(up, down, role) ?? []);
    if (lags.length === 0) return [];
    const lag = median(lags.map(({ timeConstant }) => timeConstant.si));
    const uncertainty = Math.max(...lags.map(({ standardUncertainty }) => standardUncertainty.si));
    const sentence = `By ${counted(lags.length, 'pair')} of up and down ramps of ${named(name)} the sensor of the ${WORDS[role]} lags by ${decimals(lag, 2)} s (standard uncertainty ${decimals(uncertainty, 2)} s); whatever else differs between the ramps, such as heat soaked in, counts as lag.`;
    return [{ role, lag, sentence }];
  });
}

function rampLag(up: Pull, down: Pull, role: ChannelRole): SensorLag | undefined {
  if (up.channels[role] === undefined || down.channels[role] === undefined) return undefined;
  try {
    return lagOfRamps(up, down, role);
  } catch (error) {
    // Ramps without times, or that hardly overlap, tell nothing.
    if (error instanceof StatisticsError || error instanceof CalculationError) return undefined;
    throw error;
  }
}

/** Change of engine speed from the first row to the last. */
function wayOf({ channels }: Pull): number {
  const si = channels.engineSpeed?.si ?? new Float64Array();
  const first = si.find((speed) => !Number.isNaN(speed)) ?? NaN;
  return (si.findLast((speed) => !Number.isNaN(speed)) ?? NaN) - first;
}

const loadOf = ({ channels }: Pull): number | undefined =>
  meanSi(channels.manifoldPressure) ?? meanSi(channels.boost) ?? meanSi(channels.torque);
