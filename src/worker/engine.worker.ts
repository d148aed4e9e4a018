/// <reference lib="webworker" />
/** The worker's entry: answers requests one by one and keeps the plan made last. */
import { fail, problem, succeed, type Result } from '../base/result';
import type { Plan } from '../plan/model';
import { loadAssets } from './assets';
import { loadSheetFonts } from './sheet-fonts';
import { brokenProblem, type OperationName, type Operations, type Request } from './protocol';

const engineModule = import('../engine/api');
let lastPlan: Plan | null = null;

const noPlan = () =>
  fail(problem('no-plan', 'plan', 'there is no plan yet', 'put right the problems listed first'));

type Answer<N extends OperationName> = (
  args: Operations[N]['args'],
  id: number,
) => Promise<Result<Operations[N]['value']>>;

const answers: { readonly [N in OperationName]: Answer<N> } = {
  async read({ text, where }) {
    const { engine } = await engineModule;
    return engine.readProject(text, where);
  },
  async plan({ project }, id) {
    const { engine } = await engineModule;
    const assets = await loadAssets(project);
    if (!assets.ok) return assets;
    const result = engine.makePlan(project, assets.value, (step) => postMessage({ id, step }));
    if (result.ok) lastPlan = result.value;
    return result;
  },
  async recipe({ text, where }) {
    const { engine } = await engineModule;
    return engine.readRecipe(text, where);
  },
  async preview({ project, pattern }) {
    const { engine } = await engineModule;
    return engine.previewPattern(project, pattern);
  },
  async packet() {
    if (!lastPlan) return noPlan();
    const { engine } = await engineModule;
    const fonts = await loadSheetFonts();
    if (!fonts.ok) return fonts;
    return succeed(new Uint8Array(await engine.makePacket(lastPlan, fonts.value)));
  },
  async sheets() {
    if (!lastPlan) return noPlan();
    const { engine } = await engineModule;
    const fonts = await loadSheetFonts();
    return fonts.ok ? succeed(await engine.makeSheets(lastPlan, fonts.value)) : fonts;
  },
  async files() {
    if (!lastPlan) return noPlan();
    const { engine } = await engineModule;
    return succeed(engine.makeFiles(lastPlan));
  },
  async crew({ page }) {
    if (!lastPlan) return noPlan();
    const { engine } = await engineModule;
    return succeed(engine.makeCrewPage(lastPlan, page));
  },
  async audit({ text, where }) {
    if (!lastPlan) return noPlan();
    const { engine } = await engineModule;
    const readings = engine.readReadings(text, where, lastPlan);
    if (!readings.ok) return readings;
    const audit = engine.auditReadings(lastPlan, readings.value);
    if (!audit.ok) return audit;
    return succeed({ audit: audit.value, files: engine.makeAuditFiles(lastPlan, audit.value) });
  },
  async asSet({ audit }) {
    if (!lastPlan) return noPlan();
    const { engine } = await engineModule;
    const fonts = await loadSheetFonts();
    if (!fonts.ok) return fonts;
    return succeed(new Uint8Array(await engine.makeAsSetSheets(lastPlan, audit, fonts.value)));
  },
  async seat({ seat, width, height }) {
    if (!lastPlan?.project.seats.some((s) => s.id === seat)) return noPlan();
    const { engine } = await engineModule;
    return succeed(engine.seatPicture(lastPlan, seat, width, height));
  },
};

async function answer(request: Request): Promise<void> {
  const run = answers[request.operation] as Answer<OperationName>;
  let result: Result<unknown>;
  try {
    result = await run(request.args, request.id);
  } catch (error) {
    result = fail(brokenProblem(request.operation, error));
  }
  postMessage({ id: request.id, result });
}

let queue: Promise<void> = Promise.resolve();
onmessage = (event: MessageEvent<Request>) => {
  queue = queue.then(() => answer(event.data));
};
