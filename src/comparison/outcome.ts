/** The outcome in a word; where several apply, the first of this list that does. */
export type Outcome =
  | 'cannot be compared'
  | 'unit suspected'
  | 'reading suspected'
  | 'too few pulls'
  | 'better'
  | 'worse'
  | 'better, within the margin'
  | 'worse, within the margin'
  | 'equivalent'
  | 'not resolved';
