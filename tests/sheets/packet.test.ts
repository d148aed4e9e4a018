import { beforeAll, describe, expect, it } from 'vitest';
import type { Plan } from '../../src/plan/model';
import { composePacket } from '../../src/sheets/compose-packet';
import { readFontMetrics } from '../../src/sheets/fonts';
import type { Sheet, TextMark } from '../../src/sheets/marks';
import { textMarks, unprintable } from '../../src/sheets/printable';
import { markBox, overlap, textBox } from './mark-boxes';
import { planFixture } from './plan-fixture';
import { sheetFonts } from './sheet-fonts';

const fonts = sheetFonts();
const metrics = readFontMetrics(fonts);
/** 10 mm. */
const MARGIN = (10 / 25.4) * 72;
/** Half of the heaviest rule that runs along a margin. */
const RULE = 1.1;

const CASES = [
  { paper: 'letter', units: 'feet-inches', width: 8.5 * 72, height: 11 * 72 },
  { paper: 'letter', units: 'metric', width: 8.5 * 72, height: 11 * 72 },
  { paper: 'a4', units: 'feet-inches', width: (210 / 25.4) * 72, height: (297 / 25.4) * 72 },
  { paper: 'a4', units: 'metric', width: (210 / 25.4) * 72, height: (297 / 25.4) * 72 },
] as const;

const where = (sheet: Sheet, mark: TextMark): string => `${sheet.title}: ${mark.text}`;

