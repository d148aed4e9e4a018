/** The phone's log: times between ticks without breaks, by hand-made clocks. */
import { describe, expect, it } from 'vitest';
import {
  comeBack,
  EMPTY_ROUND,
  entryOf,
  goOn,
  isIn,
  lastTickOf,
  pause,
  startRound,
  takeBack,
  tickStake,
  writeCheck,
  writeNote,
} from '../../src/crew/log';

const T = 1_700_000_000_000;
const at = (seconds: number): number => T + 1000 * seconds;
const started = startRound(EMPTY_ROUND, at(0), null);

describe('the time of a stake', () => {
  it('runs from the start of the round, then from tick to tick', () => {
    const log = tickStake(tickStake(started, '1', at(80)), '2', at(145.2));
    expect(entryOf(log, '1').seconds).toBe(80);
    expect(entryOf(log, '2').seconds).toBe(65.2);
    expect(lastTickOf(log)).toBe(at(145.2));
  });

  it('is not told after a gap of more than ten minutes, nor when the clock went back', () => {
    expect(entryOf(tickStake(started, '1', at(600)), '1').seconds).toBe(600);
    expect(entryOf(tickStake(started, '1', at(601)), '1').seconds).toBeNull();
    expect(entryOf(tickStake(started, '1', at(-5)), '1').seconds).toBeNull();
    expect(isIn(tickStake(started, '1', at(601)), '1')).toBe(true);
  });

  it('leaves a pause out, and is not told when ticked inside one', () => {
    const paused = pause(started, at(30));
    expect(entryOf(tickStake(goOn(paused, at(500)), '1', at(520)), '1').seconds).toBe(50);
    expect(entryOf(tickStake(paused, '1', at(100)), '1').seconds).toBeNull();
  });

  it('adds up when a stake is pulled and set again', () => {
    const once = tickStake(started, '1', at(70));
    const again = tickStake(takeBack(once, '1'), '1', at(110));
    expect(isIn(takeBack(once, '1'), '1')).toBe(false);
    expect(entryOf(again, '1').seconds).toBe(110);
  });

  it('is not told for the first stake after a while at another round', () => {
    const back = comeBack(tickStake(started, '1', at(60)));
    const log = tickStake(tickStake(back, '2', at(90)), '3', at(130));
    expect([entryOf(log, '2').seconds, entryOf(log, '3').seconds]).toEqual([null, 40]);
  });

  it('counts moving the tapes from the last tick of another round, up to twenty minutes', () => {
    expect(startRound(EMPTY_ROUND, at(200), at(20)).moveSeconds).toBe(180);
    expect(startRound(EMPTY_ROUND, at(1221), at(20)).moveSeconds).toBeNull();
    expect(started.moveSeconds).toBeNull();
  });
});

describe('checks and notes', () => {
  it('stay with their stake and change nothing else', () => {
    const log = writeNote(writeCheck(started, '7', `10' 2"`, 10 + 2 / 12), '7', 'soft ground');
    expect(entryOf(log, '7')).toEqual({
      at: null,
      seconds: null,
      read: `10' 2"`,
      readFt: 10 + 2 / 12,
      note: 'soft ground',
    });
    expect(started.stakes).toEqual({});
    expect(isIn(log, 'toString')).toBe(false);
  });
});
