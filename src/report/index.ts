/**
 * The report of a comparison: one page that reads on a phone and on paper, and the same as Markdown.
 *
 * @module report
 */
export { report, type Report, type ReportOptions } from './report.js';
export type { ReportFile } from './evidence.js';
