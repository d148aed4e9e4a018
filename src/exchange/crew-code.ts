/**
 * A list for the phone as the text of a printed code, and back. Layout of version 1, most significant
 * bit first: see docs/crew-page.md. The last four bytes are the CRC-32 of those before them.
 */
import { fail, invariant, problem, succeed, type Result } from '../base/result';
import type { StakeKind } from '../stakeout/model';
import type { Point } from '../geometry/point';
import { readBase64Url, writeBase64Url } from './base64-url';
import { readBits, signedLength, writeBits, type BitReader, type BitWriter } from './bits';
import { crc32 } from './crc32';
import {
  crewList,
  crewLists,
  distance,
  placeStake,
  type CrewCheck,
  type CrewJob,
  type CrewList,
  type CrewMethod,
  type CrewPoint,
  type CrewSide,
  type CrewStake,
} from './crew-data';

const VERSION = 1;
/** Characters of one code's fragment, so that the printed code stays coarse enough for any phone. */
export const MOST_CODE_LENGTH = 600;

const KINDS: readonly StakeKind[] = ['outline', 'pin', 'control', 'guide'];
const METHODS: readonly CrewMethod[] = ['ties', 'line', 'offset', 'chord'];
const SIDES: readonly CrewSide[] = ['L', 'R', 'T', 'A'];
/** Orders of the number codes: about the length of a usual value in bits. */
const ORDER = { few: 2, id: 6, count: 4, coordinate: 13, limit: 0, check: 0 } as const;
const ORDER_BITS = 4;
const CHARACTER_BITS = 7;
const MOST = { stakes: 2000, points: 2000, characters: 15, name: 127 } as const;
const CHECKSUM_BYTES = 4;

/** What the last stake leaves for the next: most of a row repeats the row above it. */
interface Row {
  readonly id: string;
  readonly method: CrewMethod;
  readonly from: string;
  readonly to: string;
  readonly side: CrewSide;
  readonly first: number;
  readonly second: number;
  readonly check: CrewCheck;
}
const FIRST_ROW: Row = {
  id: '',
  method: 'ties',
  from: '',
  to: '',
  side: 'L',
  first: 0,
  second: 0,
  check: { from: '', steps: 0, limit: 0 },
};

/** The text of a list, of any length. */
export function encodeCrewList(list: CrewList): string {
  const bits = writeBits();
  const names = list.points.map((p) => p.id);
  bits.put(VERSION, 8);
  for (let i = 0; i < 8; i += 2) bits.put(parseInt(list.plan.slice(i, i + 2), 16), 8);
  bits.put(list.system === 'metric' ? 1 : 0, 1);
  for (const count of [list.round, list.rounds, list.part, list.parts]) {
    bits.putCount(count - 1, ORDER.few);
  }
  putName(bits, list.name);
  bits.putCount(list.points.length, ORDER.few);
  list.points.forEach((point) => putPoint(bits, point));
  bits.put(list.hold ? 1 : 0, 1);
  for (const id of list.hold ?? []) putIndex(bits, names, id);
  putStakes(bits, list);
  return withChecksum(bits.bytes());
}

function withChecksum(bytes: number[]): string {
  const sum = crc32(bytes);
  return writeBase64Url([...bytes, sum >>> 24, (sum >>> 16) & 255, (sum >>> 8) & 255, sum & 255]);
}

function putName(bits: BitWriter, name: string): void {
  const bytes = new TextEncoder().encode(name);
  bits.put(bytes.length, CHARACTER_BITS);
  for (const byte of bytes) bits.put(byte, 8);
}

function putPoint(bits: BitWriter, { id, x, y }: CrewPoint): void {
  putId(bits, id);
  bits.putSigned(x, ORDER.coordinate);
  bits.putSigned(y, ORDER.coordinate);
}

