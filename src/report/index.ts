/**
 * The report of a comparison: one page that reads on a phone and on paper, and the same as Markdown.
 *
 * @module report
 */
export { report, type Report, type ReportOptions } from './report.js';
export type { ReportFile } from './evidence.js';
export { recordOf, recordText, type AnalysisRecord, type ComparisonInRecord, type RecordOptions } from './record.js';
export {
  readingOptionsOf,
  readRecord,
  repeatAnalysis,
  type Repetition,
  type RepetitionCode,
  type RepetitionFinding,
} from './repeat.js';
