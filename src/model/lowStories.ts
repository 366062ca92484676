import type { LocalDate } from './glucose.ts';

/** Something noted near a low: when, on the local clock, and on which day. */
export interface NotedNear {
  date: LocalDate;
  minute: number;
  /** As written; '' where nothing was. */
  name: string;
}

/** The lows from one noon to the next, told by the gravest of them with what was noted around it. Null: not noted near it. */
export interface LowStory {
  /** Places of these lows in `lows.value.list`, and of the gravest. */
  lows: number[];
  gravest: number;
  /** The last session that began in the 12 hours before it. */
  exercise: NotedNear | null;
  /** The last food, and insulin noted without food, in the 4 hours before it. */
  food: NotedNear | null;
  insulinOnly: NotedNear | null;
  /** The first alarm from a quarter of an hour before its start to a quarter of an hour after its end. */
  alarm: NotedNear | null;
  /** The first food from its start to half an hour after its end. */
  eaten: NotedNear | null;
  /** The first remark that stands near it, whole. */
  remark: NotedNear | null;
  /** It looks like pressure on the sensor. */
  pressed: boolean;
}

export interface LowStories {
  /** In order of time. */
  stories: LowStory[];
  /** Places in `stories`, the gravest first: level 2, then in a night, then not pressed, then the longest; of equals the earlier. */
  gravestFirst: number[];
}
