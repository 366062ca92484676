export type { Style } from './locale.ts';
export { messageParams } from './messages.ts';
export { dayOf24, spokenMinutes, stackedTenths } from './shares.ts';
export { type Speaker, type SpeakerOptions, speaker } from './speaker.ts';
