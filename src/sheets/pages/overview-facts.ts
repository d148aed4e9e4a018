/** The key figures of the overview. */
import { formatLength, formatLimit, type LengthSystem } from '../../base/quantity';
import type { StakePlan } from '../../stakeout/model';
import type { Kit } from '../kit';
import { wholeLength } from '../pass-groups';
import { spanText } from './hours-page';

export interface FactGroup {
  readonly title: string;
  readonly rows: readonly (readonly [string, string])[];
}

export const keyFacts = (kit: Kit): FactGroup[] => [
  ...stakeFacts(kit),
  passFacts(kit),
  ...lookFacts(kit),
  clockFacts(kit),
];

function stakeFacts(kit: Kit): FactGroup[] {
  const { stakes, project } = kit.plan;
  if (!stakes) return [];
  const { units } = project;
  const set = stakes.stakes.filter((stake) => stake.kind === 'control').length;
  const pins = stakes.stakes.filter((stake) => stake.kind === 'pin').length;
  return [
    {
      title: 'Setting out',
      rows: [
        ['stakes to drive', String(stakes.stakes.length)],
        ['of these set controls', String(set)],
        ['of these swing pins', String(pins)],
        ['rounds', String(stakes.rounds.length)],
        ['strings / swings / bends', `${stakes.strings} / ${stakes.swings} / ${stakes.bends ?? 0}`],
        ...alikeFacts(stakes),
        ...gridFacts(stakes, units),
        ['string, without knots', wholeLength(Math.ceil(stakes.stringFt), units)],
        ['tapes used up to', formatLength(project.stakeout.tape.limitFt, units)],
        ['worst stake, 95 %', formatLimit(stakes.worstSemiMajor95In, units)],
        ['target', formatLimit(project.stakeout.target95In, units)],
        ['drawn line to art', formatLimit(stakes.largestGapIn, units)],
      ],
    },
  ];
}

function passFacts(kit: Kit): FactGroup {
  const { passes, project } = kit.plan;
  const machines = passes.machines.map((machine): [string, string] => [
    machine.name.length > 24 ? `${machine.role} tool` : machine.name,
    `${passes.passes.filter((pass) => pass.machine === machine.id).length} passes`,
  ]);
  const covered: [string, string][] = kit.plan.stakes
    ? [['graphic covered', percent(passes.graphicCovered)]]
    : [];
  return {
    title: 'Passes',
    rows: [
      ...machines,
      ['mowing and rolling', wholeLength(passes.mowFt, project.units)],
      ['turns', wholeLength(passes.turnFt, project.units)],
      ['empty runs', wholeLength(passes.runFt, project.units)],
      ...covered,
    ],
  };
}

function alikeFacts({ contours }: StakePlan): [string, string][] {
  const alike = contours.filter((c) => c.like).length;
  return alike === 0 ? [] : [['contours like another', `${alike} of ${contours.length}`]];
}

/** What the customary grid transfer would take at the same tolerance. */
function gridFacts({ saving }: StakePlan, units: LengthSystem): [string, string][] {
  if (!saving) return [];
  return [
    ['a grid would take', `${saving.gridMarks} marks`],
    ['with cells of', formatLength(saving.cellFt, units)],
  ];
}

function lookFacts(kit: Kit): FactGroup[] {
  const { looks, project } = kit.plan;
  const seatName = (id: string) => project.seats.find((seat) => seat.id === id)?.name ?? id;
  const rows = looks
    .slice(0, 3)
    .map((look): [string, string] => [short(seatName(look.seat), 26), percent(look.share)]);
  return rows.length === 0 ? [] : [{ title: 'Outline clear from', rows }];
}

function clockFacts(kit: Kit): FactGroup {
  const { totals, window, spec } = kit.plan.hours;
  return {
    title: 'Hours',
    rows: [
      people(kit, spec.people),
      ['window', `${window.opens} to ${window.closes}`],
      ['done by, P50', window.finishP50],
      ['done by, P90', window.finishP90],
      [window.fitsP90 ? 'spare at P90' : 'over at P90', spanText(window.spareMinutesP90)],
      [
        'person-hours P50 / P90',
        `${totals.personHoursP50.toFixed(1)} / ${totals.personHoursP90.toFixed(1)}`,
      ],
    ],
  };
}

const people = ({ plan: { stakes } }: Kit, atHand: number): [string, string] =>
  stakes
    ? ['people / at the tapes', `${atHand} / ${Math.min(atHand, stakes.spec.crew)}`]
    : ['people', String(atHand)];

/** Rounded down: a share is never said to be better than it is. */
const percent = (share: number): string => `${(Math.floor(share * 1000) / 10).toFixed(1)} %`;

const short = (text: string, most: number): string =>
  text.length <= most ? text : `${text.slice(0, most - 3).trimEnd()}...`;
