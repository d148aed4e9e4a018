/**
 * The outline as stakes and pieces in their ideal places: a chain or a circle for every contour, pins
 * shared where one serves several swings, and no two stakes too close. Conflicts are settled by
 * blocking a place or banning a link and fitting that contour again.
 */
import { pointDistance, type Point } from '../geometry/point';
import { bestBend } from './bend';
import { bestFreePin, pinServes, possiblePins, swingSense } from './choose-pin';
import type { Chain, Link } from './chain';
import { likeChain, type Likeness } from './congruent-contours';
import { fitChain, linkKey, type ChainRules } from './fit-chain';
import { circleServes, fitCircle } from './fit-circle';
import { LONGEST_SWING_FT, PLANNED_SPACING_FT } from './limits';
import type { LinkPrices } from './price-links';
import { sharePins } from './share-pins';
import { spacingAdd, spacingIndex, spacingNear, type SpacingIndex } from './spacing';
import { tracePoint, type Trace } from './trace';

export interface DraftStake {
  readonly at: Point;
  readonly kind: 'outline' | 'pin';
}

export type DraftPiece =
  | { readonly kind: 'string'; readonly from: number; readonly to: number; readonly link: Link }
  | {
      readonly kind: 'swing';
      readonly from: number;
      readonly to: number;
      readonly pin: number;
      readonly sense: 1 | -1;
      readonly link: Link;
    }
  | {
      readonly kind: 'bend';
      readonly from: number;
      readonly to: number;
      /** Of the mark from the middle, feet, right positive. */
      readonly offset: number;
      readonly link: Link;
    }
  | { readonly kind: 'circle'; readonly pin: number; readonly radius: number };

export interface DraftContour {
  readonly trace: Trace;
  /** The trace as the art has it, before lines that crossed were parted. */
  readonly art: Trace;
  readonly pieces: readonly DraftPiece[];
  readonly strained: boolean;
  readonly like: Likeness | null;
}

/** Stakes by number; contours that stakes cannot follow have no pieces. */
export interface Draft {
  readonly stakes: readonly DraftStake[];
  readonly contours: readonly DraftContour[];
}

/** One contour with the rules it has been given so far. Rules only ever tighten. */
export interface ContourTask {
  readonly art: Trace;
  /** What is fitted: the art, moved where it was parted from another line. */
  trace: Trace;
  readonly tube: Float64Array;
  /** Places moved apart from another line. */
  readonly parted: Uint8Array;
  readonly blocked: Uint8Array;
  readonly banned: Set<number>;
  readonly lenient: Uint8Array;
  /** Stakes that pins of this contour were found to collide with. */
  readonly noPins: Point[];
  circleAllowed: boolean;
  /** An earlier contour of the same shape, whose chain is taken where it may be. */
  readonly like: { readonly task: ContourTask; readonly mirrored: boolean } | null;
  /** The last fit under the present rules, or null when it has to be fitted again. */
  chain: Chain | null;
}

/** What holds for all contours. */
export interface PinGround {
  /** Whether a pin may stand there. */
  readonly mayPin: (p: Point) => boolean;
  readonly prices: LinkPrices;
}

const MOST_ROUNDS = 60;

/** A contour with nothing learnt yet and a tube of `tubeFt` all along. */
export function contourTask(
  trace: Trace,
  tubeFt: number,
  like: ContourTask['like'] = null,
): ContourTask {
  return {
    like,
    art: trace,
    trace,
    tube: new Float64Array(trace.count).fill(tubeFt),
    parted: new Uint8Array(trace.count),
    blocked: new Uint8Array(trace.count),
    banned: new Set(),
    lenient: new Uint8Array(trace.count),
    noPins: [],
    circleAllowed: true,
    chain: null,
  };
}

/** Fits all contours; the tasks keep what was learnt, so that a later call starts from there. */
export function draftOutline(tasks: readonly ContourTask[], ground: PinGround): Draft {
  for (let round = 0; ; round++) {
    // A shape that is fitted again is fitted again wherever it occurs.
    for (const task of tasks) if (task.like && !task.like.task.chain) task.chain = null;
    for (const task of tasks) refit(task, ground);
    const last = round >= MOST_ROUNDS;
    if (!last && settleNodes(tasks)) continue;
    const draft = placePins(tasks, ground, last);
    if (draft) return draft;
  }
}

function circleOf(task: ContourTask, ground: PinGround) {
  const circle = task.circleAllowed ? fitCircle(task.trace, task.tube) : null;
  return circle && ground.mayPin(circle.centre) ? circle : null;
}

