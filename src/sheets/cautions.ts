/**
 * Cautions printed before any work, in the order in which they are met. Sources stand beside the
 * figures; rules without one are common practice.
 */
import type { LengthSystem } from '../base/quantity';

export interface Caution {
  readonly head: string;
  readonly text: string;
  /** A tick box: something to have done before the next step. */
  readonly tick: boolean;
}

export interface CautionGroup {
  readonly title: string;
  readonly cautions: readonly Caution[];
}

export function cautionGroups(
  system: LengthSystem,
  keepOuts: readonly string[],
): readonly CautionGroup[] {
  return [
    { title: 'Days before', cautions: before(keepOuts) },
    { title: 'Setting out', cautions: settingOut() },
    { title: 'Machines', cautions: machines() },
    { title: 'Weather stops', cautions: weather(system) },
  ];
}

const tick = (head: string, text: string): Caution => ({ head, text, tick: true });
const rule = (head: string, text: string): Caution => ({ head, text, tick: false });

function before(keepOuts: readonly string[]): Caution[] {
  const named = keepOuts.length > 0 ? ` On this plan: ${keepOuts.join('; ')}.` : '';
  return [
    rule(
      'Local codes first',
      'Local codes and licensed practice come first. Where they differ from this packet, they stand.',
    ),
    tick(
      'Call before you dig',
      'Call 811 (in the US) 2 to 3 business days before, as the state law says. A driven stake counts as digging unless state law says otherwise. Nearer to a locate mark than it says (18 to 24 in each side) no stake is driven and digging is by hand. 811 does not mark private irrigation and wiring.',
    ),
    tick(
      'No stakes here',
      `No stake over a located line, an irrigation main or lateral, a valve box, a drain or a wire.${named} A stake that falls there is not driven: dot the spot, hold tapes at the dot, take one off each count. A control: stop, and have the plan made anew with that ground kept out.`,
    ),
    tick(
      'Heads and boxes',
      'Every sprinkler head and valve box in the set-out area carries a flag. Before any machine starts, its driver has walked the passes: every head down and flush, every box shut.',
    ),
    tick(
      'Water off',
      'The irrigation programme is off, and stays off until the stake count is signed.',
    ),
  ];
}

function settingOut(): Caution[] {
  return [
    tick(
      'Tape zero and units',
      'Zero and units of every tape are checked before round 1 (sheet Controls).',
    ),
    rule(
      'Check over its limit',
      'Pull the stake, take both its readings again, set it again. Over again: stop, and check the two marks it is set from by their own rows. Grey rows marked over, and rows with two black squares, are less sure: take their readings twice.',
    ),
    tick(
      'Gloves, eyes, caps',
      'Whoever drives wears eye protection and gloves; nobody holds a stake that another hits. Caps for all pins are at hand: a pin gets its cap as soon as it stands.',
    ),
    rule(
      'Trip hazard',
      'Stakes, pins and strings are tripped over: walk, never run, inside the set-out area, and keep others out. Stakes stand upright and bright, strings come down as soon as the line is marked, tapes lie slack when nobody pulls.',
    ),
    rule(
      'Paint',
      'Marks on the turf not in a utility-locate colour: no red, yellow, orange, blue, green, purple, pink or white near locate marks. Ask before using any other.',
    ),
    rule(
      'Nothing left in the grass',
      'Stakes, pins, strings and flags are counted out and counted in (sheet What to load). What cannot be found stops the job: no machine enters until it is.',
    ),
    rule(
      'Order of work',
      'No powered machine enters the set-out area while a stake, a pin or a string stands in it. Lines are marked on the turf, everything is pulled, the count is signed; then machines.',
    ),
  ];
}

function machines(): Caution[] {
  return [
    rule(
      'Ears and eyes',
      'Hearing protection at every engine; eye protection at engines, trimmers and edgers.',
    ),
    rule(
      'Engine off',
      'Engine off and everything stopped before clearing a reel, a roller or a deck.',
    ),
    rule(
      'Discharge, backing',
      'Nobody stands in the discharge direction, inside the turning ground, or behind a machine that backs up (marked on its sheets): its driver looks behind first.',
    ),
    rule(
      'Rider',
      'Roll bar up with the belt on; no passengers; no wet slopes; keep back from drop-offs. Source: OSHA, riding mowers.',
    ),
  ];
}

/** OSHA heat index bands in °F, with their nearest whole °C. */
const BANDS = {
  'feet-inches': ['91', '91 to 103', '103 to 115', '115', '°F', '15 °F'],
  metric: ['33', '33 to 39', '39 to 46', '46', '°C', '8 °C'],
} as const;

function weather(system: LengthSystem): Caution[] {
  const [low, moderate, high, top, unit, sun] = BANDS[system];
  return [
    rule(
      'Heat',
      `Heat index under ${low} ${unit}: water and shade. ${moderate}: breaks, watch each other. ${high}: work and rest by a schedule, light work only. Over ${top} ${unit}: stop. Full sun adds up to ${sun}: go one band up. Water: about a quart (1 L) an hour each. Source: OSHA heat index guide; the stop over ${top} is our rule.`,
    ),
    rule(
      'Lightning',
      'Flash to bang 30 seconds or less: everyone off the field at once, away from poles, fences and carts. Back 30 minutes after the last flash or thunder; each new one starts the clock again. Source: college and high-school guides.',
    ),
  ];
}
