/** Drawings of stakes with their numbers, in as many panels as it takes to read every one. */
import type { Box } from '../geometry/box';
import type { Point } from '../geometry/point';
import type { Stake, StakePlan } from '../stakeout/model';
import { drawBearings } from './draw-field';
import { drawLabels } from './draw-labels';
import { outlineFill, outlineLines, outlineMarks } from './draw-outline';
import { inkCircle, inkRing, inkStroke } from './ink';
import { boxRing } from './ink';
import { standingPoints, type Kit } from './kit';
import { BLACK, type Mark } from './marks';
import type { Disc } from './place-labels';
import { outlineParts, partStakes } from './outline-parts';
import { planPanels, type Panel } from './plan-panels';
import { controlSign, kindSign } from './symbols';
import { scaleBar, type ViewFrame } from './view-frame';

export const LABEL_SIZE = 8.5;
/** 1 in = 15 ft: letters of a word are told apart well. */
const LEAST_SCALE = 4.8;
/** Half widths of the signs: stakes named in the panel, and the others. */
const SIGN = 2.4;
const OTHER = 1.2;

export interface StakePanelOptions {
  readonly stakes: StakePlan;
  readonly named: readonly Stake[];
  readonly held: readonly string[];
  readonly width: number;
  readonly maxHeight: number;
  readonly show?: Box;
  /** Points per foot that no drawing goes beyond. */
  readonly mostScale?: number;
}

export function planStakePanels(kit: Kit, options: StakePanelOptions): Panel[] {
  const at = standingPoints(options.stakes);
  const lines = outlineLines(options.stakes, at);
  const named = new Set(options.named.map((stake) => stake.id));
  const groups = groupsOf(options.stakes);
  return planPanels(
    options.named.map((stake) => ({
      id: stake.id,
      at: stake.at,
      clear: clearOf(stake),
      group: groups.get(stake.id) ?? '',
      extent: bulgeAt(stake.at, lines),
    })),
    {
      metrics: kit.metrics,
      system: kit.plan.project.units,
      width: options.width,
      maxHeight: options.maxHeight,
      labelSize: LABEL_SIZE,
      leastScale: LEAST_SCALE,
      insets: false,
      scene: (frame) => ({
        discs: sceneDiscs(options.stakes, named, frame),
        lines: lines.map((line) => line.map(frame.toPaper)),
      }),
      ...(options.show ? { show: options.show } : {}),
      ...(options.mostScale === undefined ? {} : { mostScale: options.mostScale }),
    },
  );
}

/** The part of the outline that each stake belongs to, the first when it serves several. */
function groupsOf(stakes: StakePlan): ReadonlyMap<string, string> {
  const groups = new Map<string, string>();
  outlineParts(stakes).forEach((part, i) => {
    for (const id of partStakes(part)) if (!groups.has(id)) groups.set(id, String(i));
  });
  return groups;
}

/** How far up and down from a stake the outline that leaves it is shown, feet. */
const BULGE_FT = 12;

/** Swings bulge beyond their stakes: the ground above and below that they take. */
function bulgeAt(at: Point, lines: readonly (readonly Point[])[]): Box {
  const own = lines.filter((line) => line[0] === at || line[line.length - 1] === at);
  const ys = own.flat().map((p) => Math.min(at.y + BULGE_FT, Math.max(at.y - BULGE_FT, p.y)));
  return { minX: at.x, maxX: at.x, minY: Math.min(at.y, ...ys), maxY: Math.max(at.y, ...ys) };
}

const clearOf = (stake: Stake): number => (stake.kind === 'control' ? SIGN * 1.9 : SIGN * 1.2);

function sceneDiscs(stakes: StakePlan, named: ReadonlySet<string>, frame: ViewFrame): Disc[] {
  const fixed = stakes.controls.filter((control) => control.kind === 'fixed');
  return [
    ...stakes.stakes.map((stake) => ({
      at: frame.toPaper(stake.at),
      radius: named.has(stake.id) ? clearOf(stake) : OTHER,
    })),
    ...fixed.map((control) => ({ at: frame.toPaper(control.at), radius: 6 })),
  ];
}

/** The panel's marks, its window's top left at (0, 0). */
export function drawStakePanel(kit: Kit, panel: Panel, options: StakePanelOptions): Mark[] {
  const { frame } = panel;
  const { stakes } = options;
  const at = standingPoints(stakes);
  const inside: Mark[] = [
    outlineFill(stakes, at, frame),
    ...outlineMarks(stakes, at, frame),
    ...signMarks(options, new Set(panel.ids), frame),
  ];
  return [
    { kind: 'clip', clip: frame.window, marks: inside },
    ...drawLabels(panel.labels, LABEL_SIZE),
    ...drawBearings(frame, scaleBar(frame.scale, kit.plan.project.units)),
    inkRing(boxRing(frame.window), inkStroke(0.8)),
  ];
}

function signMarks(options: StakePanelOptions, shown: ReadonlySet<string>, frame: ViewFrame) {
  const { stakes, held } = options;
  const fixed = stakes.controls
    .filter((control) => control.kind === 'fixed')
    .flatMap((c) => controlSign(frame.toPaper(c.at), 9, true, held.includes(c.id)));
  const others = stakes.stakes.filter((stake) => !shown.has(stake.id) && !held.includes(stake.id));
  const first = stakes.stakes.filter((stake) => shown.has(stake.id) || held.includes(stake.id));
  return [
    ...fixed,
    ...others.flatMap((stake) => otherSign(stake, frame.toPaper(stake.at))),
    ...first.flatMap((stake) => signOf(stake, frame.toPaper(stake.at), held)),
  ];
}

/** Stakes that another drawing names. */
const otherSign = (stake: Stake, at: Point): Mark[] =>
  stake.kind === 'control' ? controlSign(at, 6, false, false) : [inkCircle(at, OTHER, BLACK, null)];

function signOf(stake: Stake, at: Point, held: readonly string[]): Mark[] {
  if (stake.kind === 'control') return controlSign(at, 8, false, held.includes(stake.id));
  return kindSign(stake.kind, at, SIGN);
}
