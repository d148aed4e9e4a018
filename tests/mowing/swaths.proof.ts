/**
 * The whole field on a raster of 0.1 ft: coverage of every patch that the wide mower lays, the wanted
 * lay, and the graphic. The quick version with large cells is in swaths.test.ts.
 */
import { expect, test } from 'vitest';
import { placeWord } from '../design/grass';
import { judge, windowOf } from '../design/raster';
import { layOut, layShare, type Over } from './lay-out';

const word = placeWord('Lanterns', 'pacifico', 150);

test.each<[string, Over]>([
  ['bands of one mower', {}],
  ['slanted bands, five-gang', { values: { bearing: 33 }, wide: 'five-gang-reel' }],
  ['straight fence panels', { field: { fenceShape: 'straight' } }],
  ['a word on quiet ground', { graphic: word }],
  [
    'a word on a box over slanted bands',
    {
      graphic: word,
      values: { bearing: 45 },
      design: { ground: { kind: 'quiet', shape: 'box', marginFt: 8 } },
    },
  ],
  ['a word counter-changed', { graphic: word, design: { ground: { kind: 'counter-change' } } }],
])('%s', (_, over) => {
  const { design, layout, widths } = layOut(over);
  const w = windowOf(-245, 60, 245, 400, 0.1);
  const rows = judge(design, layout.swaths, w, widths, 5);
  const wide = rows.filter((r) => r.tool === 'wide');
  for (const row of wide) expect(row.covered, row.id).toBeGreaterThanOrEqual(0.995);
  expect(layShare(rows)).toBeGreaterThanOrEqual(0.98);
  expect(layout.graphicCovered).toBeGreaterThanOrEqual(0.95);
  expect(layout.laidOutside).toBeLessThanOrEqual(0.01);
});
