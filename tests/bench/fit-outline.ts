/** Times the fitting of one long contour, best of three: smooth and ragged, 5,000 and 50,000 vertices. */
import { seededRandom } from '../../src/base/random';
import { contourTask } from '../../src/stakeout/draft-outline';
import { fitChain } from '../../src/stakeout/fit-chain';
import { DEFAULT_MINUTES } from '../../src/stakeout/minutes';
import { linkPrices } from '../../src/stakeout/price-links';
import { plannedTubeFt, traceContour } from '../../src/stakeout/trace';

const now = (): number => Number(process.hrtime.bigint()) / 1e9;

/** A lobed contour about 80 ft across, each vertex off by up to half of `raggedFt`. */
function lobes(vertices: number, raggedFt: number) {
  const random = seededRandom(3);
  return Array.from({ length: vertices }, (_, i) => {
    const a = (i / vertices) * 2 * Math.PI;
    const waves = 0.3 * Math.sin(3 * a) + 0.12 * Math.sin(11 * a) + 0.05 * Math.sin(37 * a);
    const r = 40 * (1 + waves) + raggedFt * (random.uniform() - 0.5);
    return { x: r * Math.cos(a), y: 250 + r * Math.sin(a) };
  });
}

function timeFit(vertices: number, raggedFt: number): { seconds: number; pieces: number } {
  const ring = lobes(vertices, raggedFt);
  let seconds = Infinity;
  let pieces = 0;
  for (let run = 0; run < 3; run++) {
    const started = now();
    const task = contourTask(traceContour(ring, 0), plannedTubeFt(3));
    const chain = fitChain(task.trace, {
      ...task,
      mayPin: () => true,
      prices: linkPrices(DEFAULT_MINUTES),
    });
    seconds = Math.min(seconds, now() - started);
    pieces = chain.links.length;
  }
  return { seconds, pieces };
}

for (const vertices of [5000, 50_000]) {
  for (const raggedFt of [0, 0.1]) {
    const { seconds, pieces } = timeFit(vertices, raggedFt);
    const line = { step: 'fit', vertices, raggedFt, seconds: Number(seconds.toFixed(3)), pieces };
    process.stdout.write(`${JSON.stringify(line)}\n`);
  }
}
