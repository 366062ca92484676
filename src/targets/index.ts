import type { TargetSet } from '../model/targets.ts';
import { adult } from './adult.ts';
import { older } from './older.ts';
import { pregnancyOther } from './pregnancyOther.ts';
import { pregnancyType1 } from './pregnancyType1.ts';

/** Every published target set, by id. */
export const targetSets: Readonly<Record<TargetSet['id'], TargetSet>> = {
  adult,
  older,
  'pregnancy-type-1': pregnancyType1,
  'pregnancy-other': pregnancyOther,
};
