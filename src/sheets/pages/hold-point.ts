/** The hold point: no machine goes in before the count is signed. */
import { stakesOut } from '../../labour/list-inventory';
import { boxRing, inkBox, inkRing, inkRule, inkStroke, inkText } from '../ink';
import type { Kit } from '../kit';
import type { Mark } from '../marks';

export const HOLD_HEIGHT = 80;

/** Marks with the top at `y`, across the sheet. */
export function holdPoint(kit: Kit, y: number): Mark[] {
  const { left, right } = kit.paper;
  const { stakes } = kit.plan;
  const count = stakes ? stakesOut(stakes) : 0;
  const frame = boxRing({ minX: left, maxX: right, minY: y, maxY: y + HOLD_HEIGHT - 10 });
  const base = y + 45;
  const words = `Pull every string, pin and stake: ${count} on this plan, set controls included. No machine enters before this is signed.`;
  const text = (x: number, word: string, bold = true) =>
    inkText(left + x, base, word, { size: 11, font: bold ? 'bold' : 'regular' });
  return [
    inkRing(frame, inkStroke(2)),
    inkText(left + 10, y + 19, 'Hold point', { size: 14, font: 'heading' }),
    inkText(left + 92, y + 19, words, { size: 8.5 }),
    text(10, 'stakes out'),
    inkBox(left + 74, base - 15, 48, 20),
    text(130, '= stakes in'),
    inkBox(left + 198, base - 15, 48, 20),
    text(262, 'signed'),
    inkRule(left + 304, left + 436, base + 3),
    text(446, 'time'),
    inkRule(left + 474, right - 10, base + 3),
    inkText(
      left + 10,
      y + 63,
      'Out: onto the grass. In: back in the box. Not equal: look, on foot, until found. Strings, caps, flags too. One count for all machines.',
      {
        size: 8.5,
      },
    ),
  ];
}
