/** Guide lines in words, alike on the sheets and on the screen. */
import { formatLimit, formatMetres, type LengthSystem } from '../base/quantity';
import { feetToMetres, metresToFeet } from '../base/units';
import type { EdgeName, EdgeTable, GuidePlan } from '../guide/model';
import { passesAimed } from '../guide/string-turns';
import type { PassPlan } from '../mowing/model';
import { wholeLength } from './pass-groups';

export const EDGE_WORDS: Readonly<Record<EdgeName, string>> = {
  track: 'Track side',
  'left-line': 'Left foul line',
  'right-line': 'Right foul line',
  skin: 'Skin',
};

const ZERO_AT: Readonly<Record<EdgeName, string>> = {
  track: 'where the left foul line meets it',
  'left-line': 'where it meets the track side',
  'right-line': 'where it meets the track side',
  skin: 'where the left foul line meets it',
};

const TOWARD: Readonly<Record<EdgeName, string>> = {
  track: 'toward right field',
  'left-line': 'toward home',
  'right-line': 'toward home',
  skin: 'toward first base',
};

/** Whole feet or tenths of a metre, never rounded up. */
const spacingText = (ft: number, system: LengthSystem): string =>
  system === 'metric'
    ? formatMetres(metresToFeet(Math.floor(feetToMetres(ft) * 10) / 10), 1)
    : wholeLength(Math.max(1, Math.floor(ft)), system);

/** Where the tape starts, which way it runs, and how it is held. */
export function zeroWords(table: EdgeTable, system: LengthSystem): string {
  const { edge, zeroFromHome, zeroFromPole, pinEveryFt } = table;
  const pole = zeroFromPole ? `, ${zeroFromPole.text} short of the pole` : '';
  const zero = `Zero ${ZERO_AT[edge]}: ${zeroFromHome.text} from home plate along the foul line${pole}; ${TOWARD[edge]}.`;
  const pins =
    pinEveryFt === null
      ? ''
      : ` Hold the tape to the edge with a pin at every corner and at least every ${spacingText(pinEveryFt, system)}.`;
  return zero + pins;
}

/** What the strings are for and what the figures rest on; one sentence a line. */
export function driftWords(
  guides: GuidePlan,
  passes: Pick<PassPlan, 'passes'>,
  system: LengthSystem,
): string[] {
  const { spec, worstDriftIn, strings } = guides;
  const text = (valueIn: number) => formatLimit(valueIn, system);
  if (worstDriftIn === null || strings.length === 0) {
    return ['No pass is strung on this job: the dots on the edges are what the driver aims at.'];
  }
  const aimed = passesAimed(guides, passes);
  return [
    `Each pass laid beside another adds about ${text(spec.passSigmaIn)} by chance and ${text(spec.passBiasIn)} always the same way; a strung pass strays about ${text(spec.stringSigmaIn)}. These are assumptions: measure your own.`,
    `With these strings, the fewest that do it, every band edge stays within ${text(spec.toleranceIn)} on nineteen days in twenty (the worst within ${text(worstDriftIn)}) when passes are laid beside one another outward from the strung ones.`,
    ...(aimed > 0
      ? [
          `${aimed} other ${aimed === 1 ? 'pass is' : 'passes are'} driven, in the order of the pass sheets, before the pass on either side: aim ${aimed === 1 ? 'it' : 'them'} from dot to dot.`,
        ]
      : []),
    ...guides.notes,
  ];
}
