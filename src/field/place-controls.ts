/** The fixed points tapes are pulled from, with what the tape touches and how well each is known. */
import type { Point } from '../geometry/point';
import { foulPoint } from './foul-lines';
import type { Bases, Control, Covariance, FieldSpec, MeasuredPole, TouchPicture } from './model';
import { socketCentre } from './place-bases';

/** Plate, bases, and each pole whose distance has been measured. */
export function placeControls(spec: FieldSpec, bases: Bases): Control[] {
  const controls = [
    control('HP', 'Home plate', 'rear point of home plate', 'plate-point', bases.home, spec),
    cornerBase(spec, bases.first, 'first'),
    control('2B', 'Second base', secondTouch(spec), 'second-centre', bases.second, spec),
    cornerBase(spec, bases.third, 'third'),
  ];
  if (spec.poles.left) controls.push(poleControl('left', spec.poles.left));
  if (spec.poles.right) controls.push(poleControl('right', spec.poles.right));
  return controls;
}

/** Equal and independent in x and y; square inches. */
const roundCovariance = (sigmaIn: number): Covariance => ({
  xx: sigmaIn * sigmaIn,
  xy: 0,
  yy: sigmaIn * sigmaIn,
});

function control(
  id: string,
  name: string,
  touch: string,
  picture: TouchPicture,
  at: Point,
  spec: FieldSpec,
): Control {
  const covariance = roundCovariance(spec.controlSigmaIn);
  return { id, name, touch, picture, kind: 'fixed', at, covariance };
}

const secondTouch = (spec: FieldSpec): string =>
  spec.bases === 'in'
    ? 'centre of second base, base in place'
    : 'centre of the anchor socket of second base, base out';

function cornerBase(spec: FieldSpec, corner: Point, base: 'first' | 'third'): Control {
  const id = base === 'first' ? '1B' : '3B';
  const name = base === 'first' ? 'First base' : 'Third base';
  if (spec.bases === 'in') {
    const touch = `outer back corner of ${base} base, foul-line side, base in place`;
    return control(id, name, touch, `base-corner-${base}`, corner, spec);
  }
  const touch = `centre of the anchor socket of ${base} base, base out`;
  const at = socketCentre(corner, spec.baseSizeIn);
  return control(id, name, touch, `socket-centre-${base}`, at, spec);
}

function poleControl(side: 'left' | 'right', pole: MeasuredPole): Control {
  const left = side === 'left';
  return {
    id: left ? 'LP' : 'RP',
    name: left ? 'Left foul pole' : 'Right foul pole',
    touch: `inner face of the ${side} foul pole, at the ground`,
    picture: left ? 'pole-left' : 'pole-right',
    kind: 'fixed',
    at: foulPoint(side, pole.distanceFt),
    covariance: roundCovariance(pole.sigmaIn),
  };
}
