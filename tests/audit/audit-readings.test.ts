import { describe, expect, it } from 'vitest';
import { auditReadings } from '../../src/audit/audit-readings';
import { falseAlarmChanceOf, familyLimitOf } from '../../src/audit/family-limit';
import type { Audit, Explanation, MeasuredReading } from '../../src/audit/model';
import { auditLines, rivalLines } from '../../src/audit/report-lines';
import { verdictOf } from '../../src/audit/verdict';
import { fieldCrew, type FieldCrew, type Slip } from './support/field-crew';
import { SMALL_ART, SMALL_PLAN } from './support/small-plan';

const plan = SMALL_PLAN;

/** Every stake from two more controls, and along the outline from its neighbour. */
function wellRead(crew: FieldCrew): MeasuredReading[] {
  return [
    ...plan.stakes.map((s) => crew.read(s.id, s.check.from)),
    ...plan.stakes.map((s) => crew.read(s.id, s.check.from === 'HP' ? '1B' : 'HP')),
    ...[
      ['1', '2'],
      ['2', '3'],
      ['3', '4'],
      ['4', '1'],
      ['5', '6'],
      ['6', '7'],
      ['8', '2'],
      ['9', '4'],
    ].map(([a, b]) => crew.read(a!, b!)),
  ];
}

function audited(readings: readonly MeasuredReading[]): Audit {
  const result = auditReadings(plan, SMALL_ART, readings);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

const run = (slips: readonly Slip[], seed = 11): Audit =>
  audited(wellRead(fieldCrew(plan, seed, slips)));

describe('a crew without slips', () => {
  it('is told that all fits, and every stake is proven', () => {
    const a = run([]);
    expect(a.suspects).toEqual([]);
    expect(a.verdict).toBe('All 30 readings fit the plan. Every stake is controlled by a reading.');
    expect(a.stakes.every((s) => s.proof !== 'unproven')).toBe(true);
    expect(a.outline.every((p) => p.within)).toBe(true);
  });

  it('raises a strong alarm in one job of twenty, no more, and its ellipses hold the stakes', () => {
    // 60 jobs at 5 %: 3 expected; 9 or more has a chance of 0.3 %. Ellipses: 60 × 11 stakes.
    let strong = 0;
    let inside = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const crew = fieldCrew(plan, seed);
      const a = audited(wellRead(crew));
      if (a.suspects.some((s) => s.strong)) strong++;
      for (const s of a.stakes) {
        const real = crew.at.get(s.stake)!;
        const [dx, dy] = [12 * (s.at.x - real.x), 12 * (s.at.y - real.y)];
        const b = (s.bearingDeg * Math.PI) / 180;
        const along = dx * Math.sin(b) + dy * Math.cos(b);
        const across = dx * Math.cos(b) - dy * Math.sin(b);
        if ((along / s.semiMajor95In) ** 2 + (across / s.semiMinor95In) ** 2 <= 1) inside++;
      }
    }
    expect(strong).toBeLessThan(9);
    // Stakes of a job share errors: 0.95 ± 0.04 is four sigma of 60 jobs' means.
    expect(inside / (60 * 11)).toBeGreaterThan(0.91);
    expect(inside / (60 * 11)).toBeLessThan(0.99);
  });
});

