/**
 * The report of a comparison or of scenarios: one page that reads on a phone and on paper, and the same as Markdown.
 *
 * @module report
 */
export { recordPath, report, type Report, type ReportOptions } from './report.js';
export type { ReportFile } from './evidence.js';
export { recordOf, recordText, type RecordOptions } from './record.js';
export type {
  AnalysisRecord,
  ComparisonInRecord,
  EstimateInRecord,
  PullInRecord,
  ReadingInRecord,
} from './record-form.js';
export type { InstrumentInRecord, OptionsRecord, Plain, QuantityInRecord } from '../comparison/options-record.js';
export {
  readingOptionsOf,
  readRecord,
  repeatAnalysis,
  type Repetition,
  type RepetitionCode,
  type RepetitionFinding,
} from './repeat.js';
export { scenarioReport, type ReportedScenario, type ScenarioReport, type ScenarioReportContent } from './scenarios.js';
export type { Cell, DataTable } from './document.js';
