/** Fills sheets from top to bottom. */
import type { Mark } from './marks';
import type { Paper } from './paper';

export interface Flow {
  /** Where the next block starts. */
  readonly y: () => number;
  readonly pageIndex: () => number;
  /** Starts a new sheet when less than `height` is left; says whether it did. */
  readonly need: (height: number) => boolean;
  readonly left: () => number;
  /** Puts marks on this sheet and moves down by `height`. */
  readonly add: (marks: readonly Mark[], height: number) => void;
  readonly newPage: () => void;
  readonly pages: () => readonly (readonly Mark[])[];
}

export function startFlow(paper: Pick<Paper, 'top' | 'bottom'>): Flow {
  const pages: Mark[][] = [[]];
  let y = paper.top;
  const newPage = () => {
    pages.push([]);
    y = paper.top;
  };
  return {
    y: () => y,
    pageIndex: () => pages.length - 1,
    left: () => paper.bottom - y,
    need: (height) => {
      const full = y + height > paper.bottom && y > paper.top;
      if (full) newPage();
      return full;
    },
    add: (marks, height) => {
      pages[pages.length - 1]!.push(...marks);
      y += height;
    },
    newPage,
    pages: () => pages,
  };
}
