/** The packet: every sheet of a plan, in the order in which it is used. */
import { carryAsSet } from '../audit/carry-as-set';
import type { Audit } from '../audit/model';
import { problem, type Problem } from '../base/result';
import type { Plan } from '../plan/model';
import { readFontMetrics, type SheetFonts } from './fonts';
import type { Kit } from './kit';
import type { Sheet } from './marks';
import { asSetPages } from './pages/as-set-pages';
import { cautionPages } from './pages/caution-page';
import { codePages } from './pages/code-page';
import { controlPages } from './pages/control-pages';
import { gridPages } from './pages/grid-page';
import { guidePages } from './pages/guide-page';
import { hoursPages } from './pages/hours-page';
import { loadPages } from './pages/load-page';
import { outlinePages } from './pages/outline-pages';
import { overviewPage } from './pages/overview-page';
import { passPages } from './pages/pass-pages';
import { stakePages } from './pages/stake-pages';
import { paperOf } from './paper';
import { replaceUnprintable, unprintable } from './printable';
import { finishSheet } from './sheet-head';

/**
 * Sheets on the paper that the project names. Characters that a font lacks (in a name typed by the
 * user) are printed as `?` and named on the overview.
 */
export function composePacket(plan: Plan, fonts: SheetFonts): Sheet[] {
  const kit = kitOf(plan, fonts);
  const sheets = composeSheets(kit, []);
  const missing = unprintable(sheets, kit.metrics);
  if (missing.length === 0) return sheets;
  const told = composeSheets(kit, [missingNote(missing)]);
  return told.map((sheet) => replaceUnprintable(sheet, kit.metrics));
}

/** The outline from where the stakes of `plan` stand by an audit; empty when nothing is set out. */
export function composeAsSet(plan: Plan, audit: Audit, fonts: SheetFonts): Sheet[] {
  if (!plan.stakes) return [];
  const carried = carryAsSet(plan.stakes, audit);
  const kit = kitOf({ ...plan, stakes: carried }, fonts);
  const drafts = asSetPages(kit, carried, audit);
  return drafts
    .map((draft, i) => finishSheet(kit, draft, i + 1, drafts.length))
    .map((sheet) => replaceUnprintable(sheet, kit.metrics));
}

const kitOf = (plan: Plan, fonts: SheetFonts): Kit => ({
  plan,
  paper: paperOf(plan.project.paper),
  metrics: readFontMetrics(fonts),
});

function composeSheets(kit: Kit, notes: readonly Problem[]): Sheet[] {
  const { stakes } = kit.plan;
  const load = stakes ? loadPages(kit, stakes) : { drafts: [], leftOver: [] };
  const first = [...cautionPages(kit), ...load.drafts, ...guidePages(kit), ...controlPages(kit)];
  const others = [
    ...first,
    ...(stakes
      ? [...stakePages(kit, stakes, 1 + first.length, load.leftOver), ...outlinePages(kit, stakes)]
      : []),
    ...gridPages(kit),
    ...passPages(kit),
    ...hoursPages(kit),
    ...codePages(kit),
  ];
  const titles = others.map((draft) => draft.title);
  const drafts = [overviewPage(kit, notes, titles), ...others];
  return drafts.map((draft, i) => finishSheet(kit, draft, i + 1, drafts.length));
}

const missingNote = (codes: readonly number[]): Problem =>
  problem(
    'character-not-printed',
    'packet',
    `the sheets' type lacks ${codes.map((code) => `U+${code.toString(16).toUpperCase().padStart(4, '0')}`).join(', ')}; ? is printed instead`,
    'spell the name with letters of the Latin alphabet',
    'warning',
  );
