/** Lists for the phone, written as the text of printed codes and read back. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatLimit } from '../../src/base/quantity';
import { readBase64Url, writeBase64Url } from '../../src/exchange/base64-url';
import { crc32 } from '../../src/exchange/crc32';
import {
  crewCodes,
  decodeCrewList,
  encodeCrewList,
  MOST_CODE_LENGTH,
} from '../../src/exchange/crew-code';
import {
  limitIn,
  placeStake,
  readingOf,
  stepFt,
  type CrewList,
  type CrewStake,
} from '../../src/exchange/crew-data';
import { demoCrew, DEMOS } from '../support/demo-crew';

function decoded(text: string): CrewList {
  const list = decodeCrewList(text);
  if (!list.ok) throw new Error(list.problems[0]?.code);
  return list.value;
}

describe.each([
  ...DEMOS.map((file) => [file, 'feet-inches'] as const),
  ['lantern-emblem.json', 'metric'] as const,
])('the codes of %s in %s', (file, system) => {
  const job = demoCrew(file, system);
  const codes = crewCodes(job);
  const lists = codes.map((c) => decoded(c.text));

  it('hold no more than 600 characters each, one round per code', () => {
    for (const code of codes) expect(code.text.length).toBeLessThanOrEqual(MOST_CODE_LENGTH);
    expect(MOST_CODE_LENGTH).toBe(600);
    const rounds = new Set(codes.map((c) => c.round));
    expect([...rounds]).toEqual(job.stakes.rounds.map((r) => r.number));
    for (const code of codes) expect(code.parts === 1 || code.text.length > 300).toBe(true);
  });

  it('give every stake of the sheets in order, with the very readings that are printed', () => {
    const stakes = lists.flatMap((list) => list.stakes);
    expect(stakes.map((s) => s.id)).toEqual(job.stakes.stakes.map((s) => s.id));
    stakes.forEach((stake, i) => {
      const printed = job.stakes.stakes[i]!;
      const { set, check } = printed;
      expect(readingOf(stake.check.steps, job.system)).toEqual(check.reading);
      const limit = formatLimit(limitIn(stake.check.limit, job.system), job.system);
      expect(limit).toBe(formatLimit(check.limitIn, job.system));
      expect([stake.kind, stake.check.from]).toEqual([printed.kind, check.from]);
      if (set.method !== 'ties' && set.method !== 'line') return;
      expect(readingOf(stake.first, job.system)).toEqual(set.tie1.reading);
      expect([stake.from, stake.side]).toEqual([set.tie1.from, set.side]);
      if (set.method !== 'ties') return;
      expect(readingOf(stake.second, job.system)).toEqual(set.tie2.reading);
      expect(stake.to).toBe(set.tie2.from);
    });
  });

  it('let the phone draw each stake where the plan has it, within a step or two', () => {
    for (const list of lists) {
      const known = new Map(list.points.map((p) => [p.id, { x: p.x, y: p.y }]));
      for (const stake of list.stakes) {
        const at = placeStake(stake, known)!;
        const want = job.stakes.stakes.find((s) => s.id === stake.id)!.at;
        const ft = stepFt(list.system);
        // A control is written to half a step; ties that cross at 30° or more double that at most.
        expect(Math.hypot(at.x * ft - want.x, at.y * ft - want.y)).toBeLessThan(3 * ft);
        known.set(stake.id, at);
      }
    }
  });

  it('are refused when any one character is changed, left out or added', () => {
    const { text } = codes[codes.length - 1]!;
    for (let i = 0; i < text.length; i++) {
      const other = text[i] === 'A' ? 'B' : 'A';
      for (const bad of [other, '', `${text[i]}${other}`]) {
        const result = decodeCrewList(text.slice(0, i) + bad + text.slice(i + 1));
        expect(result.ok).toBe(false);
      }
    }
  });
});

const id = fc.oneof(
  fc.integer({ min: 1, max: 99_999 }).map(String),
  fc.integer({ min: 1, max: 400 }).map((n) => `K${n}`),
  fc.stringMatching(/^[!-~]{1,15}$/).filter((s) => !/^K?\d+$/.test(s)),
);
const coordinate = fc.integer({ min: -60_000, max: 60_000 });
const steps = fc.integer({ min: 0, max: 60_000 });

/** Any list at all: names, methods and readings that need make no sense on the ground. */
const anyList: fc.Arbitrary<CrewList> = fc
  .record({
    plan: fc.stringMatching(/^[0-9a-f]{8}$/),
    name: fc.string({ maxLength: 24, unit: 'grapheme' }),
    system: fc.constantFrom('feet-inches' as const, 'metric' as const),
    ids: fc.uniqueArray(id, { minLength: 2, maxLength: 40 }),
    coordinates: fc.array(fc.tuple(coordinate, coordinate), { minLength: 40, maxLength: 40 }),
    rounds: fc.tuple(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 0, max: 60 })),
    parts: fc.tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 0, max: 9 })),
    held: fc.boolean(),
    rows: fc.array(fc.tuple(fc.nat(), fc.nat(), fc.nat(), steps, steps, steps, fc.nat(900)), {
      maxLength: 30,
    }),
  })
  .map(({ plan, name, system, ids, coordinates, rounds, parts, held, rows }) => {
    const pointCount = Math.max(2, ids.length - rows.length);
    const points = ids
      .slice(0, pointCount)
      .map((p, i) => ({ id: p, x: coordinates[i]![0], y: coordinates[i]![1] }));
    const stakes = ids.slice(pointCount).map((own, i): CrewStake => {
      const [a, b, c, first, second, check, limit] = rows[i]!;
      const method = (['ties', 'line', 'offset', 'chord'] as const)[a % 4]!;
      const named = (n: number) => ids[n % (pointCount + i)]!;
      return {
        id: own,
        kind: (['outline', 'pin', 'control', 'guide'] as const)[b % 4]!,
        method,
        from: named(a),
        to: named(b),
        first,
        second: method === 'line' ? 0 : second,
        side: (method === 'line' ? (['T', 'A'] as const) : (['L', 'R'] as const))[c % 2]!,
        check: { from: named(c), steps: check, limit },
      };
    });
    const short = [...name].slice(0, 12).join('');
    return {
      ...{ plan, name: short, system, round: rounds[0], rounds: rounds[0] + rounds[1] },
      ...{ part: parts[0], parts: parts[0] + parts[1] },
      ...{ hold: held ? ([ids[0]!, ids[1]!] as const) : null, points, stakes },
    };
  });

