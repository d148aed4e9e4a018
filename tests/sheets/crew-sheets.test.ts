/** What a crew reads before the first stake, held against the plan from the drawn marks. */
import { beforeAll, describe, expect, it } from 'vitest';
import { listInventory } from '../../src/labour/list-inventory';
import type { Plan } from '../../src/plan/model';
import { composePacket } from '../../src/sheets/compose-packet';
import { readFontMetrics } from '../../src/sheets/fonts';
import { loadPages } from '../../src/sheets/pages/load-page';
import { stakePages } from '../../src/sheets/pages/stake-pages';
import { paperOf } from '../../src/sheets/paper';
import type { Mark, PolylineMark, Sheet } from '../../src/sheets/marks';
import { leastShownIn } from '../../src/sheets/check-reach';
import { textMarks } from '../../src/sheets/printable';
import { BEND_DASH, EMPTY_DASH, SWING_DASH, WALK_DASH } from '../../src/sheets/symbols';
import type { Stake } from '../../src/stakeout/model';
import { planFixture } from './plan-fixture';
import { sheetFonts } from './sheet-fonts';

const fonts = sheetFonts();
const metrics = readFontMetrics(fonts);
type Marked = Pick<Sheet, 'marks'>;
const texts = (sheet: Marked): string[] => textMarks(sheet.marks).map((mark) => mark.text);
const wordsOf = (sheets: readonly Marked[]): string => sheets.flatMap(texts).join(' ');

/** Every polyline, also inside clipped drawings. */
const polylines = (marks: readonly Mark[]): PolylineMark[] =>
  marks.flatMap((mark) =>
    mark.kind === 'polyline' ? [mark] : mark.kind === 'clip' ? polylines(mark.marks) : [],
  );

const isWalk = (line: PolylineMark): boolean => line.stroke.dash?.join() === WALK_DASH.join();

let plan: Plan;
let sheets: Sheet[];
beforeAll(() => {
  plan = planFixture();
  sheets = composePacket(plan, fonts);
});
const titled = (title: string) => sheets.filter((sheet) => sheet.title.startsWith(title));

describe('the sheet of what to load', () => {
  it('comes before the controls and prints every item with its figure and its boxes', () => {
    const at = sheets.findIndex((sheet) => sheet.title.startsWith('What to load'));
    expect(at).toBeLessThan(sheets.findIndex((sheet) => sheet.title === 'Controls'));
    const marks = textMarks(sheets[at]!.marks);
    const items = listInventory(plan.stakes);
    for (const item of items) {
      const row = marks.filter((mark) => mark.text === item.note)[0]!;
      const line = marks.filter((mark) => mark.at.y === row.at.y).map((mark) => mark.text);
      const quantity = item.unit === 'ft' ? `${item.quantity}'` : String(item.quantity);
      expect(line.slice(0, 3)).toEqual([quantity, item.name, item.note]);
    }
    const boxes = polylines(sheets[at]!.marks).filter((line) => line.closed && isSquare(line, 12));
    expect(boxes).toHaveLength(2 * items.length - items.filter((item) => item.usedUp).length);
  });

  it('gives at every hold point the number that was loaded', () => {
    const loaded = listInventory(plan.stakes).find((item) => item.id === 'stakes-all')!.quantity;
    expect(loaded).toBe(plan.stakes!.stakes.length);
    const holds = sheets.filter((sheet) => texts(sheet).includes('= stakes in'));
    expect(holds.length).toBeGreaterThan(0);
    for (const sheet of holds) expect(wordsOf([sheet])).toContain(`pin and stake: ${loaded} on`);
  });

  it.each([2, 3, 4] as const)('says where each of a crew of %i stands', (crew) => {
    const stakes = { ...plan.stakes!, spec: { ...plan.stakes!.spec, crew } };
    const kit = { plan: { ...plan, stakes }, paper: paperOf('letter'), metrics };
    const load = loadPages(kit, stakes).drafts[0]!;
    const who = texts(load).filter((text) => /^[A-D]$/.test(text));
    expect(who).toEqual(['A', 'B', 'C', 'D'].slice(0, crew));
    const heads = wordsOf(stakePages(kit, stakes, 1, []));
    const [a, b] = stakes.rounds.find((round) => round.from !== null)!.from!;
    expect(heads).toContain(
      crew === 2 ? `held at ${a} and ${b} by an awl or a weight;` : `A at ${a}, B at ${b},`,
    );
  });
});

const isSquare = (line: PolylineMark, size: number): boolean => {
  const [xs, ys] = [line.points.map((p) => p.x), line.points.map((p) => p.y)];
  const width = Math.max(...xs) - Math.min(...xs);
  return Math.abs(width - size) < 0.01 && Math.abs(Math.max(...ys) - Math.min(...ys) - size) < 0.01;
};

