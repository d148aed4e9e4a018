/** The phone page as one file: a ready-made page with the job's lists put inside as plain data. */
import { invariant } from '../base/result';
import type { Plan } from '../plan/model';
import { encodeCrewList } from './crew-code';
import { crewLines, crewLists, type CrewJob, type CrewLine } from './crew-data';

/** Where the data go: the page is built with this and nothing else between the tags. */
export const DATA_PLACE = '{"crew":null}';

/** What stands in the page: every round as the text of a code, so that page and code share a reader. */
export interface CrewBundle {
  readonly codes: readonly string[];
  readonly name: string;
  readonly lines: readonly CrewLine[];
  readonly touches: Readonly<Record<string, string>>;
}

/** Null without a graphic. */
export function crewJobOf(plan: Plan): CrewJob | null {
  const { stakes, project } = plan;
  if (!stakes) return null;
  return { name: project.name, fingerprint: plan.inputHash, system: project.units, stakes };
}

/** The whole job for the phone; empty without a graphic. */
export function crewBundle(job: CrewJob | null): CrewBundle {
  if (!job) return { codes: [], name: '', lines: [], touches: {} };
  return {
    codes: crewLists(job).map(encodeCrewList),
    name: job.name,
    lines: crewLines(job),
    touches: Object.fromEntries(job.stakes.controls.map((c) => [c.id, c.touch])),
  };
}

/** `crew.html`: the page built from `src/crew`, with the plan's lists inside. */
export function crewPage(plan: Plan, page: string): string {
  const parts = page.split(DATA_PLACE);
  invariant(parts.length === 2, 'the phone page has one place for its data');
  // No `<` in the data: nothing in a name can end the element that it stands in.
  const data = JSON.stringify({ crew: crewBundle(crewJobOf(plan)) }).replaceAll('<', '\\u003c');
  return parts.join(data);
}
