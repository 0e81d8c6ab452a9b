/**
 * One recorded pull: read a log or a folder of logs, settle what each column is, and put it on a grid of engine speeds.
 *
 * @module sweep
 */
export { readPulls, type PullSource, type ReadFilesOptions } from './files.js';
export { readPullsFrom, type LogFile, type ReadPullsOptions, type SetUpOptions } from './day.js';
export type { Day, DayOrder, NotRead, SetUp } from './set-up.js';
export { readLog, type ReadLogOptions } from './read-log.js';
export { readLogStream } from './read-log-stream.js';
export type { ReadingProgress, ReadLogStreamOptions } from './stream-options.js';
export type { LogPieces } from './stream-text.js';
export type { FindPullsOptions } from './find-pulls.js';
export { channel, type ChannelChoice, type ChannelMap } from './channel.js';
export type { SaidCorrection } from './trade-words.js';
export type { ColumnOrigin, Preparation, PreparationCode, Pull, Question, QuestionCode, Unused } from './pull.js';
export { pullQuality, type PullQualityOptions } from './pull-quality.js';
export type { Polled, PullQuality } from './quality.js';
export type { ChannelQuality, Outlier, OutlierOptions, ReadingRate } from './channel-quality.js';
export type { Dwell, RampShape } from './ramp-shape.js';
export type { ChannelOscillation } from './pressure-oscillation.js';
export { settledTogether, type Settled, type SettledTogether } from './settled.js';
export { gearedDelay, type GearedDelay } from './gearing.js';
export type { TimeBreak } from './time-base.js';
export { prepare, type PrepareOptions } from './prepare.js';
export type { InertiaOptions } from './inertia.js';
export {
  lagOfRamps,
  lagOfStep,
  lagWindow,
  type LagOptions,
  type LagWindowChoice,
  type SensorLag,
} from './sensor-lag.js';
export { splitRamps } from './split-ramps.js';
export {
  CHANNEL_KINDS,
  CHANNEL_ROLES,
  roleWords,
  type ChannelKind,
  type ChannelRole,
  type Channels,
  type Role,
} from './roles.js';
export { keepRows } from './keep-rows.js';
export { setUpOf } from './set-up-of.js';
export { commonRange, onGrid, type EngineSpeed, type GridOptions, type SpeedGrid } from './grid.js';
export type { RampDirection } from './ramp.js';
export type { DecimalSign, DialectOptions, Separator } from './dialect.js';
export type { Dialect } from './table.js';
export type { Encoding } from './decode.js';
export { LogError, type LogErrorCode, type LogProblem } from './errors.js';