/** A number, a control stake, or any other short name. */
function putId(bits: BitWriter, id: string): void {
  const own = /^(K?)([1-9]\d{0,4})$/.exec(id);
  if (own) {
    bits.put(own[1] === 'K' ? 1 : 0, 2);
    bits.putCount(Number(own[2]) - 1, own[1] === 'K' ? ORDER.few : ORDER.id);
    return;
  }
  invariant(id.length <= MOST.characters, 'a place has a short name');
  bits.put(2, 2);
  bits.put(id.length, ORDER_BITS);
  for (const letter of id) bits.put(letter.charCodeAt(0), CHARACTER_BITS);
}

const indexBits = (names: readonly string[]): number => 32 - Math.clz32(names.length);
const putIndex = (bits: BitWriter, names: readonly string[], id: string): void =>
  bits.put(names.indexOf(id) + 1, indexBits(names));

function putStakes(bits: BitWriter, list: CrewList): void {
  const orders = { first: bestOrder(list, 'first'), second: bestOrder(list, 'second') };
  bits.put(orders.first, ORDER_BITS);
  bits.put(orders.second, ORDER_BITS);
  bits.putCount(list.stakes.length, ORDER.count);
  const names = list.points.map((p) => p.id);
  const known = new Map<string, Point>(list.points.map((p) => [p.id, p]));
  let last = FIRST_ROW;
  for (const stake of list.stakes) {
    putKind(bits, stake.kind);
    putWay(bits, names, stake, last);
    bits.putSigned(stake.first - last.first, orders.first);
    if (hasSecond(stake.method)) bits.putSigned(stake.second - last.second, orders.second);
    const at = placeStake(stake, known);
    putCheck(bits, names, stake.check, last.check, expectedCheck(at, stake.check.from, known));
    if (at) known.set(stake.id, at);
    names.push(stake.id);
    last = stake;
  }
}

const hasSecond = (method: CrewMethod): boolean => method !== 'line';

/** The order that takes the fewest bits for the steps from one reading to the next. */
function bestOrder(list: CrewList, key: 'first' | 'second'): number {
  const steps = list.stakes.map((stake, i) => stake[key] - (list.stakes[i - 1]?.[key] ?? 0));
  const cost = (order: number): number => steps.reduce((sum, s) => sum + signedLength(s, order), 0);
  let best = 0;
  for (let order = 1; order < 2 ** ORDER_BITS; order++) if (cost(order) < cost(best)) best = order;
  return best;
}

/** 0, 10, 110, 111: the usual kinds are short. */
function putKind(bits: BitWriter, kind: StakeKind): void {
  const i = KINDS.indexOf(kind);
  bits.put([0b0, 0b10, 0b110, 0b111][i]!, [1, 2, 3, 3][i]!);
}

function putWay(bits: BitWriter, names: readonly string[], stake: CrewStake, last: Row): void {
  const repeats =
    stake.id === nextId(last.id) &&
    (['method', 'from', 'to', 'side'] as const).every((key) => stake[key] === last[key]);
  bits.put(repeats ? 1 : 0, 1);
  if (repeats) return;
  putId(bits, stake.id);
  bits.put(METHODS.indexOf(stake.method), 2);
  bits.put(SIDES.indexOf(stake.side), 2);
  putIndex(bits, names, stake.from);
  putIndex(bits, names, stake.to);
}

const nextId = (id: string): string => (/^\d+$/.test(id) ? String(Number(id) + 1) : '');

function putCheck(
  bits: BitWriter,
  names: readonly string[],
  check: CrewCheck,
  last: CrewCheck,
  expected: number,
): void {
  bits.put(check.from === last.from ? 1 : 0, 1);
  if (check.from !== last.from) putIndex(bits, names, check.from);
  bits.putSigned(check.steps - expected, ORDER.check);
  bits.putSigned(check.limit - last.limit, ORDER.limit);
}

/** The check's reading as worked out from the places; what is written is how the printed one differs. */
function expectedCheck(at: Point | null, from: string, known: ReadonlyMap<string, Point>): number {
  const end = known.get(from);
  return at && end ? Math.round(distance(at, end)) : 0;
}

/**
 * A list from the text of a code. Problems: `crew-code-empty`, `crew-code-letters`,
 * `crew-code-version`, `crew-code-damaged`.
 */
