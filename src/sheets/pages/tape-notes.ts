/** What the Controls sheet says of the tapes: how to test them, and a steel tape's corrections. */
import { formatLength, formatLimit, roundLimitIn, type LengthSystem } from '../../base/quantity';
import { steelRows, type SteelRow, type SteelUse } from '../../adjust/steel-tape';
import { checkScale } from '../../field/prove-controls';
import type { StakeoutSpec, TapeSpec } from '../../stakeout/model';
import { longestTapeFt } from '../../stakeout/tapes';
import { readingStepFt } from '../../stakeout/ties';
import { addHeading, addNote, addTick } from '../flow-notes';
import { inkBox, inkRule, inkText } from '../ink';
import type { Kit } from '../kit';
import { FAINT } from '../marks';
import type { Flow } from '../page-flow';
import { CHECK_SIZE } from './stake-table';

type Spec = Pick<StakeoutSpec, 'tape' | 'secondTape'>;

/** Zero, units, and the two tapes side by side. */
export function addTapeChecks(kit: Kit, flow: Flow): void {
  addHeading(kit, flow, 'The tapes, before anything else');
  const { stakeout, units } = kit.plan.project;
  const read =
    units === 'metric'
      ? 'Every tape reads in metres and centimetres.'
      : 'Every tape reads in feet, inches and quarters, not in tenths of a foot.';
  const rows = [
    ...tapeRows(stakeout, units),
    'Zero: see on each tape whether it starts at the ring, the hook or a printed mark. Hold that point.',
    read,
    `Lay the tapes side by side, the check tape too, zeros together, equally tight. Apart by more than ${apart(stakeout, units)}: change one.`,
  ];
  for (const row of rows) addTick(kit, flow, row);
  flow.add([], 8);
}

/** Which tape is tape 1 and which tape 2, when it matters. */
const tapeRows = (spec: Spec, units: LengthSystem): string[] =>
  spec.secondTape
    ? [spec.tape, spec.secondTape].map((t, i) => `Tape ${i + 1}: ${tapeWords(t, units)}.`)
    : [];

/** `fibreglass, class III, 200' 0"`. */
export const tapeWords = (tape: TapeSpec, units: LengthSystem): string =>
  [
    ...(tape.name ? [tape.name] : []),
    ...(tape.material ? [tape.material] : []),
    ...(tape.accuracyClass ? [`class ${tape.accuracyClass}`] : []),
    formatLength(tape.limitFt, units),
  ].join(', ');

/** Two of a kind differ by less than a step; two kinds by three sigma of both scales. */
function apart(spec: Spec, units: LengthSystem): string {
  if (!spec.secondTape) return units === 'metric' ? '5 mm' : '1/4"';
  const shared = Math.min(spec.tape.limitFt, spec.secondTape.limitFt);
  const sigma = Math.hypot(spec.tape.scaleSigma ?? 0, spec.secondTape.scaleSigma ?? 0);
  const stepIn = readingStepFt(units) * 12;
  return `${formatLimit(Math.max(stepIn, 3 * sigma * shared * 12), units)} at ${formatLength(shared, units)}`;
}

/** The mean of all proving tapes as a test of the tape's scale. */
export function addScaleCheck(kit: Kit, flow: Flow): void {
  const { field, project } = kit.plan;
  const tape = project.stakeout.tape;
  const check = checkScale(field.controls, tape);
  if (!check) return;
  const { left, right } = kit.paper;
  const y = flow.y() + 16;
  const limit = formatLimit(check.limitIn, project.units);
  flow.add(
    [
      inkText(left, y, `Mean of the ${check.count}, read less printed, with its sign`, {
        size: 10,
        font: 'bold',
      }),
      inkText(left + 272, y, `at most ${limit}`, { size: CHECK_SIZE }),
      inkRule(left + 370, left + 444, y + 1),
      inkBox(left + 456, y - 10, 12, 12),
      inkText(left + 472, y, 'good', { size: 9 }),
      inkBox(left + 496, y - 10, 12, 12),
      inkText(left + 513, y, 'off', { size: 9 }),
      inkRule(left, right, y + 6, 0.35, FAINT),
    ],
    24,
  );
  const printedIn = roundLimitIn(check.limitIn, project.units);
  addNote(kit, flow, scaleWords(printedIn, check.meanFt, limit, tape));
  flow.add([], 6);
}

function scaleWords(limitIn: number, meanFt: number, limit: string, tape: TapeSpec): string {
  const seen = Math.floor((meanFt * 12) / limitIn / 10) * 10;
  const scale = tape.scaleSigma ? `true to 1 in ${ratio(tape.scaleSigma)}` : 'of true scale';
  return (
    `Mean below zero by more than ${limit}: the tape is long and sets everything too far out. Above: ` +
    'it is short. Stop, and do the same with another tape; go on with one that agrees with the bases. ' +
    `A tape wrong by less than about 1 in ${seen} may pass. The plan counts on one ${scale}: only a tape ` +
    'laid beside a certified one is known to be that. Test every tape of another kind as well.'
  );
}

const ratio = (share: number): string => Math.round(1 / share).toLocaleString('en-US');

/** What to pull more or less of a steel tape, so that stakes stand at the printed distances. */
export function addSteel(kit: Kit, flow: Flow): void {
  const { stakeout, units } = kit.plan.project;
  const { steel } = stakeout;
  if (!steel) return;
  addHeading(kit, flow, 'Steel tape: pull this much more or less');
  addNote(kit, flow, steelWords(steel, units));
  for (const row of steelRows(steel, longestTapeFt(stakeout), readingStepFt(units)))
    addSteelRow(kit, flow, row);
  flow.add([], 10);
}

function steelWords(use: SteelUse, units: LengthSystem): string {
  const lies =
    use.spanFt > 0
      ? `held up every ${formatLength(use.spanFt, units)}`
      : 'lying on the grass all along';
  return (
    `For ${use.temperatureF} F (${((use.temperatureF - 32) / 1.8).toFixed(0)} C) and a pull of ` +
    `${use.pullLb} lb (${(use.pullLb * 4.448).toFixed(0)} N), ${lies}; the tape is true at ` +
    `${use.standardF} F and ${use.standardPullLb} lb. Printed readings are distances on the ground: ` +
    'hold at the stake the printed reading with this change. A check, too, should read what is printed ' +
    'with this change. (To measure a distance the change is taken the other way.)'
  );
}

function addSteelRow(kit: Kit, flow: Flow, row: SteelRow): void {
  const { left } = kit.paper;
  const { units } = kit.plan.project;
  const y = flow.y() + 12;
  const size = formatLimit(Math.abs(row.changeFt) * 12, units);
  const words = row.changeFt === 0 ? 'as printed' : `${size} ${row.changeFt > 0 ? 'more' : 'less'}`;
  flow.add(
    [
      inkText(left, y, `readings up to ${formatLength(row.upToFt, units)}`, { size: 10 }),
      inkText(left + 170, y, words, { size: CHECK_SIZE, font: 'bold' }),
    ],
    15,
  );
}
