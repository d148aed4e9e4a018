/** Whether a seat as typed can be looked from. */
import { problem, type Problem } from '../base/result';
import { pointDistance } from '../geometry/point';
import type { SeatSpec } from './model';

const LOWEST_EYE_FT = 2;
const HIGHEST_EYE_FT = 1000;
const NEAREST_LOOK_FT = 1;

/** Problems `seat-height` and `seat-look`; `where` names the seat's place in the project. */
export function checkSeat(seat: SeatSpec, where: string): Problem[] {
  const problems: Problem[] = [];
  if (!(seat.eyeHeightFt >= LOWEST_EYE_FT && seat.eyeHeightFt <= HIGHEST_EYE_FT)) {
    problems.push(
      problem(
        'seat-height',
        `${where}.eyeHeightFt`,
        `an eye ${seat.eyeHeightFt} ft above the grass sees no pattern`,
        `give a height from ${LOWEST_EYE_FT} to ${HIGHEST_EYE_FT} ft`,
      ),
    );
  }
  if (!(pointDistance(seat.at, seat.lookAt) >= NEAREST_LOOK_FT)) {
    problems.push(
      problem(
        'seat-look',
        `${where}.lookAt`,
        'the seat looks at its own place',
        'give a point on the field that it looks at, for example centre field',
      ),
    );
  }
  return problems;
}