describe('one slip', () => {
  it('of a foot in any tie is named, with the stake, the reading, the size and which way', () => {
    let named = 0;
    let tried = 0;
    for (const s of plan.stakes.filter((p) => p.set.method === 'ties')) {
      for (const tie of [1, 2] as const) {
        tried++;
        const a = run([{ kind: 'tie', stake: s.id, tie, inches: 12 }]);
        const found = a.suspects[0]!.likeliest;
        expect(a.suspects[0]!.strong).toBe(true);
        expect(found.stake ?? found.reading!.to).toBe(s.id);
        const from = s.set.method === 'ties' ? (tie === 1 ? s.set.tie1 : s.set.tie2).from : '';
        if (found.kind === 'tie' && found.reading!.from === from) named++;
        if (found.tooLongIn !== null) expect(Math.abs(found.tooLongIn + 12)).toBeLessThan(4);
      }
    }
    expect(named / tried).toBeGreaterThanOrEqual(0.9);
  });

  it('in a reading made on the field is laid to that reading, with its line', () => {
    const a = run([{ kind: 'read', stake: '3', from: '1B', inches: -12 }]);
    expect(a.suspects[0]).toMatchObject({ sure: 'reading' });
    expect(a.suspects[0]!.likeliest).toMatchObject({ kind: 'reading', line: 6 });
    expect(a.verdict).toMatch(/^The reading of 3 from 1B, .*, is 1[12].*" too short\./);
    expect(a.stakes.some((s) => s.move !== 'no')).toBe(false);
  });

  const mixUps: readonly (readonly [string, Slip, string])[] = [
    ['two tapes swapped', { kind: 'swap', stake: '3' }, 'tapes-swapped'],
    ['a stake on the wrong side', { kind: 'side', stake: '6' }, 'wrong-side'],
    [
      'a tape at the wrong base',
      { kind: 'held-at', stake: '7', tie: 1, at: '2B' },
      'wrong-control',
    ],
    ['an offset to the wrong side', { kind: 'side', stake: '8' }, 'wrong-side'],
    ['a chord offset to the wrong side', { kind: 'side', stake: '9' }, 'wrong-side'],
    ['an offset from its line’s other end', { kind: 'end', stake: '8' }, 'wrong-end'],
    [
      'a short line held at a wrong stake',
      { kind: 'held-at', stake: '9', tie: 1, at: '8' },
      'wrong-control',
    ],
  ];
  it.each(mixUps)('that is %s is named as such', (_, slip, kind) => {
    const a = run([slip]);
    expect(a.suspects[0]!.likeliest).toMatchObject({ kind, stake: slip.stake });
    expect(a.stakes.find((s) => s.stake === slip.stake)).toMatchObject({
      suspect: true,
      move: 'now',
    });
  });

  it('of the mallet shows as a stake that stands elsewhere, which way and how far', () => {
    const a = run([{ kind: 'kicked', stake: '6', inches: { x: 9, y: 14 } }]);
    expect(a.suspects[0]!.likeliest.stake).toBe('6');
    const six = a.stakes.find((s) => s.stake === '6')!;
    expect(six).toMatchObject({ suspect: true, toward: 'toward the fence and right field' });
    expect(Math.abs(six.offIn - Math.hypot(9, 14))).toBeLessThan(3);
  });

  it('beside another one is not hidden by it', () => {
    const a = run([
      { kind: 'tie', stake: '3', tie: 1, inches: 12 },
      { kind: 'side', stake: '6' },
    ]);
    expect(a.suspects.map((s) => s.likeliest.stake).sort()).toEqual(['3', '6']);
  });
});

describe('one spare reading', () => {
  const crew = fieldCrew(plan, 5, [{ kind: 'tie', stake: '6', tie: 1, inches: 12 }]);
  const spare = plan.stakes.map((s) => crew.read(s.id, s.check.from));
  const a = audited(spare);

  it('detects and does not locate: every explanation is listed', () => {
    const [s] = a.suspects;
    expect(s!.sure).toBe('neither');
    const all = [s!.likeliest, ...s!.rivals];
    expect(all.some((e) => e.kind === 'tie' && e.reading!.from === '1B')).toBe(true);
    expect(all.some((e) => e.kind === 'tie' && e.reading!.from === '3B')).toBe(true);
    expect(all.some((e) => e.kind === 'reading' && e.reading!.to === '6')).toBe(true);
    expect(a.verdict).toMatch(/^Something is wrong, and these readings cannot tell what/);
  });

  it('names the reading to make next, and that one decides', () => {
    const { next } = a.suspects[0]!;
    expect(next).not.toBeNull();
    const more = audited([...spare, crew.read(next!.stake, next!.from)]);
    const found = more.suspects[0]!;
    expect(found.likeliest).toMatchObject({ kind: 'tie', stake: '6' });
    expect(found.likeliest.reading!.from).toBe('1B');
    // What it was said to read, were this so, is what it reads.
    const said = next!.wouldRead.find((w) => w.words.includes('from 1B'))!;
    expect(Math.abs(said.reading.ft - crew.read(next!.stake, next!.from).ft) * 12).toBeLessThan(4);
  });

  it('is told line by line in plain words', () => {
    const lines = auditLines(a, 'feet-inches');
    expect(lines[0]).toBe(a.verdict);
    expect(lines.some((l) => /^ {3}or: /.test(l))).toBe(true);
    expect(lines.at(-1)).toMatch(/^11 readings\. With no slip at all, at most one job in \d+/);
  });
});

describe('what else it may be', () => {
  const same = (e: Explanation): string =>
    [e.kind, e.stake, e.line, e.reading?.from, e.reading?.to].join(' ');

  it('is never the same slip by another amount, and is all that the readings leave', () => {
    // A stake feet off, its distance from one control taped again and again: each reading asks for an
    // amount of its own, and no number of them tells which of the two ties was wrong.
    for (let seed = 1; seed <= 12; seed++) {
      const crew = fieldCrew(plan, seed, [{ kind: 'tie', stake: '6', tie: 1, inches: 60 }]);
      const { from } = plan.stakes.find((s) => s.id === '6')!.check;
      for (const times of [2, 4, 6, 12]) {
        const [s] = audited(Array.from({ length: times }, () => crew.read('6', from))).suspects;
        const all = [s!.likeliest, ...s!.rivals];
        const amounts = all.filter((e) => e.kind === 'tie' || e.kind === 'reading').map(same);
        expect(new Set(amounts).size).toBe(amounts.length);
        expect(all.some((e) => e.kind === 'tie' && e.reading!.from === '1B')).toBe(true);
        expect(s!.sure).not.toBe('reading');
      }
    }
  });

  it('is told to five, and the rest counted', () => {
    const [s] = run([{ kind: 'tie', stake: '3', tie: 1, inches: 12 }]).suspects;
    const rivals = Array.from({ length: 8 }, () => s!.likeliest);
    expect(rivalLines({ ...s!, rivals })).toHaveLength(6);
    expect(rivalLines({ ...s!, rivals }).at(-1)).toBe('or one of 3 less likely');
    expect(rivalLines({ ...s!, rivals: rivals.slice(3) })).toHaveLength(5);
  });
});

describe('a doubt', () => {
  const a = run([{ kind: 'tie', stake: '3', tie: 1, inches: 24 }]);
  const [finding] = a.suspects;
  const doubt = { ...finding!, strong: false };

  it('says to measure again first, alone or beside a finding, and is not counted with it', () => {
    expect(verdictOf([doubt], a.stakes, 30)).toMatch(
      /^No clear slip\. Only a doubt: measure again before anything is moved\./,
    );
    const both = verdictOf([finding!, doubt], a.stakes, 30);
    expect(both).not.toMatch(/things do not fit/);
    expect(both).toMatch(/There is a doubt beside it\./);
    expect(verdictOf([finding!, finding!, doubt], a.stakes, 30)).toMatch(/2 things do not fit/);
    const lines = auditLines({ ...a, suspects: [finding!, doubt] }, 'feet-inches');
    expect(lines.find((l) => l.startsWith('1. '))).not.toMatch(/measure again/);
    expect(lines.find((l) => l.startsWith('2. '))).toMatch(/Only a doubt: measure again/);
    const stakes = a.stakes.map((s) =>
      s.move === 'no' ? s : ({ ...s, move: 'once-measured-again' } as const),
    );
    const move = auditLines({ ...a, suspects: [doubt], stakes }, 'feet-inches');
    expect(move).toContain('Measure again; if it is so, pull and set again:');
    expect(move).not.toContain('Pull and set again:');
  });

  it('is what lies below the limit of all different tests together, and 3.29 or above', () => {
    // One test at 5 % is the normal's 1.96, so 3.29 stands.
    const crew = fieldCrew(plan, 3);
    const one = audited([crew.read('3', '1B')]);
    expect(one.familyLimit).toBeCloseTo(3.2905, 4);
    expect(one.falseAlarmChance).toBeCloseTo(0.001, 5);
    expect(auditLines(one, 'feet-inches').at(-1)).toMatch(/^1 reading\. .* one job in 1000 /);
  });
});

describe('the limit of all tests together', () => {
  const readings = (sizes: readonly number[], redundancy = 0.5) => ({
    readings: sizes.map((standardised) => ({ standardised, redundancy })),
  });
  const different = (count: number) => readings(Array.from({ length: count }, (_, i) => 0.01 * i));

  it('is the two-sided limit of 5 % shared among the different tests', () => {
    // Normal tables, two-sided: 0.05 % 3.4808, 0.01 % 3.8906; 0.1 % 3.2905 is the least.
    expect(familyLimitOf(different(100))).toBeCloseTo(3.4808, 3);
    expect(familyLimitOf(different(500))).toBeCloseTo(3.8906, 3);
    expect(familyLimitOf(different(50))).toBeCloseTo(3.2905, 3);
    expect(familyLimitOf(different(10))).toBeCloseTo(3.2905, 3);
    // 100 independent tests at 0.1 %: 1 − 0.999^100.
    expect(falseAlarmChanceOf(different(100))).toBeCloseTo(1 - 0.999 ** 100, 5);
  });

  it('counts equal residuals once, and readings that nothing controls not at all', () => {
    expect(falseAlarmChanceOf(readings([1.5, -1.5, 1.5, 2]))).toBeCloseTo(1 - 0.999 ** 2, 5);
    expect(falseAlarmChanceOf(readings([0, 0, 0], 0))).toBe(0);
  });
});

describe('one spare reading of a short-tape stake', () => {
  it('leaves both its own readings in question', () => {
    // The stranger to the slip sees one reading that does not fit: it cannot tell along from across.
    let both = 0;
    for (const stake of ['8', '9']) {
      for (let seed = 1; seed <= 10; seed++) {
        const crew = fieldCrew(plan, seed, [{ kind: 'tie', stake, tie: 2, inches: 24 }]);
        const read = plan.stakes.map((s) => crew.read(s.id, s.check.from));
        for (const s of audited(read).suspects) {
          const all = [s.likeliest, ...s.rivals].filter((e) => e.stake === stake);
          const words = all.filter((e) => e.kind === 'tie').map((e) => e.words);
          if (words.length < 2) continue;
          both++;
          expect(s.sure).not.toBe('reading');
        }
      }
    }
    expect(both).toBeGreaterThan(5);
  });
});

describe('stakes that no reading controls', () => {
  it('are listed, and nothing is claimed of them', () => {
    const crew = fieldCrew(plan, 3);
    const a = audited([crew.read('3', '1B'), crew.read('4', '2B')]);
    const unproven = a.stakes.filter((s) => s.proof === 'unproven').map((s) => s.stake);
    expect(unproven).toEqual(['1', '2', '5', '6', '7', '8', '9']);
    expect(a.stakes.find((s) => s.stake === '6')!.smallestSlipIn).toBeNull();
    expect(a.verdict).toMatch(/7 of 11 stakes are not controlled by any reading\.$/);
  });
});

describe('the outline between stakes as they stand', () => {
  it('gets a new radius where pin and stakes stand apart otherwise, and says what cannot be drawn', () => {
    const far = run([{ kind: 'kicked', stake: '5', inches: { x: 3, y: -3 } }]);
    const swing = far.outline.find((p) => p.piece.kind === 'swing')!;
    expect(swing.changed).toBe(true);
    const off = run([{ kind: 'kicked', stake: '3', inches: { x: 30, y: 0 } }]);
    const bad = off.outline.filter((p) => !p.within);
    expect(bad.map((p) => p.piece)).toEqual(
      expect.arrayContaining([expect.objectContaining({ kind: 'string', to: '3' })]),
    );
    for (const p of bad) expect(p.gapIn).toBeGreaterThan(6.5);
    // 9 was set from 3.
    expect(off.stakes.filter((s) => s.move !== 'no').map((s) => s.stake)).toEqual(['3', '9']);
  });
});

describe('readings that cannot be audited', () => {
  it('are refused by line', () => {
    const bad = [
      { line: 2, stake: '3', from: '77', ft: 20, text: '', note: '' },
      { line: 3, stake: '3', from: '3', ft: 20, text: '', note: '' },
    ];
    const result = auditReadings(plan, SMALL_ART, bad);
    expect(result.problems.map((p) => [p.code, p.where])).toEqual([
      ['reading-unknown', 'line 2'],
      ['reading-bad', 'line 3'],
    ]);
    expect(auditReadings(plan, SMALL_ART, []).problems[0]!.code).toBe('readings-none');
  });
});
