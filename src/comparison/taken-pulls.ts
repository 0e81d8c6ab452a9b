import { mean, type Sensor } from '../calculation/index.js';
import type { Column } from '../units/index.js';
import { onGrid, type ChannelRole, type Channels, type Pull, type SetUp } from '../sweep/index.js';
import { offLoadIn } from '../sweep/off-load.js';
import { describeOutlier } from '../sweep/pull-quality-text.js';
import type { SharedGrid } from './shared-grid.js';
import type { TakenPull } from './taken-pull.js';
import { refusalsOf } from './acceptance.js';
import { comparedCurve, type GriddedPull } from './curves.js';
import { highestMeanPressure } from './mean-pressure.js';
import { KIND_OF_COMPARED, sensorsOf, type ResolvedOptions, type SensorSet } from './options.js';
import { pullOutliers } from './outliers.js';
import type { ComparedQuantity, PullResult, SettledStart } from './result.js';

/** What is known of the pulls before they are on the grid. */
export interface Beforehand {
  /** Place of each pull in the day. */
  readonly places: ReadonlyMap<Pull, number>;
  readonly start: SettledStart;
  /** Each pull as it was read, before it was prepared. */
  readonly asRead: ReadonlyMap<Pull, Pull>;
}

/** Jumps of single readings that are told one by one. */
const MOST_TOLD = 5;

/** Puts every pull of a set-up on the grid and checks each against the others. */
export function takePulls(
  setUp: SetUp,
  compared: ComparedQuantity,
  grid: SharedGrid,
  { places, start, asRead }: Beforehand,
  options: ResolvedOptions,
): TakenPull[] {
  const sensors = sensorsOf(setUp.name, options);
  const gridded = setUp.pulls.map((pull) => {
    const own = onSharedGrid(pull, grid, `${setUp.name}, ${pull.name}`, sensors);
    return {
      pull,
      grid: own,
      curve: comparedCurve(compared, own).to(options.units[KIND_OF_COMPARED[compared]] as never),
    };
  });
  const refusals = refusalsOf(
    gridded.map(({ pull, grid: { engineSpeed, channels }, curve }) => ({
      name: `${setUp.name}/${pull.name}`,
      engineSpeed,
      channels,
      curve,
      startClock: pull.startClock?.si,
      // Taking outliers out would hide a lift.
      offLoad: offLoadIn(asRead.get(pull) ?? pull, grid.from.si, grid.to.si),
    })),
    options,
  );
  return gridded.map(({ pull, grid: own, curve }, i) => {
    const label = `${setUp.name}, ${pull.name}`;
    const outliers = pullOutliers(pull, compared, grid, options);
    const result: PullResult = {
      name: pull.name,
      file: pull.file,
      order: places.get(pull),
      refusals: refusals[i]!,
      accepted: refusals[i]!.every((refusal) => refusal.overruled),
      preparations: pull.preparations,
      highestMeanEffectivePressure: highestMeanPressure(own, options),
      remarks: [
        ...pull.questions.map(({ message, mend }) => `${message} ${mend}`),
        ...own.remarks,
        ...startRemarks(label, start),
        ...outliers.slice(0, MOST_TOLD).map(describeOutlier),
        ...(outliers.length > MOST_TOLD ? [`${outliers.length - MOST_TOLD} more jumps of this kind.`] : []),
      ],
      curve,
      mean: curve.missing === curve.length ? undefined : mean(curve).named(label),
      channels: channelMeans(own.channels),
    };
    return { pull, grid: own, result, outliers };
  });
}

/** What a pull's start makes worth a look; names are as `settledTogether` gives them. */
function startRemarks(label: string, { building, stillBuilding, until }: SettledStart): string[] {
  return [
    ...(building.includes(label) ? ['It still builds up boost at the start of the range.'] : []),
    ...(stillBuilding.includes(label)
      ? [
          `Its pressure is lower than in the other pulls just after ${String(until)}, from where the start counts as over.`,
        ]
      : []),
  ];
}

function onSharedGrid(
  pull: Pull,
  { engineSpeed, ...grid }: SharedGrid,
  label: string,
  sensors: SensorSet,
): GriddedPull {
  const { channels, powerFrom, direction, remarks } = onGrid(pull, grid);
  const named: Record<string, Column> = {};
  for (const [role, channel] of Object.entries(channels)) {
    // What is summed up in the answer has its name in the worked steps.
    const column = role === 'torque' || role === 'power' ? channel.named(`${role}, ${label}`) : channel;
    named[role] = readBy(sensors[role as ChannelRole], column);
  }
  return { engineSpeed, channels: named, powerFrom, direction, remarks };
}

function readBy(sensor: SensorSet[ChannelRole], column: Column): Column {
  return sensor === undefined ? column : (sensor as Sensor).reads(column);
}

const SHOWN_CHANNELS: readonly (readonly [role: Exclude<ChannelRole, 'engineSpeed'>, name: string])[] = [
  ['boost', 'boost'],
  ['manifoldPressure', 'manifold pressure'],
  ['chargeTemperature', 'charge temperature'],
  ['compressorOutletTemperature', 'compressor outlet temperature'],
  ['compressorOutletPressure', 'compressor outlet pressure'],
  ['faceTemperature', 'air at the core face'],
  ['airFlow', 'air flow'],
  ['lambda', 'lambda'],
  ['roomTemperature', 'room temperature'],
  ['barometer', 'barometer'],
];

function channelMeans(channels: Omit<Channels, 'engineSpeed'>): PullResult['channels'] {
  return SHOWN_CHANNELS.flatMap(([role, name]) => {
    const channel = channels[role];
    return channel && channel.missing < channel.length ? [{ name, mean: mean(channel) }] : [];
  });
}
