/** A guard against scribbles: lines that cross each other hundreds of thousands of times. */
import { affineApply } from '../../geometry/affine';
import type { Point } from '../../geometry/point';
import { segmentIntersection } from '../../geometry/segment';
import { seededRandom } from '../../base/random';
import { MAX_CROSSINGS, MAX_TURNS } from './limits';
import type { PaintItem } from './paint-item';

/** Pairs of lines tried; all of them when there are no more. */
const SAMPLES = 100_000;

/**
 * Says in words why the painted shapes would take too long to untangle, or null. Crossings are
 * estimated from a seeded sample of pairs: of all pairs, the same share crosses.
 */
export function checkCrossings(items: readonly PaintItem[]): string | null {
  const turns = items.filter((item, i) => i > 0 && items[i - 1]!.tone !== item.tone).length;
  if (turns > MAX_TURNS) return `dark and white shapes take turns more than ${MAX_TURNS} times`;
  const crossings = estimateCrossings(items.flatMap(chordsOf));
  return crossings > MAX_CROSSINGS
    ? `its lines cross each other more than ${MAX_CROSSINGS} times`
    : null;
}

type Chord = readonly [Point, Point];

/** Straight lines between the ends of every curve, in root units; twice for the two sides of a stroke. */
function chordsOf(item: PaintItem): Chord[] {
  const chords = item.outline.flatMap((sub) => {
    const points = [sub.start, ...sub.curves.map((c) => c.to)].map((p) => affineApply(item.map, p));
    return points.slice(1).map((p, i): Chord => [points[i]!, p]);
  });
  return item.brush.kind === 'stroke' ? [...chords, ...chords] : chords;
}

function estimateCrossings(chords: readonly Chord[]): number {
  const pairs = (chords.length * (chords.length - 1)) / 2;
  if (pairs <= MAX_CROSSINGS) return 0;
  return pairs <= SAMPLES ? countCrossings(chords) : (sampleCrossings(chords) / SAMPLES) * pairs;
}

function countCrossings(chords: readonly Chord[]): number {
  let found = 0;
  chords.forEach((a, i) => {
    for (let j = 0; j < i; j++) if (crosses(a, chords[j]!)) found += 1;
  });
  return found;
}

function sampleCrossings(chords: readonly Chord[]): number {
  const random = seededRandom(1);
  let found = 0;
  for (let i = 0; i < SAMPLES; i++) {
    const a = chords[random.integer(chords.length)]!;
    if (crosses(a, chords[random.integer(chords.length)]!)) found += 1;
  }
  return found;
}

/** Crossing inside both lines: meeting at an end, as neighbours do, does not count. */
function crosses(a: Chord, b: Chord): boolean {
  const hit = segmentIntersection(a[0], a[1], b[0], b[1]);
  return hit !== null && hit.t > 0 && hit.t < 1 && hit.u > 0 && hit.u < 1;
}
