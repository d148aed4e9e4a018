/**
 * What a steel tape's temperature, pull and sag do to a pull, feet. A correction is added to what was
 * read to have the distance on the ground; to set a distance out it is taken off what is printed.
 * Formulas as in any book on taping, for example Wolf & Ghilani, *Elementary Surveying*.
 */

/** The tape, and how it is used on the day. */
export interface SteelUse {
  readonly temperatureF: number;
  readonly pullLb: number;
  /** Longest stretch hanging free between supports, feet; 0: the tape lies on the grass. */
  readonly spanFt: number;
  /** Temperature and pull, lying flat, at which the tape shows its true length. */
  readonly standardF: number;
  readonly standardPullLb: number;
  readonly weightLbPerFt: number;
  /** Cross-section of the ribbon. */
  readonly sectionSqIn: number;
}

/** Steel lengthens by this share per degree Fahrenheit (textbooks: 6.45 to 6.5 millionths). */
const EXPANSION_PER_F = 6.45 / 1_000_000;
/** Young's modulus of tape steel, pounds per square inch. */
const MODULUS_PSI = 29_000_000;

/**
 * A common open-reel tape, 3/8 in by 0.012 in, true at 68 °F and 20 lb. Assumption: the day is as the
 * tape was made, it lies on the grass; to be typed over.
 */
export const DEFAULT_STEEL: SteelUse = {
  temperatureF: 68,
  pullLb: 20,
  spanFt: 0,
  standardF: 68,
  standardPullLb: 20,
  weightLbPerFt: 0.0153,
  sectionSqIn: 0.0045,
};

/** k·(T − Ts)·L. */
export const temperatureCorrection = (
  ft: number,
  temperatureF: number,
  standardF: number,
  expansionPerF = EXPANSION_PER_F,
): number => expansionPerF * (temperatureF - standardF) * ft;

/** (P − Ps)·L / (A·E). */
export const pullCorrection = (
  ft: number,
  pullLb: number,
  standardPullLb: number,
  sectionSqIn: number,
): number => ((pullLb - standardPullLb) * ft) / (sectionSqIn * MODULUS_PSI);

/** −w²·L³ / (24·P²) for each stretch between supports, whole spans first and what is left. */
export function sagCorrection(
  ft: number,
  spanFt: number,
  weightLbPerFt: number,
  pullLb: number,
): number {
  if (!(spanFt > 0)) return 0;
  const whole = Math.floor(ft / spanFt);
  const rest = ft - whole * spanFt;
  return -(weightLbPerFt ** 2 * (whole * spanFt ** 3 + rest ** 3)) / (24 * pullLb ** 2);
}

/** Distance on the ground less reading, feet, of a pull that reads `ft`. */
export const steelCorrection = (ft: number, use: SteelUse): number =>
  temperatureCorrection(ft, use.temperatureF, use.standardF) +
  pullCorrection(ft, use.pullLb, use.standardPullLb, use.sectionSqIn) +
  sagCorrection(ft, use.spanFt, use.weightLbPerFt, use.pullLb);

/** Readings up to `upToFt` are pulled `changeFt` longer than printed (shorter when negative). */
export interface SteelRow {
  readonly upToFt: number;
  readonly changeFt: number;
}

/**
 * What to add to printed readings so that the stake stands at the printed distance, in steps of
 * `stepFt`, for whole feet up to `limitFt`; runs of equal change are one row.
 */
export function steelRows(use: SteelUse, limitFt: number, stepFt: number): SteelRow[] {
  const rows: SteelRow[] = [];
  for (let ft = 1; ft <= limitFt; ft++) {
    const steps = Math.round(-steelCorrection(ft, use) / stepFt);
    const changeFt = steps === 0 ? 0 : steps * stepFt;
    const last = rows[rows.length - 1];
    if (last?.changeFt === changeFt) rows[rows.length - 1] = { upToFt: ft, changeFt };
    else rows.push({ upToFt: ft, changeFt });
  }
  return rows;
}
