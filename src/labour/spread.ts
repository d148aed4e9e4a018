/** From low, likely and high to a distribution of times. */
import type { Rate } from './model';

/** 90 % point of the standard normal. Source: NIST/SEMATECH e-Handbook, 1.3.6.7.1. */
export const NORMAL_90 = 1.2815515655446004;

/**
 * Mean (a + 4m + b) ÷ 6 and standard deviation (b − a) ÷ 6. Source: PERT; Malcolm et al. 1959,
 * Operations Research 7.
 */
export const pertMoments = ({
  low,
  likely,
  high,
}: Pick<Rate, 'low' | 'likely' | 'high'>): { readonly mean: number; readonly sd: number } => ({
  mean: (low + 4 * likely + high) / 6,
  sd: (high - low) / 6,
});

/** ln of the time is normal with mean `mu` and standard deviation `sigma`. */
export interface Lognormal {
  readonly mu: number;
  readonly sigma: number;
}

/** The lognormal with this mean (above 0) and standard deviation. */
export function lognormalOf(mean: number, sd: number): Lognormal {
  const variance = Math.log1p((sd / mean) ** 2);
  return { mu: Math.log(mean) - variance / 2, sigma: Math.sqrt(variance) };
}

/** The time that is `z` standard normals out. */
export const lognormalAt = ({ mu, sigma }: Lognormal, z: number): number =>
  Math.exp(mu + sigma * z);

/** Quantile of sorted values, linear between them (type 7 of Hyndman & Fan 1996). */
export function quantile(sorted: ArrayLike<number>, share: number): number {
  const at = share * (sorted.length - 1);
  const below = Math.floor(at);
  const above = Math.min(below + 1, sorted.length - 1);
  return sorted[below]! + (at - below) * (sorted[above]! - sorted[below]!);
}
