import usual from '../../templates/topics.json' with { type: 'json' };
import { findings } from '../findings/index.ts';
import type { TopicRow } from '../model/topics.ts';

/**
 * The usual order. Lows lead where one is of level 2, at night, long, over its goal or back at one time of day (reading
 * orders put safety first: Aleppo & Webb 2019, AACE 2021, from the abstracts); else what lies furthest beyond its
 * published goal does (ours).
 */
export const USUAL_ORDER = usual.rows as readonly TopicRow[];

const LOCKED = USUAL_ORDER.filter(({ locked }) => locked);
const RULES = new Set(USUAL_ORDER.map(({ rule }) => rule));
const TOPICS = new Set<string>([...USUAL_ORDER.map(({ topic }) => topic), ...findings.map(({ id }) => id)]);
const FURTHEST = ['far-highs', 'highs', 'spread'];

/** Checks the content of a file of topics, as a clinic may have edited it; tells each place that does not fit. */
export function checkTopicOrder(content: unknown): { order: TopicRow[] } | { problems: string[] } {
  const rows = typeof content === 'object' && content !== null && 'rows' in content ? content.rows : null;
  if (!Array.isArray(rows)) return { problems: ['rows'] };
  const problems = rows.flatMap((row: unknown, i) => (isRow(row) ? [] : [`rows[${i}]`]));
  const top = LOCKED.every(({ topic, rule }, i) => rows[i]?.topic === topic && rows[i].rule === rule && rows[i].locked);
  if (!top) problems.push(`rows[0-${LOCKED.length - 1}] (locked: ${LOCKED.map(({ topic }) => topic).join(', ')})`);
  return problems.length > 0 ? { problems } : { order: rows as TopicRow[] };
}

function isRow(row: unknown): row is TopicRow {
  if (typeof row !== 'object' || row === null) return false;
  const { topic, rule, furthest, locked, ...others } = row as Record<string, unknown>;
  return (
    Object.keys(others).length === 0 &&
    TOPICS.has(topic as string) &&
    RULES.has(rule as string) &&
    (furthest === undefined || FURTHEST.includes(furthest as string)) &&
    (locked === undefined || locked === true)
  );
}
