/** Field efficiency in words: what a machine gets done of its width times its pace. */
import type { FieldEfficiency, Machine } from '../../mowing/model';
import { percent } from './figures';

/** `51 %, handbook 75 to 85 %`. */
export function efficiencyText({ reached, handbook }: FieldEfficiency): string {
  const own = percent(reached);
  if (!handbook) return own;
  const { low, high } = handbook.value;
  return `${own}, handbook ${whole(low)} to ${percent(high)}`;
}

const whole = (share: number): string => String(Math.round(share * 100));

/** Where the figure comes from, and why a ballpark's is lower than the handbook's. */
export function efficiencyWords(machine: Machine, efficiency: FieldEfficiency): string {
  const { mowing, turning, empty, handbook } = efficiency;
  const overlap = machine.overlapIn / machine.cutWidthIn;
  const time = `New ground an hour over width times pace mowing (field efficiency, ASABE EP496), on the grass, count left out. Of its time there ${percent(mowing)} mows, ${percent(turning)} turns, ${percent(empty)} runs empty; the overlap takes ${percent(overlap)} of the cut.`;
  if (!handbook) return `${time}\nNo handbook gives a range for rollers and brooms.`;
  const note = handbook.note ? `; ${handbook.note}` : '';
  return `${time}\nHandbook: ${handbook.source}${note}. Passes between skin and fence, and far more those inside letters, are short, so that turns and empty runs take a larger share.`;
}
