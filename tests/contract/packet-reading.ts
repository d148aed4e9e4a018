/** The packet read by the grammar of docs/sheets.md and by nothing else. */
import type { OutlineRow, StakeRow, Xy } from '../support/stranger';

const READING = String.raw`(\d+' \d+(?: \d+/\d+)?"|\d+\.\d{3} m)`;
const LIMIT = String.raw`(?:\d+(?: \d+/\d+)?"|\d+/\d+"|\d+ mm)`;
const CHECK = String.raw`check (\w+) ${READING} within ${LIMIT}( over)?`;
const KIND = '(control|outline|pin|guide)';
const rule = (text: string): RegExp => new RegExp(`^${text}$`);

const CONTROL = rule(
  String.raw`(\w+) (fixed|set) x (-?\d+\.\d{3}) y (-?\d+\.\d{3}) sigma (\d+\.\d\d) (.+)`,
);
const TIES = rule(
  String.raw`(\w+) ${KIND} ties (\w+) ${READING} (\w+) ${READING} (left|right) ${CHECK}`,
);
const LINE = rule(
  String.raw`(\w+) ${KIND} line (\w+) ${READING} (toward|away from) (\w+) ${CHECK}`,
);
const OFFSET = rule(
  String.raw`(\w+) ${KIND} offset (\w+) ${READING} (\w+) ${READING} (left|right) ${CHECK}`,
);
const CHORD = rule(
  String.raw`(\w+) ${KIND} chord (\w+) (\w+) offset ${READING} (left|right) ${CHECK}`,
);
const GRAPHIC = rule(String.raw`graphic (\S+)`);
const STRING = rule(String.raw`(\d+)\.(\d+) string from (\w+) to (\w+)`);
const SWING = rule(
  String.raw`(\d+)\.(\d+) swing from (\w+) to (\w+) pin (\w+) radius ${READING} turn (clockwise|counter-clockwise)`,
);
const BEND = rule(String.raw`(\d+)\.(\d+) bend from (\w+) to (\w+) offset ${READING} (left|right)`);
const CIRCLE = rule(String.raw`(\d+)\.(\d+) circle pin (\w+) radius ${READING} full circle`);

export interface PacketReading {
  readonly fixed: ReadonlyMap<string, Xy>;
  readonly stakes: readonly StakeRow[];
  readonly outline: readonly OutlineRow[];
}

/** Every row of the packet that matches the grammar, in reading order. */
export function readPacketLines(lines: readonly string[]): PacketReading {
  const fixed = new Map<string, Xy>();
  const stakes: StakeRow[] = [];
  const outline: OutlineRow[] = [];
  let graphic = '';
  for (const raw of lines) {
    const line = raw.replace(/\s+/g, ' ').trim();
    const control = CONTROL.exec(line);
    if (control?.[2] === 'fixed') fixed.set(control[1]!, [Number(control[3]), Number(control[4])]);
    const stake = readStake(line);
    if (stake) stakes.push(stake);
    graphic = GRAPHIC.exec(line)?.[1] ?? graphic;
    const piece = readPiece(line, graphic);
    if (piece) outline.push(piece);
  }
  return { fixed, stakes, outline };
}

function readStake(line: string): StakeRow | null {
  const ties = TIES.exec(line);
  if (ties) {
    const [, stake, , from1, reading1, from2, reading2, hand, checkFrom, checkReading] =
      ties as unknown as string[];
    const side = hand === 'left' ? 'L' : 'R';
    return {
      stake: stake!,
      method: 'ties',
      from1: from1!,
      reading1: reading1!,
      from2: from2!,
      reading2: reading2!,
      offset: '',
      side,
      checkFrom: checkFrom!,
      checkReading: checkReading!,
    };
  }
  const short = readShort(line);
  if (short) return short;
  const along = LINE.exec(line);
  if (!along) return null;
  const [, stake, , from1, reading1, way, from2, checkFrom, checkReading] =
    along as unknown as string[];
  return {
    stake: stake!,
    method: 'line',
    from1: from1!,
    reading1: reading1!,
    from2: from2!,
    reading2: '',
    offset: '',
    side: way === 'toward' ? 'T' : 'A',
    checkFrom: checkFrom!,
    checkReading: checkReading!,
  };
}

function readShort(line: string): StakeRow | null {
  const offset = OFFSET.exec(line);
  const chord = CHORD.exec(line);
  const cells = (offset ?? chord) as string[] | null;
  if (!cells) return null;
  const along = offset ? [cells[4]!] : [];
  const [stake, , from1, ...rest] = cells.slice(1);
  const [from2, reading, hand, checkFrom, checkReading] = rest.slice(along.length);
  return {
    stake: stake!,
    method: offset ? 'offset' : 'chord',
    from1: from1!,
    reading1: along[0] ?? '',
    from2: from2!,
    reading2: '',
    offset: reading!,
    side: hand === 'left' ? 'L' : 'R',
    checkFrom: checkFrom!,
    checkReading: checkReading!,
  };
}

function readPiece(line: string, graphic: string): OutlineRow | null {
  const empty = { from: '', to: '', pin: '', radius: '', sweep: '', offset: '', side: '' };
  const string = STRING.exec(line);
  if (string) {
    const [, contour, , from, to] = string as unknown as string[];
    return { ...empty, contour: `${graphic}/${contour}`, kind: 'string', from: from!, to: to! };
  }
  const swing = SWING.exec(line);
  if (swing) {
    const [, contour, , from, to, pin, radius, turn] = swing as unknown as string[];
    const sweep = turn === 'clockwise' ? 'cw' : 'ccw';
    return {
      ...empty,
      contour: `${graphic}/${contour}`,
      kind: 'swing',
      from: from!,
      to: to!,
      pin: pin!,
      radius: radius!,
      sweep,
    };
  }
  const bend = BEND.exec(line);
  if (bend) {
    const [, contour, , from, to, offset, hand] = bend as unknown as string[];
    const side = hand === 'left' ? 'L' : 'R';
    const ends = { from: from!, to: to!, offset: offset!, side };
    return { ...empty, contour: `${graphic}/${contour}`, kind: 'bend', ...ends };
  }
  const circle = CIRCLE.exec(line);
  if (!circle) return null;
  const [, contour, , pin, radius] = circle as unknown as string[];
  return { ...empty, contour: `${graphic}/${contour}`, kind: 'circle', pin: pin!, radius: radius! };
}
