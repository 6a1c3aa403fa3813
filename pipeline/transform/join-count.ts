export type Relationship = 'one-to-one' | 'many-to-one';

/** What a join found; kept with the panel and printed. */
export interface JoinCount {
  name: string;
  relationship: Relationship;
  left: number;
  right: number;
  matched: number;
  unmatched_left: number;
  unmatched_right: number;
}
