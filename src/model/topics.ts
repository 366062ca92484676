/**
 * What lies furthest beyond its published goal: time above range (or too little in range), or the spread. Highs are far where
 * more readings would hardly undo it, enough of them or not.
 */
export type Furthest = 'far-highs' | 'highs' | 'spread';

/** One row of the order in which topics are looked for. */
export interface TopicRow {
  /** Id of a finding; after a slash, the way in which it has to hold. */
  topic: string;
  /** Name of the rule in words: `findings.rules.<rule>`. */
  rule: string;
  /** Only where this lies furthest beyond its goal; far highs are highs too. */
  furthest?: Furthest;
  /** Stands at the top, whatever else a clinic changes. */
  locked?: true;
}
