export { type About, aboutOf } from './about.ts';
export {
  AROUND_BEFORE,
  AROUND_LOG,
  AROUND_MEALS,
  AROUND_MOVEMENT,
  AROUND_NOTES,
  besideTopic,
  storyOf,
} from './around.ts';
export { type NoteWish, notesWorthWriting } from './coach.ts';
export { lookAll } from './lookAll.ts';
export { checkTopicOrder, USUAL_ORDER } from './order.ts';
export { furthestFromGoal, type Topic, topics, topicsToChoose } from './topic.ts';