describe('any list', () => {
  it('comes back as it went in', () => {
    fc.assert(
      fc.property(anyList, (list) => {
        expect(decoded(encodeCrewList(list))).toEqual(list);
      }),
      { seed: 8, numRuns: 150 },
    );
  });

  it('is never made from noise, nor does noise throw', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 80 }), fc.boolean(), (noise, signed) => {
        const bytes = [1, ...noise];
        const sum = crc32(bytes);
        const tail = [sum >>> 24, (sum >>> 16) & 255, (sum >>> 8) & 255, sum & 255];
        const result = decodeCrewList(writeBase64Url(signed ? [...bytes, ...tail] : bytes));
        // Noise under a true checksum may hold a list; then it is one within all bounds.
        if (result.ok) expect(decoded(encodeCrewList(result.value))).toEqual(result.value);
        else expect(result.problems[0]?.code).toMatch(/^crew-code-/);
      }),
      { seed: 9, numRuns: 400 },
    );
  });
});

describe('bad codes', () => {
  const good = crewCodes(demoCrew('lantern-emblem.json'))[0]!.text;
  it.each([
    ['', 'crew-code-empty'],
    ['  ', 'crew-code-empty'],
    ['<script>', 'crew-code-letters'],
    [`${good}=`, 'crew-code-letters'],
    ['AAAA', 'crew-code-damaged'],
    [good.slice(0, -4), 'crew-code-damaged'],
    [good.replace(/^./, 'C'), 'crew-code-damaged'],
  ])('%j: %s', (text, code) => {
    const result = decodeCrewList(text, 'code');
    expect(result.ok ? 'read' : result.problems[0]?.code).toBe(code);
  });

  it('of a later version are told apart from damaged ones', () => {
    const bytes = [9, 1, 2, 3];
    const sum = crc32(bytes);
    const text = writeBase64Url([
      ...bytes,
      ...[sum >>> 24, (sum >>> 16) & 255, (sum >>> 8) & 255, sum & 255],
    ]);
    const result = decodeCrewList(text);
    expect(result.ok ? 'read' : result.problems[0]?.code).toBe('crew-code-version');
  });
});

describe('base64url and the checksum', () => {
  it('agree with Node', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 40 }), (bytes) => {
        const text = Buffer.from(bytes).toString('base64url');
        expect(writeBase64Url([...bytes])).toBe(text);
        expect(readBase64Url(text)).toEqual([...bytes]);
      }),
      { seed: 10 },
    );
  });

  it('gives the published check value', () => {
    // CRC-32/ISO-HDLC, check value of "123456789": Catalogue of parametrised CRC algorithms.
    expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926);
  });
});
