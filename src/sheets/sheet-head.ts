/** Head and foot of every sheet. */
import { cutText, wrapText } from './fit-text';
import { inkRule, inkText } from './ink';
import type { Kit } from './kit';
import type { Mark, Sheet } from './marks';
import { tidyMarks } from './tidy-marks';
import { FOOT_HEIGHT, HEAD_HEIGHT, MARGIN } from './paper';

/** A sheet before it has its number. */
export interface Draft {
  readonly title: string;
  /** One line or two under the title: what this sheet has the crew do. */
  readonly lead: string;
  readonly marks: readonly Mark[];
}

export function finishSheet(kit: Kit, draft: Draft, number: number, total: number): Sheet {
  return {
    title: draft.title,
    width: kit.paper.width,
    height: kit.paper.height,
    marks: [...headMarks(kit, draft, number, total), ...tidyMarks(draft.marks), ...footMarks(kit)],
  };
}

const RIGHT_COLUMN = 160;
const TITLE_SIZE = 20;

function headMarks(kit: Kit, draft: Draft, number: number, total: number): Mark[] {
  const { left, right } = kit.paper;
  const figure = String(number);
  const indent = kit.metrics.width(figure, 38, 'bold') + 12;
  const room = right - left - indent - RIGHT_COLUMN - 8;
  const cut = (text: string, size: number, font: 'bold' | 'regular') =>
    cutText(kit.metrics, text, size, font, RIGHT_COLUMN);
  const { name, club, date, field } = kit.plan.project;
  const place = [field.name, dayText(date)].filter((word) => word !== '').join(', ');
  const titleWidth = kit.metrics.width(draft.title, TITLE_SIZE, 'heading');
  const titleSize = TITLE_SIZE * Math.min(1, room / titleWidth);
  const leads = wrapText(kit.metrics, draft.lead, 9.5, 'regular', room).slice(0, 2);
  const right9 = { size: 9, align: 'right' } as const;
  return [
    inkText(left, MARGIN + 38, figure, { size: 38, font: 'bold' }),
    inkText(left + indent, MARGIN + 20, draft.title, { size: titleSize, font: 'heading' }),
    ...leads.map((line, i) => inkText(left + indent, MARGIN + 34 + i * 11, line, { size: 9.5 })),
    inkText(right, MARGIN + 8, cut(name, 9, 'bold'), { ...right9, font: 'bold' }),
    inkText(right, MARGIN + 19, cut(club, 9, 'regular'), right9),
    inkText(right, MARGIN + 30, cut(place, 9, 'regular'), right9),
    inkText(right, MARGIN + 41, `sheet ${number} of ${total}`, right9),
    inkRule(left, right, MARGIN + HEAD_HEIGHT - 4, 2),
  ];
}

function footMarks(kit: Kit): Mark[] {
  const { left, right, height } = kit.paper;
  const y = height - MARGIN - FOOT_HEIGHT + 12;
  const words = 'Local codes and licensed practice come first.';
  const plan = `plan ${kit.plan.inputHash.slice(0, 8)}, engine ${kit.plan.engineVersion}`;
  return [
    inkText(left, y, words, { size: 8 }),
    inkText(right, y, plan, { size: 8, align: 'right' }),
  ];
}

const DAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const MONTHS = [
  'Jan',
  'Feb',
  'Mar',
  'Apr',
  'May',
  'June',
  'July',
  'Aug',
  'Sept',
  'Oct',
  'Nov',
  'Dec',
];

/** `Sat 13 June 2026`; a text that is no date is printed as it stands. */
export function dayText(iso: string): string {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso);
  if (!match) return iso;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  const weekday = new Date(Date.UTC(year, month - 1, day)).getUTCDay();
  return `${DAYS[weekday]} ${day} ${MONTHS[month - 1] ?? ''} ${year}`;
}
