/** Instances of the asymmetric travelling-salesman problem from files. */
import type { CostMatrix } from '../../src/tour/model';

export interface Instance {
  readonly name: string;
  readonly matrix: CostMatrix;
  /** Whole numbers: then a bound may be rounded up. */
  readonly whole: boolean;
  /** The proven optimum, where the file or the literature gives one. */
  readonly known: number | null;
}

/**
 * Optima of instances of TSPLIB (G. Reinelt, ORSA Journal on Computing 3, 1991). Those of ft70, ftv70,
 * ftv170, kro124p and the rbg are from memory.
 */
const TSPLIB_OPTIMA: Readonly<Record<string, number>> = {
  br17: 39,
  ft53: 6905,
  ft70: 38673,
  ftv33: 1286,
  ftv35: 1473,
  ftv38: 1530,
  ftv44: 1613,
  ftv47: 1776,
  ftv55: 1608,
  ftv64: 1839,
  ftv70: 1950,
  ftv170: 2755,
  kro124p: 36230,
  p43: 5620,
  rbg323: 1326,
  rbg358: 1163,
  rbg403: 2465,
  rbg443: 2720,
  ry48p: 14422,
};

/** Throws an error that says what is wrong with the text. */
export function readInstance(file: string, text: string): Instance {
  return file.endsWith('.json') ? readJson(file, text) : readTsplib(file, text);
}

/** `{ name, cost: number[][], optimum? }`, the diagonal unused. */
function readJson(file: string, text: string): Instance {
  const given = JSON.parse(text) as { name?: unknown; cost?: unknown; optimum?: unknown };
  if (!Array.isArray(given.cost)) throw new Error('"cost" is not a list of rows');
  const rows = given.cost as unknown[];
  return {
    name: typeof given.name === 'string' ? given.name : file,
    ...squareOf(rows.flat(), rows.length),
    known: typeof given.optimum === 'number' ? given.optimum : null,
  };
}

/** TSPLIB 95, type ATSP, EXPLICIT weights as a FULL_MATRIX. */
function readTsplib(file: string, text: string): Instance {
  const field = (name: string): string | undefined =>
    new RegExp(`^\\s*${name}\\s*:\\s*(.*?)\\s*$`, 'm').exec(text)?.[1];
  const format = field('EDGE_WEIGHT_FORMAT');
  if (format !== 'FULL_MATRIX') throw new Error(`EDGE_WEIGHT_FORMAT is ${format ?? 'missing'}`);
  const body = text.split('EDGE_WEIGHT_SECTION')[1]?.split('EOF')[0] ?? '';
  const name = field('NAME') ?? file;
  const numbers = body.trim().split(/\s+/).map(Number);
  return {
    name,
    ...squareOf(numbers, Number(field('DIMENSION'))),
    known: TSPLIB_OPTIMA[name] ?? null,
  };
}

function squareOf(values: readonly unknown[], count: number) {
  if (!(count >= 1) || values.length !== count * count) {
    throw new Error(`${values.length} costs do not make ${count} rows of ${count}`);
  }
  const cost = Float64Array.from(values as number[]);
  for (let i = 0; i < count; i++) cost[i * count + i] = 0;
  if (!cost.every((c) => c >= 0 && c < Infinity))
    throw new Error('a cost is negative or no number');
  return { matrix: { count, cost }, whole: cost.every(Number.isInteger) };
}
