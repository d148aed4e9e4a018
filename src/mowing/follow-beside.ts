/** Which passes of a tour must come after one that they are laid beside, and when each may come. */
import { areBeside } from './beside';
import type { Drivable } from './drive-machine';
import type { Follow } from './order-following';
import type { Swath } from './swath-model';

/** The rule for `stops`: bands beside one another, of the same mowing, `laid` among those driven. */
export function followBeside(stops: readonly Drivable[], laid: readonly Swath[]): Follow<Drivable> {
  const bands = stops.filter(({ swath }) => swath.band !== undefined);
  const beside = new Map(
    bands.map((stop) => [stop, bands.filter((other) => isBeside(stop.swath, other.swath))]),
  );
  return {
    besideOf: (stop) => beside.get(stop) ?? [],
    isBound: (stop) => beside.has(stop),
    isLaid: (stop) => laid.some((swath) => isBeside(swath, stop.swath)),
  };
}

const isBeside = (a: Swath, b: Swath): boolean => a !== b && a.group === b.group && areBeside(a, b);