describe('how-to boxes', () => {
  const TITLES = {
    ties: 'Ties: two tapes',
    line: 'Line: one tape',
    offset: 'Offset from a line',
    chord: 'Chord: offset at the middle',
    string: 'String',
    swing: 'Swing about a pin',
    circle: 'Full circle',
    bend: 'Bend between two stakes',
  };

  it('stand once for every way and piece that this packet uses, and for no other', () => {
    const stakes = plan.stakes!;
    const used = new Set<string>([
      ...stakes.stakes.map((stake) => stake.set.method),
      ...stakes.contours.flatMap((contour) => contour.pieces.map((piece) => piece.kind)),
    ]);
    const all = sheets.flatMap(texts);
    for (const [id, title] of Object.entries(TITLES))
      expect([id, all.filter((text) => text === title).length]).toEqual([id, used.has(id) ? 1 : 0]);
    expect(all.filter((text) => text === 'Then the check')).toHaveLength(1);
  });

  it('come before the first row that needs them', () => {
    const page = (text: string) => sheets.findIndex((sheet) => texts(sheet).includes(text));
    const firstStake = sheets.findIndex((sheet) => texts(sheet).includes('check'));
    expect(page(TITLES.ties)).toBeLessThanOrEqual(firstStake);
    const list = titled('Outline, strings')[0]!;
    expect(texts(list).indexOf(TITLES.string)).toBeGreaterThan(-1);
    expect(texts(list).indexOf(TITLES.string)).toBeLessThan(texts(list).indexOf('piece'));
  });
});

describe("the marker's walk", () => {
  it('goes through every stake of the round in setting order, in its drawing', () => {
    const { rounds, stakes } = plan.stakes!;
    const walks = titled('Stakes').flatMap((sheet) => polylines(sheet.marks).filter(isWalk));
    const wanted = rounds.filter((round) => round.stakes.length > 1);
    expect(walks).toHaveLength(wanted.length);
    wanted.forEach((round, i) => {
      const ground = round.stakes.map((id) => stakes.find((stake) => stake.id === id)!.at);
      const [g0, g1] = [ground[0]!, ground[ground.length - 1]!];
      const { points } = walks[i]!;
      const [p0, p1] = [points[0]!, points[points.length - 1]!];
      const scale = Math.hypot(p1.x - p0.x, p1.y - p0.y) / Math.hypot(g1.x - g0.x, g1.y - g0.y);
      for (const at of ground) {
        const drawn = { x: p0.x + (at.x - g0.x) * scale, y: p0.y - (at.y - g0.y) * scale };
        // Needless corners of the line are left out: a stake lies on the line, within 0.2 pt.
        expect(nearest(points, drawn)).toBeLessThan(0.2);
      }
    });
  });

  it('is told in feet, as long as its steps', () => {
    const { rounds, stakes } = plan.stakes!;
    const words = wordsOf(titled('Stakes'));
    for (const round of rounds.filter((one) => one.stakes.length > 1)) {
      const ground = round.stakes.map((id) => stakes.find((stake) => stake.id === id)!.at);
      const steps = ground.slice(1).map((to, k) => {
        const from = ground[k]!;
        return Math.hypot(to.x - from.x, to.y - from.y);
      });
      const feet = Math.round(steps.reduce((sum, step) => sum + step, 0));
      const ends = `from ${round.stakes[0]} to ${round.stakes[round.stakes.length - 1]}`;
      expect(words).toContain(`dotted line ${ends}: ${feet}'.`);
    }
  });

  it('has a dash of its own, so that no line is told by colour', () => {
    const dashes = [WALK_DASH, SWING_DASH, BEND_DASH, EMPTY_DASH].map((dash) => dash.join());
    expect(new Set(dashes).size).toBe(4);
  });
});

function nearest(line: readonly { x: number; y: number }[], p: { x: number; y: number }): number {
  return Math.min(
    ...line.slice(1).map((b, i) => {
      const a = line[i]!;
      const length = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
      const along =
        length === 0 ? 0 : ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / length;
      const t = Math.min(1, Math.max(0, along));
      return Math.hypot(p.x - a.x - t * (b.x - a.x), p.y - a.y - t * (b.y - a.y));
    }),
  );
}

