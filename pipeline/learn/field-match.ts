import type { Confidence } from './guess.ts';
import type { ColumnProfile } from './profile-column.ts';

/** A field and the column (or date column with time column) that is proposed for it. */
export interface FieldMatch {
  field: string;
  columns: readonly ColumnProfile[];
  confidence: Confidence;
  why: string;
  score: number;
}

/** From this nearness on a name means a field beyond doubt, where what the column holds fits. */
export const CERTAIN_FROM = 0.88;