export function decodeCrewList(text: string, where = 'code'): Result<CrewList> {
  const code = text.trim();
  if (code === '') return fail(badCode('empty', where, 'there is no list in this address'));
  const bytes = readBase64Url(code);
  if (!bytes) return fail(badCode('letters', where, 'it is cut short or holds a wrong character'));
  if (bytes[0] !== VERSION && bytes.length > CHECKSUM_BYTES && sumFits(bytes)) {
    return fail(newerCode(where, bytes[0]!));
  }
  const damaged = badCode('damaged', where, 'part of it is missing or misread');
  if (bytes.length <= CHECKSUM_BYTES || !sumFits(bytes)) return fail(damaged);
  const list = getList(readBits(bytes.slice(1, -CHECKSUM_BYTES)));
  return list ? succeed(list) : fail(damaged);
}

const badCode = (end: 'empty' | 'letters' | 'damaged', where: string, what: string) =>
  problem(`crew-code-${end}`, where, what, 'scan the printed code again, flat and in good light');

const newerCode = (where: string, version: number) =>
  problem(
    'crew-code-version',
    where,
    `it is of version ${version}, which this page does not know`,
    'open the phone page once with a connection, so that it renews itself',
  );

function sumFits(bytes: readonly number[]): boolean {
  const end = bytes.length - CHECKSUM_BYTES;
  const sum = bytes.slice(end).reduce((value, byte) => value * 256 + byte, 0);
  return crc32(bytes.slice(0, end)) === sum;
}

/** Null when anything is out of bounds, names nothing, or is left over. */
function getList(bits: BitReader): CrewList | null {
  let plan = '';
  for (let i = 0; i < 4; i++) plan += bits.get(8).toString(16).padStart(2, '0');
  const system = bits.get(1) === 1 ? 'metric' : 'feet-inches';
  const [round, rounds, part, parts] = [0, 0, 0, 0].map(() => 1 + bits.getCount(ORDER.few));
  const name = getName(bits);
  const points = getMany(bits, ORDER.few, MOST.points, () => getPoint(bits));
  if (name === null || !points) return null;
  const names = points.map((p) => p.id);
  const hold = getHold(bits, names);
  const stakes = getStakes(bits, points);
  const whole = bits.atEnd() && part! <= parts! && round! <= rounds!;
  if (!stakes || hold === 'wrong' || !whole) return null;
  const numbers = { round: round!, rounds: rounds!, part: part!, parts: parts! };
  return { plan, name, system, ...numbers, hold, points, stakes };
}

function getHold(bits: BitReader, names: readonly string[]): CrewList['hold'] | 'wrong' {
  if (bits.get(1) === 0) return null;
  const [a, b] = [getIndex(bits, names), getIndex(bits, names)];
  return a === '' || b === '' ? 'wrong' : [a, b];
}

function getMany<T>(
  bits: BitReader,
  order: number,
  most: number,
  getOne: () => T | null,
): T[] | null {
  const count = bits.getCount(order);
  if (count > most) return null;
  const many: T[] = [];
  for (let i = 0; i < count; i++) {
    const one = getOne();
    if (one === null || !bits.ok()) return null;
    many.push(one);
  }
  return many;
}

function getName(bits: BitReader): string | null {
  const bytes = Array.from({ length: bits.get(CHARACTER_BITS) }, () => bits.get(8));
  if (!bits.ok()) return null;
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(Uint8Array.from(bytes));
  } catch {
    return null;
  }
}

function getPoint(bits: BitReader): CrewPoint | null {
  const id = getId(bits);
  const x = bits.getSigned(ORDER.coordinate);
  const y = bits.getSigned(ORDER.coordinate);
  return id === null ? null : { id, x, y };
}

function getId(bits: BitReader): string | null {
  const tag = bits.get(2);
  if (tag === 0) return String(1 + bits.getCount(ORDER.id));
  if (tag === 1) return `K${1 + bits.getCount(ORDER.few)}`;
  if (tag !== 2) return null;
  const codes = Array.from({ length: bits.get(ORDER_BITS) }, () => bits.get(CHARACTER_BITS));
  const id = String.fromCharCode(...codes);
  return /^[!-~]+$/.test(id) ? id : null;
}