describe('what the checks can catch', () => {
  /** Moves the stake by brute force: one reading out, both circles cut again, the check taken. */
  it('is the slip whose check is 4.13 sigma off, found again by cutting circles', () => {
    const stakes = plan.stakes!;
    const at = new Map([...stakes.controls, ...stakes.stakes].map(({ id, at: p }) => [id, p]));
    const tied = stakes.stakes.filter((stake) => stake.set.method === 'ties').slice(0, 12);
    expect(tied.length).toBe(12);
    for (const stake of tied) {
      const slip = leastShownIn(stake, at);
      const sigmas = (size: number) =>
        Math.min(
          ...[0, 1].flatMap((which) =>
            [size, -size].map((by) => checkOffIn(stake, at, which, by) / (stake.check.limitIn / 3)),
          ),
        );
      expect(sigmas(1.01 * slip)).toBeGreaterThan(4.13);
      expect(sigmas(0.96 * slip)).toBeLessThan(4.13);
    }
  });

  it('is said on the sheet, with what no check sees', () => {
    const load = wordsOf(titled('What to load'));
    expect(load).toContain('One spare tape shows that something is wrong, not which reading.');
    expect(load).toMatch(/shows at least 8 times in 10 when it is of 6"/);
    for (const words of ['all tapes share', 'Two tags swapped', 'knocked after its check'])
      expect(load).toContain(words);
  });

  it('stands at the head of every round', () => {
    const heads = wordsOf(titled('Stakes'));
    const told = heads.match(/The checks show a slip of|the check may miss a slip/g) ?? [];
    expect(told.length).toBeGreaterThanOrEqual(plan.stakes!.rounds.length);
  });
});

type P = { readonly x: number; readonly y: number };

/** Inches by which the check changes when one of the two readings is `slipIn` out. */
function checkOffIn(
  stake: Stake,
  at: ReadonlyMap<string, P>,
  which: number,
  slipIn: number,
): number {
  if (stake.set.method !== 'ties') throw new Error('not tied');
  const [a, b, c] = [stake.set.tie1.from, stake.set.tie2.from, stake.check.from].map((id) =>
    at.get(id)!,
  ) as [P, P, P];
  const far = (p: P, q: P) => Math.hypot(p.x - q.x, p.y - q.y);
  const r1 = far(a, stake.at) + (which === 0 ? slipIn / 12 : 0);
  const r2 = far(b, stake.at) + (which === 1 ? slipIn / 12 : 0);
  const d = far(a, b);
  const x = (r1 * r1 - r2 * r2 + d * d) / (2 * d);
  const y = Math.sqrt(r1 * r1 - x * x) * (stake.set.side === 'L' ? 1 : -1);
  const [ux, uy] = [(b.x - a.x) / d, (b.y - a.y) / d];
  const moved = { x: a.x + x * ux - y * uy, y: a.y + x * uy + y * ux };
  return Math.abs(far(c, moved) - far(c, stake.at)) * 12;
}

describe('the outline by letter', () => {
  it('titles every letter with its contours, a letter and its hole together', () => {
    const titles = titled('Outline, strings')
      .flatMap(texts)
      .filter((t) => /^Part \d+ of/.test(t));
    // Eight letters of two rings each and a dot, as the fixture draws them.
    const contours = titles.map((t) => /contours? ([\d, ]+?)(?:, in|$)/.exec(t)![1]);
    expect(contours.slice(0, 8)).toEqual(
      Array.from({ length: 8 }, (_, i) => `${2 * i + 1}, ${2 * i + 2}`),
    );
    expect(contours).toContain('17');
  });
});

describe('cautions', () => {
  it('come in the order in which they are met, each once', () => {
    expect(titled('Before you start')).toHaveLength(1);
    const bold = titled('Before you start')
      .flatMap((sheet) => textMarks(sheet.marks))
      .filter((mark) => mark.font === 'bold')
      .map((mark) => mark.text);
    const order = [
      'Call before you dig',
      'Heads and boxes',
      'Trip hazard',
      'Nothing left in the grass',
      'Heat',
      'Lightning',
    ];
    expect(bold.filter((text) => order.includes(text))).toEqual(order);
    expect(new Set(bold).size).toBe(bold.length);
  });
});

describe('space', () => {
  it('leaves no sheet before the passes nearly empty', () => {
    const until = sheets.findIndex((sheet) => sheet.title.startsWith('Passes'));
    for (const [i, sheet] of sheets.slice(0, until).entries()) {
      const last = sheets[i + 1]?.title.replace(/,.*/, '') !== sheet.title.replace(/,.*/, '');
      const lowest = Math.max(
        ...textMarks(sheet.marks)
          .filter((mark) => mark.at.y < sheet.height - 60)
          .map((mark) => mark.at.y),
      );
      // A list ends where it ends: only its last sheet may be short.
      if (!last) expect([sheet.title, lowest / sheet.height > 0.6]).toEqual([sheet.title, true]);
    }
  });
});
