import { lookAtStories } from './looks.ts';

lookAtStories('es');
