/** `inventory.csv`: what the crew loads, and what must come back. */
import type { GuideWork } from '../labour/guide-work';
import { listInventory } from '../labour/list-inventory';
import type { StakePlan } from '../stakeout/model';
import { writeCsv } from './csv';

const COLUMNS = 'item,name,quantity,unit,comes_back,note';

/** One row per kind of thing, in the order of loading; the header alone where nothing is set out. */
export const inventoryCsv = (stakes: StakePlan | null, guides?: GuideWork): string =>
  writeCsv(
    COLUMNS.split(','),
    listInventory(stakes, guides).map((item) => [
      item.id,
      item.name,
      item.quantity,
      item.unit,
      item.usedUp ? 'no' : 'yes',
      item.note,
    ]),
  );