function refit(task: ContourTask, ground: PinGround): void {
  if (task.chain) return;
  if (circleOf(task, ground)) {
    task.chain = { links: [], strained: false };
    return;
  }
  task.chain = chainOfLike(task);
  if (task.chain) return;
  const { prices } = ground;
  const rules: ChainRules = {
    ...task,
    prices,
    mayPin: (p) => ground.mayPin(p) && clearOf(task.noPins, p),
  };
  task.chain = fitChain(task.trace, rules);
  if (isFlat(task.chain)) task.chain = fitChain(task.trace, narrowed(rules));
  if (isFlat(task.chain)) task.chain = { links: [], strained: true };
}

/** The chain of the contour that this one is like, when every rule learnt here allows it. */
function chainOfLike({ like, art, trace, tube, blocked, banned }: ContourTask): Chain | null {
  const first = like?.task;
  if (trace !== art || first?.trace !== first?.art) return null;
  if (!first?.chain || first.chain.strained || first.chain.links.length === 0) return null;
  const n = trace.count;
  const wide = tube.every((half, k) => half >= first.tube[like!.mirrored ? (n - k) % n : k]!);
  const chain = likeChain(first.chain, n, like!.mirrored);
  const allowed = chain.links.every(
    ({ from, to }) => !blocked[from % n] && !banned.has(linkKey(trace, from, to)),
  );
  return wide && allowed ? chain : null;
}

const clearOf = (stakes: readonly Point[], p: Point): boolean =>
  stakes.every((s) => pointDistance(s, p) >= PLANNED_SPACING_FT);

/** Two strings there and back enclose nothing. */
const isFlat = (chain: Chain): boolean =>
  chain.links.length > 0 &&
  chain.links.length < 3 &&
  chain.links.every((link) => link.kind === 'string');

const narrowed = (rules: ChainRules): ChainRules => ({
  ...rules,
  tube: rules.tube.map((half) => half / 4),
  lenient: new Uint8Array(rules.lenient.length),
});

interface NodeTag {
  readonly task: ContourTask;
  readonly index: number;
}

/** Blocks one of each two chain nodes that stand too close; true when something changed. */
function settleNodes(tasks: readonly ContourTask[]): boolean {
  const index = spacingIndex<NodeTag>(PLANNED_SPACING_FT);
  const changed = new Set<ContourTask>();
  for (const task of tasks) {
    for (const link of task.chain?.links ?? []) {
      const node: NodeTag = { task, index: link.from % task.trace.count };
      const at = tracePoint(task.trace, node.index);
      const rival = spacingNear(index, at)[0];
      if (rival === undefined) spacingAdd(index, at, node);
      else changed.add(blockOne(rival.tag, node));
    }
  }
  for (const task of changed) task.chain = null;
  return changed.size > 0;
}

/** The corner stays; between equals the earlier one does. */
function blockOne(first: NodeTag, second: NodeTag): ContourTask {
  const keepSecond =
    second.task.trace.corners[second.index] === 1 && first.task.trace.corners[first.index] === 0;
  const [keep, lose] = keepSecond ? [second, first] : [first, second];
  const at = tracePoint(keep.task.trace, keep.index);
  const { trace, blocked } = lose.task;
  for (let i = 0; i < trace.count; i++) {
    if (lose.task === keep.task && i === keep.index) continue;
    if (Math.hypot(trace.x[i]! - at.x, trace.y[i]! - at.y) < PLANNED_SPACING_FT) blocked[i] = 1;
  }
  blocked[lose.index] = 1;
  return lose.task;
}

/** A link with the numbers of its two stakes. */
interface LinkEnds {
  readonly from: number;
  readonly to: number;
  readonly link: Link;
}

/** Working list of stakes while pins are placed. */
interface Placing {
  readonly stakes: DraftStake[];
  readonly near: SpacingIndex<number>;
  readonly ground: PinGround;
  /** Pins that serve several swings, by link. */
  shared: ReadonlyMap<Link, Point>;
}

