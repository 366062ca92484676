export { AROUND_LOG, AROUND_MEALS, AROUND_MOVEMENT, AROUND_NOTES, besideTopic } from './around.ts';
export { type NoteWish, notesWorthWriting } from './coach.ts';
export { lookAll } from './lookAll.ts';
export { type Topic, topics } from './topic.ts';
