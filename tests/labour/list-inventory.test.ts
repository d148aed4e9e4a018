/** The load of a small plan, counted by hand. */
import { describe, expect, it } from 'vitest';
import { inventoryCsv } from '../../src/exchange/inventory-csv';
import { listInventory, stakesOut } from '../../src/labour/list-inventory';
import type { SquareTool, StakePlan } from '../../src/stakeout/model';
import { parseCsv } from '../support/stranger';
import { stakePlan } from './fixtures';

const quantities = (plan: StakePlan) =>
  Object.fromEntries(listInventory(plan).map((item) => [item.id, item.quantity]));

describe('the inventory', () => {
  it('counts stakes by kind, tags, string, dots and tools from the plan', () => {
    expect(quantities(stakePlan())).toEqual({
      'stakes-control': 2,
      'stakes-outline': 4,
      'stakes-pin': 1,
      'stakes-all': 7,
      caps: 1,
      tags: 7,
      // 40 by 50 ft of stakes and 10 ft all round, one head to 3600 sq ft.
      flags: Math.ceil(((40 + 20) * (50 + 20)) / 3600),
      // Three strings of 30 ft, half a foot for each of six knots, and 5 %: 97.65 ft, whole feet up.
      string: 98,
      // A dot a foot: 30, 30, 30; half a circle of 15 ft radius 47.1; a circle of 5 ft radius 31.4.
      dots: 30 + 30 + 30 + 48 + 32,
      tape: 2,
      'tape-check': 1,
      anchors: 1,
      hammers: 1,
      'plumb-bobs': 1,
      clips: 1,
      markers: 1,
      gloves: 3,
    });
  });

  it('counts at the hold point what it says to load', () => {
    const plan = stakePlan();
    const kinds = listInventory(plan).filter((item) => /^stakes-(?!all)/.test(item.id));
    const sum = kinds.reduce((n, item) => n + item.quantity, 0);
    expect(stakesOut(plan)).toBe(sum);
    expect(quantities(plan)['stakes-all']).toBe(sum);
  });

  it('gives a second marker tools of their own in a crew of four', () => {
    const { hammers, clips } = quantities(stakePlan(4));
    expect([hammers, clips]).toEqual([2, 2]);
  });

  it('names two kinds of tape apart, and checks with the longer', () => {
    const plan = stakePlan();
    const secondTape = {
      ...plan.spec.tape,
      name: 'Steel reel',
      material: 'steel' as const,
      limitFt: 300,
    };
    const tapes = listInventory({ ...plan, spec: { ...plan.spec, secondTape } })
      .filter((item) => item.id.startsWith('tape'))
      .map((item) => [item.id, item.name, item.quantity]);
    expect(tapes).toEqual([
      ['tape-1', `Fibreglass tape, 200' 0"`, 1],
      ['tape-2', `Steel reel, 300' 0"`, 1],
      ['tape-check', `Steel reel, 300' 0"`, 1],
    ]);
  });

  it.each<[SquareTool, string[]]>([
    ['eye', []],
    ['square', ['square']],
    ['triangle', ['triangle']],
  ])('loads for offsets by %s what keeps them square', (square, wanted) => {
    const plan = stakePlan();
    const offset = { text: `0' 7 1/4"`, ft: 7.25 / 12 };
    const set = { method: 'chord', chordFrom: '1', lineTo: '2', offset, side: 'L' } as const;
    const last = { ...plan.stakes[6]!, id: '6', kind: 'outline' as const, set };
    const found = quantities({
      ...plan,
      spec: { ...plan.spec, square },
      stakes: [...plan.stakes, last],
    });
    expect(found['tape-short']).toBe(1);
    expect(Object.keys(found).filter((id) => id === 'square' || id === 'triangle')).toEqual(wanted);
  });

  it('is empty without stakes', () => {
    expect(listInventory(null)).toEqual([]);
  });

  it('reads back from inventory.csv, the used-up things told apart', () => {
    const rows = parseCsv(inventoryCsv(stakePlan()));
    const back = Object.fromEntries(
      rows.map((row): [string, number] => [row['item']!, Number(row['quantity'])]),
    );
    expect(back).toEqual(quantities(stakePlan()));
    expect(rows.filter((row) => row['comes_back'] === 'no').map((row) => row['item'])).toEqual([
      'dots',
    ]);
  });
});