/** Numbers the nodes and pins; null when a swing found no pin and its link has been banned. */
function placePins(tasks: readonly ContourTask[], ground: PinGround, last: boolean): Draft | null {
  const placing: Placing = {
    stakes: [],
    near: spacingIndex(PLANNED_SPACING_FT),
    ground,
    shared: new Map(),
  };
  const nodes = tasks.map((task) =>
    (task.chain?.links ?? []).map((link) =>
      addStake(placing, tracePoint(task.trace, link.from), 'outline'),
    ),
  );
  const swings = tasks.flatMap((task) =>
    (task.chain?.links ?? []).flatMap((link) => (link.kind === 'swing' ? [{ ...task, link }] : [])),
  );
  placing.shared = sharePins(swings, (p) => isFree(placing, p));
  let complete = true;
  const contours = tasks.map((task, i): DraftContour => {
    const pieces = placeContour(placing, task, nodes[i]!);
    if (pieces === null) complete = false;
    const like = task.like && { of: tasks.indexOf(task.like.task), mirrored: task.like.mirrored };
    const strained = task.chain?.strained ?? true;
    return { trace: task.trace, art: task.art, pieces: pieces ?? [], strained, like };
  });
  return complete || last ? { stakes: placing.stakes, contours } : null;
}

function addStake(placing: Placing, at: Point, kind: DraftStake['kind']): number {
  placing.stakes.push({ at, kind });
  spacingAdd(placing.near, at, placing.stakes.length - 1);
  return placing.stakes.length - 1;
}

function placeContour(
  placing: Placing,
  task: ContourTask,
  nodes: readonly number[],
): DraftPiece[] | null {
  const circle = circleOf(task, placing.ground);
  if (circle) {
    const pin = circlePin(placing, task, circle.centre);
    if (pin !== null) return [{ kind: 'circle', pin, radius: circle.radius }];
    task.circleAllowed = false;
    task.chain = null;
    return null;
  }
  const pieces: DraftPiece[] = [];
  let failed = false;
  task.chain!.links.forEach((link, i) => {
    const ends = { from: nodes[i]!, to: nodes[(i + 1) % nodes.length]!, link };
    const done = placeLink(placing, task, ends);
    if (done) pieces.push(done);
    else {
      failed = true;
      refuseLink(placing, task, link);
    }
  });
  if (failed) task.chain = null;
  return failed ? null : pieces;
}

/** A stake near the centre that serves as the pin (circles about one centre share it), or a new one. */
function circlePin(placing: Placing, task: ContourTask, centre: Point): number | null {
  for (const stake of spacingNear(placing.near, centre)) {
    if (circleServes(task.trace, task.tube, stake.at)) return stake.tag;
  }
  return isFree(placing, centre) ? addStake(placing, centre, 'pin') : null;
}

function placeLink(placing: Placing, task: ContourTask, ends: LinkEnds): DraftPiece | null {
  if (ends.link.kind === 'string') return { kind: 'string', ...ends };
  if (ends.link.kind === 'swing') return placeSwing(placing, task, ends);
  const offset = bestBend(task.trace, task.tube, ends.link);
  return offset === null ? null : { kind: 'bend', ...ends, offset };
}

/** Bans the link, and keeps later pins of this contour off whatever stood in its way. */
function refuseLink(placing: Placing, task: ContourTask, link: Link): void {
  task.banned.add(linkKey(task.trace, link.from, link.to));
  if (link.kind !== 'swing') return;
  for (const centre of possiblePins(task.trace, task.tube, link)) {
    for (const stake of spacingNear(placing.near, centre)) {
      if (clearOf(task.noPins, stake.at)) task.noPins.push(stake.at);
    }
  }
}

const isFree = (placing: Placing, p: Point): boolean =>
  placing.ground.mayPin(p) && spacingNear(placing.near, p).length === 0;

function placeSwing(placing: Placing, task: ContourTask, ends: LinkEnds): DraftPiece | null {
  const { trace, tube } = task;
  const shared = sharedPin(placing, task, ends);
  const meeting = placing.shared.get(ends.link);
  const place =
    shared !== null
      ? null
      : meeting && isFree(placing, meeting)
        ? meeting
        : bestFreePin(trace, tube, ends.link, (p) => isFree(placing, p));
  if (shared === null && place === null) return null;
  const pin = shared ?? addStake(placing, place!, 'pin');
  const sense = swingSense(trace, ends.link, placing.stakes[pin]!.at);
  return { kind: 'swing', ...ends, pin, sense };
}

/** A stake already there that serves as the pin. */
function sharedPin(placing: Placing, task: ContourTask, ends: LinkEnds): number | null {
  const { trace, tube } = task;
  const a = tracePoint(trace, ends.link.from);
  for (let i = 0; i < placing.stakes.length; i++) {
    if (i === ends.from || i === ends.to) continue;
    const at = placing.stakes[i]!.at;
    if (Math.abs(at.x - a.x) > LONGEST_SWING_FT || Math.abs(at.y - a.y) > LONGEST_SWING_FT)
      continue;
    if (pinServes(trace, tube, ends.link, at)) return i;
  }
  return null;
}
