/** Tasks, rates and hours. */
export interface Rate {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
  /** `min`, `min each`, `s per ft` or `min per planned min`: times the quantity, see `rates.ts`. */
  readonly unit: string;
  /** A published source, what is assumed (begins with `assumption`), or `own figure`. */
  readonly source: string;
}

export interface LabourSpec {
  readonly people: number;
  /** Local clock, 24 h `HH:MM`. */
  readonly opens: string;
  readonly closes: string;
  /** Own rates over the catalogue's, by task id. */
  readonly rates: Readonly<
    Record<string, { readonly low: number; readonly likely: number; readonly high: number }>
  >;
}

export interface Task {
  readonly id: string;
  readonly name: string;
  readonly visit: number;
  readonly quantity: number;
  readonly unit: string;
  readonly rate: Rate;
  readonly people: number;
  /** Ids of tasks that must be finished first: the order of work on the grass. */
  readonly after: readonly string[];
  readonly minutesP50: number;
  readonly minutesP90: number;
  /** Start and end with every task at its middle (P50) time, minutes after the window opens. */
  readonly startMin: number;
  readonly endMin: number;
}

export interface HoursTotals {
  readonly personHoursP50: number;
  readonly personHoursP90: number;
  readonly clockHoursP50: number;
  readonly clockHoursP90: number;
}

export interface Hours {
  readonly spec: LabourSpec;
  readonly tasks: readonly Task[];
  readonly visits: readonly ({ readonly visit: number } & HoursTotals)[];
  readonly totals: HoursTotals;
  readonly window: {
    readonly opens: string;
    readonly closes: string;
    readonly fitsP90: boolean;
    readonly spareMinutesP90: number;
    readonly finishP50: string;
    readonly finishP90: string;
    /** Share of simulated days that finish inside the window. */
    readonly chance: number;
  };
  /** Sorted simulated clock hours, for the drawing. */
  readonly simulated: readonly number[];
}
