/** Local clock times, 24 h. */
export const MINUTES_PER_DAY = 1440;

/** Minutes after midnight of `HH:MM` (24:00 is the day's end); null when it is no clock time. */
export function readClock(text: string): number | null {
  const match = /^([01]?\d|2[0-4]):([0-5]\d)$/.exec(text.trim());
  if (!match) return null;
  const minutes = Number(match[1]) * 60 + Number(match[2]);
  return minutes <= MINUTES_PER_DAY ? minutes : null;
}

/** `HH:MM`, rounded up to the minute; past midnight with `next day` or the number of days later. */
export function writeClock(minutes: number): string {
  const whole = Math.ceil(minutes);
  const days = Math.floor(whole / MINUTES_PER_DAY);
  const rest = whole - days * MINUTES_PER_DAY;
  const two = (n: number): string => String(n).padStart(2, '0');
  const clock = `${two(Math.floor(rest / 60))}:${two(rest % 60)}`;
  if (days === 0) return clock;
  return days === 1 ? `${clock} next day` : `${clock}, ${days} days later`;
}
