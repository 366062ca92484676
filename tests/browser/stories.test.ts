import { lookAtStories, lookAtStress } from './looks.ts';

lookAtStories('en');
lookAtStress();
