/** The file that the phone page gives back: read, and turned into times for the hours. */
import * as v from 'valibot';
import { fail, problem, succeed, type Problem, type Result } from '../base/result';
import type { TimedWork } from '../labour/own-rates';
import { describeIssue } from '../project/describe-issue';
import { parseJson } from '../project/parse-json';
import type { StakeKind } from '../stakeout/model';
import { CREW_FORMAT, CREW_VERSION, type CrewFile, type CrewFileStake } from './crew-file-model';

/** A day of stakes is some 100 kB. */
const LONGEST = 5_000_000;
const A_DAY_S = 86_400;

const time = v.nullable(v.pipe(v.string(), v.isoTimestamp('a time like 2027-04-16T06:30:00.000Z')));
const seconds = v.nullable(v.pipe(v.number(), v.minValue(0), v.maxValue(A_DAY_S)));
const round = v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(1000));
const name = (most: number) => v.pipe(v.string(), v.maxLength(most));

const stake = v.strictObject({
  stake: v.pipe(v.string(), v.minLength(1), v.maxLength(15)),
  kind: v.picklist(['control', 'outline', 'pin', 'guide']),
  round,
  set_at: time,
  seconds,
  check_from: name(15),
  check_ft: v.nullable(v.pipe(v.number(), v.minValue(-1000), v.maxValue(10_000))),
  check_text: name(40),
  note: name(2000),
});

const crewFile = v.strictObject({
  format: v.literal(CREW_FORMAT),
  version: v.literal(CREW_VERSION),
  plan: v.pipe(v.string(), v.regex(/^[0-9a-f]{8}$/, 'the first eight digits of a fingerprint')),
  job: name(200),
  saved_at: v.pipe(v.string(), v.isoTimestamp('a time like 2027-04-16T12:30:00.000Z')),
  rounds: v.pipe(
    v.array(v.strictObject({ round, started_at: time, move_seconds: seconds })),
    v.maxLength(1000),
  ),
  stakes: v.pipe(v.array(stake), v.maxLength(10_000)),
}) satisfies v.GenericSchema<unknown, CrewFile>;

/**
 * What a phone brought back; `where` names the file. Every entry that is wrong at once, each with its
 * stake. Problems `crew-file-long`, `json-broken`, `not-a-crew-file`, `crew-file-version`,
 * `crew-file-twice` and those of `describeIssue`.
 */
export function readCrewFile(text: string, where: string): Result<CrewFile> {
  if (text.length > LONGEST) return fail(wrongFile('crew-file-long', where, 'it is far too long'));
  const parsed = parseJson(text.replace(/^\uFEFF/, ''), where);
  if (!parsed.ok) return parsed;
  const loose = parsed.value;
  if (!isOurs(loose)) {
    return fail(wrongFile('not-a-crew-file', where, `"format" is not "${CREW_FORMAT}"`));
  }
  if (loose['version'] !== CREW_VERSION) return fail(otherVersion(where));
  const file = v.safeParse(crewFile, loose);
  if (!file.success) {
    return fail(...file.issues.map((issue) => describeIssue(issue, placeOf(issue, loose, where))));
  }
  const twice = doubled(file.output.stakes);
  return twice.length > 0 ? fail(...twice.map((id) => setTwice(id, where))) : succeed(file.output);
}

type Loose = Readonly<Record<string, unknown>>;
const isLoose = (value: unknown): value is Loose => typeof value === 'object' && value !== null;
const isOurs = (value: unknown): value is Loose =>
  isLoose(value) && value['format'] === CREW_FORMAT;

const wrongFile = (code: string, where: string, what: string): Problem =>
  problem(code, where, `this is not a file of the phone page: ${what}`, 'give the file it saved');

const otherVersion = (where: string): Problem =>
  problem(
    'crew-file-version',
    where,
    `the file is not of version ${CREW_VERSION}`,
    'save it again from a phone page of this version',
  );

const setTwice = (id: string, where: string): Problem =>
  problem(
    'crew-file-twice',
    `${where}: stake ${id}`,
    'the stake stands in the file more than once',
    'save the file from the phone again, and change nothing in it',
  );

function doubled(stakes: readonly CrewFileStake[]): string[] {
  const ids = stakes.map((s) => s.stake);
  return [...new Set(ids.filter((id, i) => ids.indexOf(id) !== i))];
}

/** The file, and the stake that the entry is of when it has a name. */
function placeOf(issue: v.BaseIssue<unknown>, file: Loose, where: string): string {
  const [list, index] = (issue.path ?? []).map((item) => item.key);
  const entries = file['stakes'];
  if (list !== 'stakes' || typeof index !== 'number' || !Array.isArray(entries)) return where;
  const entry: unknown = entries[index];
  const id = isLoose(entry) ? entry['stake'] : undefined;
  return typeof id === 'string' && id !== '' ? `${where}: stake ${id.slice(0, 15)}` : where;
}

const TASKS: Readonly<Record<StakeKind, TimedWork['task']>> = {
  control: 'set-controls',
  outline: 'set-stakes',
  guide: 'set-stakes',
  pin: 'set-pins',
};

/** Times of all files; of a stake in two files of the same plan, the time saved last. */
export function crewTimes(files: readonly CrewFile[]): TimedWork[] {
  const times = new Map<string, TimedWork>();
  const byAge = [...files].sort((a, b) => Date.parse(a.saved_at) - Date.parse(b.saved_at));
  const put = (name: string, task: TimedWork['task'], took: number | null): void => {
    if (took !== null) times.set(name, { task, seconds: took });
  };
  for (const { plan, rounds, stakes } of byAge) {
    rounds.forEach((r) => put(`${plan} round ${r.round}`, 'move-tapes', r.move_seconds));
    stakes
      .filter((s) => s.set_at !== null)
      .forEach((s) => put(`${plan} stake ${s.stake}`, TASKS[s.kind], s.seconds));
  }
  return [...times.values()];
}
