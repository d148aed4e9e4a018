/** Printed codes for the phone: one round each, a long round in parts. */
import { crewCodes, type CrewCode } from '../../exchange/crew-code';
import { crewJobOf } from '../../exchange/crew-page';
import { codeMark } from '../code-marks';
import { wrapText } from '../fit-text';
import { inkText } from '../ink';
import type { Kit } from '../kit';
import { startFlow } from '../page-flow';
import type { Draft } from '../sheet-head';
import type { Mark } from '../marks';

/** Three across either paper; with the longest list and address a module is 0.5 mm or more. */
const SIZE = 172;
const LARGEST_MODULE = 3;
const ACROSS = 3;
const LABEL = 40;

/** None without an https address or without stakes. */
export function codePages(kit: Kit): Draft[] {
  const { crewAddress } = kit.plan.project;
  const job = crewJobOf(kit.plan);
  if (crewAddress === undefined || !job) return [];
  const flow = startFlow(kit.paper);
  const codes = crewCodes(job);
  const opens = `They open at ${crewAddress}`;
  const lines = wrapText(kit.metrics, opens, 10, 'bold', kit.paper.right - kit.paper.left);
  flow.add(
    lines.map((line, i) =>
      inkText(kit.paper.left + 8, flow.y() + 10 + 12 * i, line, { size: 10, font: 'bold' }),
    ),
    12 * lines.length + 12,
  );
  for (let i = 0; i < codes.length; i += ACROSS) {
    flow.need(SIZE + LABEL);
    const y = flow.y();
    const row = codes.slice(i, i + ACROSS);
    flow.add(
      row.flatMap((code, column) => codeBlock(kit, crewAddress, code, column, y)),
      SIZE + LABEL,
    );
  }
  return flow.pages().map((marks) => ({
    title: 'Codes for the phone',
    lead: "Point the phone's camera at the code of the round in hand. Opened once, it asks for no network.",
    marks,
  }));
}

function codeBlock(kit: Kit, address: string, code: CrewCode, column: number, y: number): Mark[] {
  const { left, right } = kit.paper;
  const x = left + (column * (right - left - SIZE)) / (ACROSS - 1);
  const round = kit.plan.stakes?.rounds.find((r) => r.number === code.round);
  const part = code.parts > 1 ? `, part ${code.part} of ${code.parts}` : '';
  const where = round?.from ? `tapes at ${round.from.join(' and ')}` : 'short tapes';
  const words = `${code.stakes} ${code.stakes === 1 ? 'stake' : 'stakes'}, ${where}`;
  const lines = wrapText(kit.metrics, words, 9.5, 'regular', SIZE);
  return [
    inkText(x + 8, y + 10, `Round ${code.round}${part}`, { size: 11, font: 'bold' }),
    ...lines.slice(0, 1).map((line) => inkText(x + 8, y + 22, line)),
    codeMark(`${address}#${code.text}`, x, y + 24, SIZE, LARGEST_MODULE),
  ];
}
