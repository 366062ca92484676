import { lookAtStories } from './looks.ts';

lookAtStories('en');
