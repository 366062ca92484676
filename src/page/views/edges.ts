import type { Baked } from '../../model/baked.ts';
import { baked, bakedText } from '../baked.ts';
import { kept } from '../kept.ts';
import { say, spoken } from '../say.ts';
import type { State } from '../state/state.ts';
import { guideButton } from './guide.ts';
import { choice, el } from './make.ts';

const PLACES = ['en', 'en-US', 'en-GB', 'en-CA', 'es', 'es-MX', 'es-US', 'es-ES', 'es-AR', 'es-CO'] as const;

/** What it is called, and the language of everything. */
export function headView(state: State, act: { language(to: string): void }): Node[] {
  const places = PLACES.map((one) => [one, say(`languages.${one}`)] as const);
  return [
    el('p', { class: 'brand' }, 'Daybands'),
    guideButton(() => state.way),
    choice(say('languages.label'), places, state.place, act.language),
  ];
}

/** Always in reach: what it is not, and that nothing leaves. */
export function footView(): Node[] {
  const { cautions } = spoken();
  return [
    el(
      'details',
      {},
      el('summary', {}, say('foot.cautions')),
      el('p', {}, say('foot.not')),
      el('ul', {}, ...Object.values(cautions).map((text) => el('li', {}, text))),
    ),
    el('details', {}, el('summary', {}, say('foot.leaves')), el('p', {}, say('foot.leavesHow'))),
    el('p', {}, say('foot.stamp', { stamp: kept('stamp') })),
    ...(baked ? [el('p', {}, bakedLine(baked))] : []),
  ];
}

/** Whose copy it is, and what it begins with. */
function bakedLine({ settings, date, ...more }: Baked): string {
  const set = Object.entries(settings).filter(([name]) => name !== 'clinic');
  const names = [...set.map(([name, value]) => `${name} ${String(value)}`), ...Object.keys(more)];
  return say('foot.clinic', {
    clinic: bakedText('clinic') ?? say('foot.anyClinic'),
    date,
    names: names.length === 0 ? '–' : names.join(' · '),
  });
}
