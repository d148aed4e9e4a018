import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point';
import { readFontMetrics } from '../../src/sheets/fonts';
import type { Mark } from '../../src/sheets/marks';
import { paperOf } from '../../src/sheets/paper';
import { groupPasses } from '../../src/sheets/pass-groups';
import { drawPassPanel, planPassPanels } from '../../src/sheets/pass-panels';
import { planFixture } from './plan-fixture';
import { sheetFonts } from './sheet-fonts';

const plan = planFixture();
const kit = { plan, paper: paperOf('letter'), metrics: readFontMetrics(sheetFonts()) };
const groups = groupPasses(plan.passes, 'feet-inches');

const flat = (marks: readonly Mark[]): Mark[] =>
  marks.flatMap((m) => (m.kind === 'clip' ? flat(m.marks) : [m]));
const middle = (ring: readonly Point[]): Point => ({
  x: ring.reduce((n, p) => n + p.x, 0) / ring.length,
  y: ring.reduce((n, p) => n + p.y, 0) / ring.length,
});

describe('a drawing of passes', () => {
  it.each(groups.map((g) => [g.phase, g] as const))(
    'of the %s rings the start and shows the gate, or the way to it',
    (_, group) => {
      for (const panel of planPassPanels(kit, group, 400)) {
        const marks = flat(drawPassPanel(kit, group, panel));
        const start = panel.frame.toPaper(group.passes[0]!.line[0]!);
        const rings = marks.filter(
          (m) =>
            m.kind === 'circle' && Math.hypot(m.centre.x - start.x, m.centre.y - start.y) < 0.01,
        );
        expect(rings).toHaveLength(2);
        const gate = panel.frame.toPaper(plan.project.mowing.gate);
        const { minX, maxX, minY, maxY } = panel.frame.window;
        const centre = { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
        const black = marks.flatMap((m) =>
          m.kind === 'fill' && m.grey === 0 && m.rings[0]!.length === 4
            ? [middle(m.rings[0]!)]
            : [],
        );
        const isOnTheWay = black.some((at) => {
          const inside = at.x > minX && at.x < maxX && at.y > minY && at.y < maxY;
          const cross =
            (at.x - centre.x) * (gate.y - centre.y) - (at.y - centre.y) * (gate.x - centre.x);
          const off = Math.abs(cross) / Math.hypot(gate.x - centre.x, gate.y - centre.y);
          return inside && off < 0.5;
        });
        expect(isOnTheWay).toBe(true);
      }
    },
  );
});
