/** The chi-square distribution, for the test of a whole adjustment. */
import { SINGULAR } from '../geometry/tolerance';

/**
 * Chance that chi-square with `dof` degrees of freedom exceeds `value`: the upper regularised
 * incomplete gamma function, by its series below the mode and its continued fraction above
 * (Abramowitz & Stegun 6.5.29, 6.5.31; the fraction after Lentz). 1 without degrees of freedom.
 */
export function chiSquareAbove(value: number, dof: number): number {
  if (dof <= 0 || !(value > 0)) return 1;
  const a = dof / 2;
  const x = value / 2;
  const scale = Math.exp(a * Math.log(x) - x - logGamma(a));
  return x < a + 1 ? Math.max(0, 1 - scale * lowerSeries(a, x)) : scale * upperFraction(a, x);
}

function lowerSeries(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; term > sum * SINGULAR; n++) {
    term *= x / (a + n);
    sum += term;
  }
  return sum;
}

function upperFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = Infinity;
  let d = 1 / b;
  let product = d;
  for (let n = 1, change = 0; Math.abs(change - 1) > SINGULAR; n++) {
    const numerator = n * (a - n);
    b += 2;
    d = 1 / (b + numerator * d);
    c = b + numerator / c;
    change = c * d;
    product *= change;
  }
  return product;
}

/** ln Γ(x) for x > 0: Stirling's series, after raising x above 10. */
function logGamma(x: number): number {
  let shift = 0;
  let z = x;
  while (z < 10) shift += Math.log(z++);
  const inverse = 1 / (z * z);
  const series = (1 / 12 - inverse * (1 / 360 - inverse * (1 / 1260 - inverse / 1680))) / z;
  return (z - 0.5) * Math.log(z) - z + Math.log(2 * Math.PI) / 2 + series - shift;
}
