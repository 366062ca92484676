export { isolated } from './isolated.ts';
export { issueSaid, withWords } from './issueSaid.ts';
export { lacking, layered, type Words } from './layers.ts';
export type { Style } from './locale.ts';
export { messageParams } from './messages.ts';
export { seal, textAt, wordsFor } from './paperWords.ts';
export { LANGUAGES, type Language, type Place, placeOf, REGIONS } from './place.ts';
export { dayOf24, spokenMinutes, stackedTenths } from './shares.ts';
export { type Speaker, type SpeakerOptions, speakerOf } from './speaker.ts';