/** The name at the index read; empty when there is none. */
const getIndex = (bits: BitReader, names: readonly string[]): string =>
  names[bits.get(indexBits(names)) - 1] ?? '';

function getStakes(bits: BitReader, points: readonly CrewPoint[]): CrewStake[] | null {
  const names = points.map((p) => p.id);
  const known = new Map<string, Point>(points.map((p) => [p.id, p]));
  const orders = { first: bits.get(ORDER_BITS), second: bits.get(ORDER_BITS) };
  let last = FIRST_ROW;
  return getMany(bits, ORDER.count, MOST.stakes, () => {
    const kind = getKind(bits);
    const way = getWay(bits, names, last);
    if (!way) return null;
    const first = last.first + bits.getSigned(orders.first);
    const second = hasSecond(way.method) ? last.second + bits.getSigned(orders.second) : 0;
    const placed = { kind, ...way, first, second };
    const at = placeStake({ ...placed, check: last.check }, known);
    const check = getCheck(bits, names, last.check, (from) => expectedCheck(at, from, known));
    if (!check || first < 0 || second < 0) return null;
    if (at) known.set(way.id, at);
    names.push(way.id);
    last = { ...placed, check };
    return { ...placed, check };
  });
}

function getKind(bits: BitReader): StakeKind {
  let i = 0;
  while (i < 2 && bits.get(1) === 1) i++;
  return KINDS[i === 2 ? 2 + bits.get(1) : i]!;
}

type Way = Pick<CrewStake, 'id' | 'method' | 'from' | 'to' | 'side'>;

function getWay(bits: BitReader, names: readonly string[], last: Row): Way | null {
  if (bits.get(1) === 1) {
    const { method, from, to, side } = last;
    const id = nextId(last.id);
    return id === '' ? null : { id, method, from, to, side };
  }
  const id = getId(bits);
  const method = METHODS[bits.get(2)]!;
  const side = SIDES[bits.get(2)]!;
  const [from, to] = [getIndex(bits, names), getIndex(bits, names)];
  const isAlong = side === 'T' || side === 'A';
  const wrong = id === null || from === '' || to === '' || isAlong !== (method === 'line');
  return wrong ? null : { id, method, from, to, side };
}

function getCheck(
  bits: BitReader,
  names: readonly string[],
  last: CrewCheck,
  expected: (from: string) => number,
): CrewCheck | null {
  const from = bits.get(1) === 1 ? last.from : getIndex(bits, names);
  const steps = expected(from) + bits.getSigned(ORDER.check);
  const limit = last.limit + bits.getSigned(ORDER.limit);
  return from === '' || steps < 0 || limit < 0 ? null : { from, steps, limit };
}

export interface CrewCode {
  readonly round: number;
  readonly part: number;
  readonly parts: number;
  readonly stakes: number;
  readonly text: string;
}

/** Codes of at most `most` characters, in setting order: one per round, a long round in even parts. */
export function crewCodes(job: CrewJob, most = MOST_CODE_LENGTH): CrewCode[] {
  return crewLists(job).flatMap((list) => {
    for (let parts = 1; ; parts++) {
      const lists = inParts(job, list, parts);
      const codes = lists.map((one) => crewCode(one));
      if (codes.every((c) => c.text.length <= most) || parts >= list.stakes.length) return codes;
    }
  });
}

function inParts(job: CrewJob, list: CrewList, parts: number): CrewList[] {
  const size = Math.ceil(list.stakes.length / parts);
  return Array.from({ length: Math.ceil(list.stakes.length / size) }, (_, i) =>
    crewList(
      job,
      { number: list.round, from: list.hold },
      list.stakes.slice(i * size, (i + 1) * size),
      i + 1,
      Math.ceil(list.stakes.length / size),
    ),
  );
}

const crewCode = (list: CrewList): CrewCode => ({
  round: list.round,
  part: list.part,
  parts: list.parts,
  stakes: list.stakes.length,
  text: encodeCrewList(list),
});
