/** Field efficiency of each machine beside the handbook's, as lines of the hours sheet. */
import type { FieldEfficiency } from '../../mowing/model';
import { wrapText } from '../fit-text';
import { inkText } from '../ink';
import type { Kit } from '../kit';
import type { Flow } from '../page-flow';

const SIZE = 8.5;
const LINE = 10.5;

/** What each machine gets done of its width times its pace, and what handbooks give for open fields. */
export function addEfficiency(kit: Kit, flow: Flow): void {
  const { left, right } = kit.paper;
  const { efficiency } = kit.plan.passes;
  if (efficiency.length === 0) return;
  const texts = efficiency.map((e) => efficiencyLine(kit, e));
  const lines = texts.flatMap((text) => wrapText(kit.metrics, text, SIZE, 'regular', right - left));
  flow.need(lines.length * LINE + 18);
  flow.add([inkText(left, flow.y() + 12, HEAD, { size: 10, font: 'bold' })], 15);
  for (const line of lines) flow.add([inkText(left, flow.y() + 8, line, { size: SIZE })], LINE);
}

const HEAD = 'Field efficiency: new ground an hour over width times pace, the count left out';

function efficiencyLine(kit: Kit, efficiency: FieldEfficiency): string {
  const { machine, reached, mowing, turning, empty, handbook } = efficiency;
  const name = kit.plan.passes.machines.find((m) => m.id === machine)?.name ?? machine;
  const own = `${name}: ${percent(reached)}; ${percent(mowing)} of its time mows, ${percent(turning)} turns, ${percent(empty)} runs empty.`;
  if (!handbook) return `${own} No handbook gives a range for rollers and brooms.`;
  const { low, high } = handbook.value;
  return `${own} Handbook ${percent(low)} to ${percent(high)} on long runs of open fields (${handbook.source}).`;
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;
