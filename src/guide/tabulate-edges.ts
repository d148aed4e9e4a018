/** Running distances: where every band edge and every guide string meets an edge of the grass. */
import { roundReading, type LengthSystem } from '../base/quantity';
import { inches, type Feet } from '../base/units';
import { layFrame, outOfFrame } from '../pattern/lay-frame';
import type { Field } from '../field/model';
import { angleDifference, vectorAngle } from '../geometry/angle';
import { segmentLength, type PathSegment } from '../geometry/arc';
import { pointDistance, pointSubtract, type Point } from '../geometry/point';
import { SINGULAR } from '../geometry/tolerance';
import { crossEdges, edgeStart, type GrassEdge } from './grass-edges';
import type { EdgeMark, EdgeName, EdgeTable, GuideFamily, GuideString } from './model';

/** One table for each edge of the grass that a band edge or a string meets. */
export function tabulateEdges(
  field: Field,
  edges: readonly GrassEdge[],
  families: readonly GuideFamily[],
  strings: readonly GuideString[],
  system: LengthSystem,
): EdgeTable[] {
  const bands = families.flatMap((family) => bandMarks(edges, family, system));
  const stakes = strings.flatMap(({ from, to }) =>
    [from, to].map(({ id, edge, along, at }): Placed => ({
      edge,
      name: id,
      kind: 'stake',
      along,
      at,
    })),
  );
  return edges.flatMap((edge) => {
    const marks = [...bands, ...stakes]
      .filter((mark) => mark.edge === edge.name)
      .sort((a, b) => a.along.ft - b.along.ft);
    if (marks.length === 0) return [];
    return [
      {
        edge: edge.name,
        marks: marks.map(({ name, kind, along, at }) => ({ name, kind, along, at })),
        total: roundReading(edge.lengthFt, system),
        zeroFromHome: roundReading(pointDistance(field.bases.home, edgeStart(edge)), system),
        zeroFromPole: poleReading(field, edge, system),
        pinEveryFt: pinSpacing(edge),
      },
    ];
  });
}

type Placed = EdgeMark & { readonly edge: EdgeName };

function bandMarks(
  edges: readonly GrassEdge[],
  family: GuideFamily,
  system: LengthSystem,
): Placed[] {
  const frame = layFrame(family.bearingDeg);
  return family.edges.flatMap(({ name, offsetFt }) =>
    crossEdges(edges, outOfFrame(frame, { x: offsetFt, y: 0 }), family.bearingDeg).map(
      ({ edge, alongFt, at }): Placed => ({
        edge,
        name,
        kind: 'band',
        along: roundReading(alongFt, system),
        at,
      }),
    ),
  );
}

/** The pole of the foul line on which the edge has its zero at the track side. */
function poleReading(field: Field, edge: GrassEdge, system: LengthSystem) {
  const poles: Partial<Record<EdgeName, Point>> = {
    track: field.poles.left,
    'left-line': field.poles.left,
    'right-line': field.poles.right,
  };
  const pole = poles[edge.name];
  return pole ? roundReading(pointDistance(pole, edgeStart(edge)), system) : null;
}

/** What the chords between the pins may cut off a whole curved edge. */
const CHORD_LOSS: Feet = inches(0.25);

/**
 * A tape pulled straight between pins s apart on a circle of radius R is short by s² ÷ 24 R² of its
 * length (the first term of arc less chord); over the whole edge by no more than `CHORD_LOSS`.
 */
function pinSpacing({ path }: GrassEdge): Feet | null {
  const bend = path.reduce((sum, s, i) => sum + bendOf(s) + turnBefore(path[i - 1], s), 0);
  return bend < SINGULAR ? null : Math.sqrt((24 * CHORD_LOSS) / bend);
}

/** Length ÷ R² of an arc. */
const bendOf = (s: PathSegment): number =>
  s.kind === 'arc' ? segmentLength(s) / (s.radius * s.radius) : 0;

/** The same of a curve that is drawn as short straight pieces, at the turn between two of them. */
function turnBefore(before: PathSegment | undefined, s: PathSegment): number {
  if (before?.kind !== 'line' || s.kind !== 'line') return 0;
  const [a, b] = [before, s].map(({ from, to }) => vectorAngle(pointSubtract(to, from)));
  const apart = (segmentLength(before) + segmentLength(s)) / 2;
  return angleDifference(a!, b!) ** 2 / apart;
}
