import type { Making } from './columns.ts';
import { type OpenRecord, timeText } from './openRecords.ts';
import type { TrueNote, TrueReading } from './truth.ts';

/** Readings that share one header, as a series. */
const SERIES = 24;

/** Data points after the schemas of Open mHealth and IEEE 1752.1: blood-glucose, physical-activity, single-medication-dose-taken. */
export function openMhealthRecords(making: Making): OpenRecord[] {
  const { truth, shape } = making;
  const who = (wall: number): object => {
    if (shape.person === 'none') return {};
    const later = wall > truth.readings[Math.floor(truth.readings.length / 2)]!.wall;
    return { user_id: shape.person.startsWith('two-') && later ? 'bo-b' : 'ada-f' };
  };
  const header = (name: string, wall: number, id: string): object => ({
    uuid: id,
    schema_id: { namespace: 'omh', name, version: '3.1' },
    ...who(wall),
    modality: name === 'blood-glucose' ? 'sensed' : 'self-reported',
  });
  const at = (wall: number): object => {
    const text = timeText(making, wall);
    return shape.recordForm === 'interval' ? { time_interval: { start_date_time: text } } : { date_time: text };
  };
  const glucose = ({ wall, native, unit }: TrueReading): object => ({
    blood_glucose: { value: native, unit },
    specimen_source: 'interstitial fluid',
    effective_time_frame: at(wall),
  });
  const points: (OpenRecord & { wall: number })[] = [];
  const step = shape.recordForm === 'series' ? SERIES : 1;
  for (let k = 0; k < truth.readings.length; k += step) {
    const readings = truth.readings.slice(k, k + step);
    const [{ wall }] = readings as [TrueReading];
    const bodies = readings.map(glucose);
    const json = { header: header('blood-glucose', wall, `r-${k}`), body: step > 1 ? bodies : bodies[0] };
    points.push({ wall, json, readings, notes: [] });
  }
  for (const [k, note] of truth.notes.entries()) points.push({ wall: note.wall, ...pointOf(note, k) });
  if (shape.decoy === 'pulse')
    truth.readings.forEach(({ wall }, k) => {
      if (k % 20 !== 3) return;
      const body = { heart_rate: { value: 60 + (k % 50), unit: 'beats/min' }, effective_time_frame: at(wall) };
      points.push({ wall, json: { header: header('heart-rate', wall, `h-${k}`), body }, readings: [], notes: [] });
    });
  return points.sort((a, b) => a.wall - b.wall);

  function pointOf(note: TrueNote, k: number): OpenRecord {
    const { wall, kind, amount, minutes, words, unit } = note;
    const time = { effective_time_frame: { date_time: timeText(making, wall) } };
    const id = `n-${k}`;
    const as = (name: string, body: object): OpenRecord => ({
      json: { header: header(name, wall, id), body },
      readings: [],
      notes: [note],
    });
    if (kind === 'fingerstick')
      return as('blood-glucose', {
        blood_glucose: { value: amount, unit },
        specimen_source: 'capillary blood',
        ...time,
      });
    if (kind === 'exercise')
      return as('physical-activity', {
        activity_name: words.join(' '),
        effective_time_frame: {
          time_interval: { start_date_time: timeText(making, wall), duration: { value: minutes, unit: 'min' } },
        },
      });
    const medicine = kind === 'insulin' ? `insulin ${note.word}` : words.join(' ');
    return as('single-medication-dose-taken', {
      medication: { generic_name: medicine },
      ...(amount === undefined ? {} : { dose: { value: amount, unit: 'U' } }),
      ...time,
    });
  }
}