describe.each(CASES)('packet on $paper in $units', ({ paper, units, width, height }) => {
  let plan: Plan;
  let sheets: Sheet[];
  beforeAll(() => {
    plan = planFixture({ paper, units });
    sheets = composePacket(plan, fonts);
  });

  it('has sheets of the named paper, numbered n of N', () => {
    for (const [i, sheet] of sheets.entries()) {
      expect(sheet.width).toBeCloseTo(width, 6);
      expect(sheet.height).toBeCloseTo(height, 6);
      const texts = textMarks(sheet.marks).map((mark) => mark.text);
      expect(texts).toContain(`sheet ${i + 1} of ${sheets.length}`);
      expect(texts).toContain(plan.project.name);
    }
  });

  it('keeps all ink inside 10 mm margins', () => {
    const outside = sheets.flatMap((sheet) =>
      sheet.marks
        .map((mark) => ({ mark, box: markBox(mark, metrics) }))
        .filter(
          ({ box }) =>
            box.minX < MARGIN - RULE ||
            box.minY < MARGIN - RULE ||
            box.maxX > width - MARGIN + RULE ||
            box.maxY > height - MARGIN + RULE,
        )
        .map(({ mark, box }) => ({ sheet: sheet.title, mark, box })),
    );
    expect(outside).toEqual([]);
  });

  it('never sets one text over another', () => {
    const clashes = sheets.flatMap((sheet) => {
      const texts = textMarks(sheet.marks);
      const boxes = texts.map((mark) => {
        const box = textBox(mark, metrics);
        // Lines of one paragraph may let an ascender meet a descender.
        return { ...box, minY: box.minY + 0.1 * mark.size, maxY: mark.at.y };
      });
      return texts.flatMap((a, i) =>
        texts
          .slice(i + 1)
          .filter((_, k) => overlap(boxes[i]!, boxes[i + 1 + k]!) > 0.3)
          .map((b) => `${where(sheet, a)} | ${b.text}`),
      );
    });
    expect(clashes).toEqual([]);
  });

  it('has no type under 8 pt, pass numbers in drawings excepted (7.5 pt)', () => {
    const small = sheets.flatMap((sheet) =>
      textMarks(sheet.marks)
        .filter((mark) => mark.size < 8)
        .filter((mark) => !(mark.size >= 7.5 && /^\d+$/.test(mark.text)))
        .map((mark) => where(sheet, mark)),
    );
    expect(small).toEqual([]);
  });

  it('sets every figure of a tape reading in the tables at 11 pt or more', () => {
    const figures = sheets
      .filter((sheet) => /^(Stakes|Outline, strings|Controls)/.test(sheet.title))
      .flatMap((sheet) => textMarks(sheet.marks))
      .filter((mark) => /^(radius )?(\d+'( \d.*)?|\d+(\/\d+)?"|\d+\.\d{3} m)$/.test(mark.text));
    const stakes = plan.stakes!.stakes.length;
    expect(figures.length).toBeGreaterThan(3 * stakes);
    expect(Math.min(...figures.map((mark) => mark.size))).toBeGreaterThanOrEqual(11);
  });

  it('prints every stake number once in the outline drawings', () => {
    const drawn = sheets
      .filter((sheet) => sheet.title === 'Outline, drawing')
      .flatMap((sheet) => textMarks(sheet.marks))
      .filter((mark) => mark.font === 'bold' && mark.size >= 8 && mark.size < 20)
      .map((mark) => mark.text)
      .filter((text) => /^K?\d+$/.test(text));
    for (const { id } of plan.stakes!.stakes)
      expect(drawn.filter((text) => text === id)).toEqual([id]);
  });

  it('names on every stake sheet the first sheet of the outline drawings', () => {
    const at = sheets.findIndex((sheet) => sheet.title === 'Outline, drawing') + 1;
    const stakeSheets = sheets.filter((sheet) => sheet.title.startsWith('Stakes'));
    expect(stakeSheets.length).toBeGreaterThan(1);
    for (const sheet of stakeSheets) {
      const words = textMarks(sheet.marks)
        .map((mark) => mark.text)
        .join(' ');
      expect(words).toContain(`All numbers: sheet ${at}.`);
      expect(words).toContain('Check off by more than its limit: pull the stake, set it again.');
    }
  });

  it('says on every sheet of a round which hand left and right are', () => {
    for (const sheet of sheets.filter((s) => s.title.startsWith('Stakes'))) {
      const texts = textMarks(sheet.marks).map((mark) => mark.text);
      const heads = texts.filter((text) => /^Round \d+ of/.test(text)).length;
      const holds = texts.filter((text) => /^(Hold tapes at|Short tape,) /.test(text)).length;
      expect(holds).toBe(heads);
      if (texts.some((text) => text === 'left' || text === 'right'))
        expect(texts.join(' ')).toMatch(
          /standing at (\w+|the first mark),? facing (\w+|the second)\./,
        );
    }
  });

  it('leaves no round with a lonely row or two and its count on the next sheet', () => {
    for (const sheet of sheets.filter((s) => s.title.startsWith('Stakes'))) {
      const texts = textMarks(sheet.marks).map((mark) => mark.text);
      const counted = texts.findIndex((text) => /^Round \d+ stakes \d+$/.test(text));
      const title = texts.findIndex((text) => text.endsWith(', continued'));
      if (title < 0 || counted < 0) continue;
      const rows = texts.slice(title, counted).filter((text) => text === 'check').length;
      expect(rows).toBeGreaterThanOrEqual(3);
    }
  });

  it('cuts no words off', () => {
    const cut = sheets.flatMap((sheet) =>
      textMarks(sheet.marks)
        .filter((mark) => mark.text.endsWith('...'))
        .map((mark) => where(sheet, mark)),
    );
    expect(cut).toEqual([]);
  });

  it('prints every pass number in the drawings of its machine', () => {
    const numbers = sheets
      .filter((sheet) => sheet.title.startsWith('Passes'))
      .flatMap((sheet) => textMarks(sheet.marks))
      .filter((mark) => mark.size === 7.5)
      .map((mark) => mark.text)
      .sort();
    const wanted = plan.passes.passes.map((pass) => String(pass.number)).sort();
    expect(numbers).toEqual(wanted);
  });

  it('uses only characters that its fonts have', () => {
    expect(unprintable(sheets, metrics)).toEqual([]);
  });

  it('opens the passes after the count with the hold point, and only those', () => {
    const passes = sheets.filter((sheet) => sheet.title.startsWith('Passes'));
    const firsts = passes.filter((sheet, i) => passes[i - 1]?.title !== sheet.title);
    const held = firsts.map((sheet) => {
      const texts = textMarks(sheet.marks).map((mark) => mark.text);
      return [sheet.title, texts.includes('stakes out') && texts.includes('= stakes in')];
    });
    expect(held).toEqual([
      ['Passes, background', false],
      ['Passes, graphic', true],
    ]);
  });
});

describe('packet', () => {
  it('does not lose a page maker to a plan without a graphic', () => {
    const plan = planFixture();
    const bare: Plan = {
      ...plan,
      stakes: null,
      looks: [],
      design: { ...plan.design, graphic: [], quiet: [] },
      passes: { ...plan.passes, legs: plan.passes.legs.filter((leg) => leg.machine === 'triplex') },
    };
    const titles = composePacket(bare, fonts).map((sheet) => sheet.title);
    expect(titles.some((title) => title.startsWith('Stakes'))).toBe(false);
    expect(titles).toContain('Passes, background');
    expect(titles).toContain('Hours');
  });

  it('replaces characters that the type lacks, visibly, and says so on the overview', () => {
    const plan = planFixture({ name: 'Lanterns \u{1f3ee} \u4e2d' });
    const sheets = composePacket(plan, fonts);
    expect(unprintable(sheets, metrics)).toEqual([]);
    const texts = textMarks(sheets[0]!.marks).map((mark) => mark.text);
    expect(texts).toContain('Lanterns ? ?');
    expect(texts.join(' ')).toContain('U+4E2D');
    expect(texts.join(' ')).toContain('U+1F3EE');
  });

  it('names every stop and rule that the crew must know', () => {
    const sheets = composePacket(planFixture(), fonts);
    const text = sheets
      .filter((sheet) => sheet.title === 'Before you start')
      .flatMap((sheet) => textMarks(sheet.marks).map((mark) => mark.text))
      .join(' ');
    for (const words of [
      'Call 811',
      'counts as digging unless state law says otherwise',
      'sprinkler head and valve box',
      'irrigation programme is off, and stays off until the stake count is signed',
      'Nothing left in the grass',
      'Engine off and everything stopped before clearing a reel',
      'Nobody stands in the discharge direction',
      'Flash to bang 30 seconds',
      '30 minutes after the last flash',
      'not in a utility-locate colour',
      'Zero and units of every tape are checked before round 1',
      'Local codes and licensed practice come first',
    ])
      expect(text).toContain(words);
  });
});
