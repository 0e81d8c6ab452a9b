/**
 * One recorded pull: read a log or a folder of logs, settle what each column is, and put it on a grid of engine speeds.
 *
 * @module sweep
 */
export { readPulls, type PullSource } from './files.js';
export {
  readPullsFrom,
  type Day,
  type DayOrder,
  type LogFile,
  type NotRead,
  type ReadPullsOptions,
  type SetUp,
  type SetUpOptions,
} from './day.js';
export { readLog, type ReadLogOptions } from './read-log.js';
export { channel, type ChannelChoice, type ChannelMap } from './channel.js';
export type { ColumnOrigin, Pull, Question, QuestionCode, Unused } from './pull.js';
export {
  CHANNEL_KINDS,
  CHANNEL_ROLES,
  roleWords,
  type ChannelKind,
  type ChannelRole,
  type Channels,
  type Role,
} from './roles.js';
export { commonRange, onGrid, type EngineSpeed, type GridOptions, type SpeedGrid } from './grid.js';
export type { RampDirection } from './ramp.js';
export type { DecimalSign, DialectOptions, Separator } from './dialect.js';
export type { Dialect } from './table.js';
export type { Encoding } from './decode.js';
export { LogError, type LogErrorCode, type LogProblem } from './errors.js';
