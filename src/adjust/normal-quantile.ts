/** The standard normal distribution, for limits of many readings taken together. */
import { chiSquareAbove } from './chi-square';

/** Halvings of the bracket: past the last bit of a double. */
const HALVINGS = 60;

/**
 * The size that a standard normal number exceeds, either way, with chance `alpha` (0 to 1): 3.2905 at
 * 0.001. By halving, since its square is chi-square with one degree of freedom.
 */
export function twoSidedLimit(alpha: number): number {
  let low = 0;
  let high = 40;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (chiSquareAbove(middle * middle, 1) > alpha) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
