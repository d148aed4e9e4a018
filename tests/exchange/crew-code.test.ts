/** Lists for the phone, written as the text of printed codes and read back. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readBase64Url, writeBase64Url } from '../../src/exchange/base64-url';
import { crc32 } from '../../src/exchange/crc32';
import { crewCodes, decodeCrewList, encodeCrewList } from '../../src/exchange/crew-code';
import { type CrewList, type CrewStake } from '../../src/exchange/crew-data';
import { checkCodes, decoded } from '../support/check-codes';
import { fixtureCrew } from '../support/demo-crew';

describe.each(['feet-inches', 'metric'] as const)('the codes of a plan in %s', (system) => {
  checkCodes(fixtureCrew(system));
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
  const good = crewCodes(fixtureCrew())[0]!.text;
  it.each([
    ['', 'crew-code-empty'],
    ['  ', 'crew-code-empty'],
    ['<script>', 'crew-code-letters'],
    [`${good}=`, 'crew-code-letters'],
    ['AAAA', 'crew-code-damaged'],
    [good.slice(0, 4 * Math.floor(good.length / 4) - 4), 'crew-code-damaged'],
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
