/** Whether the crew, the window and the crew's own rates make sense. */
import { problem, type Problem } from '../base/result';
import { readClock } from './clock';
import type { LabourSpec } from './model';
import { isRateId } from './rates';

/** A crew larger than this is a slip of the finger. */
export const MOST_PEOPLE = 60;
/** Two tapes are held at two controls. */
export const LEAST_TO_SET_OUT = 2;

/**
 * Problems `crew-size`, `crew-short`, `window-clock`, `window-order`, `rate-range` (errors) and
 * `rate-unknown` (warning). `setsOut`: there is a graphic to set out.
 */
export function checkLabour(spec: LabourSpec, setsOut: boolean): Problem[] {
  return [...checkPeople(spec.people, setsOut), ...checkWindow(spec), ...checkRates(spec)];
}

function checkPeople(people: number, setsOut: boolean): Problem[] {
  const where = 'labour.people';
  if (!Number.isInteger(people) || people < 1 || people > MOST_PEOPLE) {
    const what = `${people} is not a number of people`;
    return [problem('crew-size', where, what, `give a whole number from 1 to ${MOST_PEOPLE}`)];
  }
  if (!setsOut || people >= LEAST_TO_SET_OUT) return [];
  return [
    problem(
      'crew-short',
      where,
      'one person cannot hold two tapes',
      `plan at least ${LEAST_TO_SET_OUT} people to set out a graphic`,
    ),
  ];
}

function checkWindow(spec: LabourSpec): Problem[] {
  const opens = readClock(spec.opens);
  const closes = readClock(spec.closes);
  const bad = (key: 'opens' | 'closes'): Problem =>
    problem(
      'window-clock',
      `labour.${key}`,
      `"${spec[key]}" is not a clock time`,
      'type hours and minutes like 06:30 or 17:00',
    );
  if (opens === null || closes === null) {
    return [...(opens === null ? [bad('opens')] : []), ...(closes === null ? [bad('closes')] : [])];
  }
  if (closes > opens) return [];
  return [
    problem(
      'window-order',
      'labour.closes',
      `the window closes at ${spec.closes}, not after it opens at ${spec.opens}`,
      'give a closing time later the same day; mowing through the night is not planned',
    ),
  ];
}

function checkRates(spec: LabourSpec): Problem[] {
  return Object.entries(spec.rates).flatMap(([id, own]) => {
    const where = `labour.rates.${id}`;
    const { low, likely, high } = own;
    if (!isKnown(id)) {
      const what = `there is no task "${id}"`;
      return [problem('rate-unknown', where, what, 'use a task id from the hours', 'warning')];
    }
    const ordered = low >= 0 && low <= likely && likely <= high && Number.isFinite(high);
    if (ordered && high > 0) return [];
    return [
      problem(
        'rate-range',
        where,
        `low ${low}, likely ${likely}, high ${high} is not a range of times`,
        'give three times, none negative, with low ≤ likely ≤ high and high above 0',
      ),
    ];
  });
}

/** A catalogue id, or one of a machine's own phase, such as `border-wide`. */
const isKnown = (id: string): boolean =>
  isRateId(id) || isRateId(id.replace(/-(wide|narrow)$/, ''));
