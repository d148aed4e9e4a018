/**
 * The one list of operations that the shells (app, command line, scripts) may call. Plain data in,
 * plain data out.
 */
import { fail, problem, type Result } from '../base/result';
import type { Assets } from '../art/model';
import { auditReadings } from '../audit/audit-readings';
import type { Audit, MeasuredReading } from '../audit/model';
import { auditFiles } from '../exchange/audit-files';
import { crewTimes, readCrewFile } from '../exchange/crew-file';
import type { CrewFile } from '../exchange/crew-file-model';
import { crewPage } from '../exchange/crew-page';
import { planFiles, type PlanFiles } from '../exchange/plan-files';
import { readReadings } from '../exchange/readings-csv';
import { ownRates, type OwnRate } from '../labour/own-rates';
import type { PatternSpec, Recipe } from '../pattern/model';
import { makePlan, type PlanStep } from '../plan/make-plan';
import type { Plan } from '../plan/model';
import { previewPattern, type PatternPreview } from '../plan/preview-pattern';
import { summarise, type Summary } from '../plan/summarise';
import type { Project } from '../project/model';
import { readProject } from '../project/read-project';
import { readRecipe } from '../project/read-recipe';
import { writeProject } from '../project/write-project';
import type { SheetFonts } from '../sheets/fonts';
import type { Sheet } from '../sheets/marks';
import type { Picture } from '../view/model';
import { renderSeat } from '../view/render-seat';

export type { PlanStep };

/** Sheets and PDF bring the heaviest libraries: a shell that prints nothing never loads them. */
const loadSheets = () => import('../sheets/compose-packet');
const loadPdf = () => import('../sheets/write-pdf');

const NOTHING_SET_OUT = problem(
  'readings-without-stakes',
  'the plan',
  'it has no graphic, so that nothing is set out',
  'give the project whose stakes were set',
);

/** The operations, by name. */
export const engine = {
  /** Reads a saved project; `where` names the file in problems. */
  readProject: (text: string, where: string): Result<Project> => readProject(text, where),

  /** Reads a recipe of a pattern; `where` names the file in problems. */
  readRecipe: (text: string, where: string): Result<Recipe> => readRecipe(text, where),

  writeProject: (project: Project): string => writeProject(project),

  /** The whole plan, or every problem that stands in its way. */
  makePlan: (project: Project, assets: Assets, onStep?: (step: PlanStep) => void): Result<Plan> =>
    makePlan(project, assets, onStep),

  /** A pattern on the project's field, for a look before it is taken. */
  previewPattern: (project: Project, pattern: PatternSpec): Result<PatternPreview> =>
    previewPattern(project, pattern),

  summarise: (plan: Plan): Summary => summarise(plan),

  /** The packet's sheets as marks, before they become a PDF: for a look on the screen. */
  makeSheets: async (plan: Plan, fonts: SheetFonts): Promise<Sheet[]> =>
    (await loadSheets()).composePacket(plan, fonts),

  /** `packet.pdf` as bytes; equal plans give equal bytes. */
  makePacket: async (plan: Plan, fonts: SheetFonts): Promise<Uint8Array> => {
    const [{ composePacket }, { writePdf }] = await Promise.all([loadSheets(), loadPdf()]);
    return writePdf(composePacket(plan, fonts), fonts, { title: plan.project.name });
  },

  /** Every other file of the output contract, by name. */
  makeFiles: (plan: Plan): PlanFiles => planFiles(plan),

  /** `crew.html`: `page`, as built from `src/crew`, with the plan's lists inside. */
  makeCrewPage: (plan: Plan, page: string): string => crewPage(plan, page),

  /** What the phone page brought back; `where` names the file. */
  readCrewFile: (text: string, where: string): Result<CrewFile> => readCrewFile(text, where),

  /** The crew's own pace by task, from what its phones brought back. */
  ownRates: (files: readonly CrewFile[]): OwnRate[] => ownRates(crewTimes(files)),

  /** Readings made on the field, from a table or the phone page's file; `where` names the file. */
  readReadings: (text: string, where: string, plan: Plan): Result<readonly MeasuredReading[]> =>
    plan.stakes
      ? readReadings(text, where, { stakes: plan.stakes, inputHash: plan.inputHash })
      : fail(NOTHING_SET_OUT),

  /** What the readings say of the stakes: slips, rivals, where every stake stands. */
  auditReadings: (plan: Plan, readings: readonly MeasuredReading[]): Result<Audit> =>
    plan.stakes ? auditReadings(plan.stakes, plan.design.graphic, readings) : fail(NOTHING_SET_OUT),

  /** `as-set.csv`, `outline-as-set.csv` and `audit.json`, by name. */
  makeAuditFiles: (plan: Plan, audit: Audit): Readonly<Record<string, string>> =>
    plan.stakes ? auditFiles(plan.stakes, audit) : {},

  /** `outline-as-set.pdf`: the outline's sheets from where the stakes stand. */
  makeAsSetSheets: async (plan: Plan, audit: Audit, fonts: SheetFonts): Promise<Uint8Array> => {
    const [{ composeAsSet }, { writePdf }] = await Promise.all([loadSheets(), loadPdf()]);
    const title = `${plan.project.name}, outline as set`;
    return writePdf(composeAsSet(plan, audit, fonts), fonts, { title });
  },

  /** What a seat sees, `width` × `height` pixels. Throws on a seat that the project lacks. */
  seatPicture: (plan: Plan, seatId: string, width: number, height: number): Picture => {
    const seat = plan.project.seats.find((s) => s.id === seatId);
    if (!seat) throw new Error(`no seat "${seatId}" in this project`);
    return renderSeat(plan.field, plan.design, seat, width, height);
  },
};

export type Engine = typeof engine;
