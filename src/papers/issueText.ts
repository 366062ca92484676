import type { Words } from '../language/index.ts';
import type { Issue } from '../model/issues.ts';
import { issueMessage, teller } from './teller.ts';

/** What an issue says in the language of these words, as one sentence or more; text of files in it is made printable. */
export const issueText = (issue: Issue, words: Words): string => issueMessage(teller(words), issue);
